/**
 * A disease found by its name in a gardener's words.
 */
import { type Disease, diseases } from './diseases.ts';
import type { Vegetable } from './shapes/vegetable.ts';

/** Whether a crop catches a disease. */
export function strikes({ groups, cropIds }: Disease, crop: Pick<Vegetable, 'id' | 'rotationGroup'>): boolean {
  return groups.includes(crop.rotationGroup) || cropIds.includes(crop.id);
}

/** The diseases the handbook knows on a crop. */
export function diseasesOf(crop: Pick<Vegetable, 'id' | 'rotationGroup'>): Disease[] {
  return diseases.filter((disease) => strikes(disease, crop));
}

/**
 * The disease of a crop that a gardener's words name: by the whole name, or by the longest known name among the words
 * ("club root again" is clubroot). Capitals, hyphens and spaces do not matter.
 *
 * @returns nothing where the handbook knows no such disease on that crop
 */
export function diseaseNamed(words: string, crop: Pick<Vegetable, 'id' | 'rotationGroup'>): Disease | undefined {
  const said = ` ${plain(words)} `;
  const named = diseasesOf(crop).flatMap((disease) =>
    [disease.name, ...disease.alsoCalled].map((name) => ({ disease, name: plain(name) })),
  );
  const whole = named.find(({ name }) => name.replaceAll(' ', '') === said.replaceAll(' ', ''));
  if (whole !== undefined) return whole.disease;
  return named.filter(({ name }) => said.includes(` ${name} `)).sort((a, b) => b.name.length - a.name.length)[0]
    ?.disease;
}

function plain(words: string): string {
  return words
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}
