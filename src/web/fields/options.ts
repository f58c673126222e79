/**
 * What can be chosen in forms.
 */
import type { Garden } from '../../garden/garden.ts';
import { SOIL_TEXTURES } from '../../garden/garden-file.ts';
import { coverCrops } from '../../handbook/cover-crops.ts';
import { coverMixes } from '../../handbook/cover-mixes.ts';
import { vegetables } from '../../handbook/vegetables.ts';
import { coverName } from '../../practices/covers.ts';
import { familyWord } from '../frame/patterns.tsx';
import type { Option } from './field.ts';

/** Soils, coarse to fine. */
export const SOIL_OPTIONS: readonly Option[] = SOIL_TEXTURES.map((value) => ({
  value,
  words: value.replaceAll('_', ' '),
}));

/** The beds, by name. */
export function bedOptions({ beds }: Pick<Garden, 'beds'>): Option[] {
  return beds.map(({ id, name }) => ({ value: id, words: name }));
}

/** The name of a bed. */
export function bedName({ beds }: Pick<Garden, 'beds'>, bedId: string | undefined): string {
  return beds.find(({ id }) => id === bedId)?.name ?? 'the garden';
}

/** Every crop of the handbook under its plant family. */
export const CROP_OPTIONS: readonly Option[] = vegetables
  .map(({ id, name, rotationGroup }) => ({ value: id, words: name, group: familyWord(rotationGroup) }))
  .sort(byGroupAndWords);

/** Every cover crop of the handbook. */
export const COVER_OPTIONS: readonly Option[] = coverCrops
  .map(({ id, name }) => ({ value: id, words: name, group: 'Cover crops' }))
  .sort(byGroupAndWords);

/** Every mix of covers of the handbook. */
export const MIX_OPTIONS: readonly Option[] = coverMixes
  .map(({ id }) => ({ value: id, words: coverName(id), group: 'Mixes' }))
  .sort(byGroupAndWords);

function byGroupAndWords(a: Option, b: Option): number {
  const [one, other] = [`${a.group ?? ''} ${a.words}`, `${b.group ?? ''} ${b.words}`];
  return one < other ? -1 : one > other ? 1 : 0;
}
