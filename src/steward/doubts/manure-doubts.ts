/**
 * Harvests that a garden file puts too soon after raw manure: a line for each, with its two dates.
 */
import type { GardenFile } from '../../garden/garden-file.ts';
import type { Problem } from '../../garden/problem.ts';
import { writtenAt } from '../../garden/successions.ts';
import { compostBalance } from '../../practices/catalogue.ts';
import { rawManureOf } from '../../practices/manure.ts';
import { heldInTime, type ManureClash, manureOnBeds, manureSpread } from '../../practices/manure-spreads.ts';
import { LOCAL_RULES, permittedWords, spreadWords, waysOutOfCrop } from '../../practices/manure-words.ts';
import type { PracticeInput } from '../../practices/practice.ts';

/** Every such line: what was spread in the order of the file, then what is to be spread. Texts may hold marked days. */
export function manureDoubts(file: GardenFile, input: PracticeInput): Problem[] {
  return [...spreadDoubts(file, input), ...plannedDoubts(file, input)];
}

function spreadDoubts(file: GardenFile, input: PracticeInput): Problem[] {
  return file.topdressed.flatMap(({ bed, piles, material, ...row }, i) => {
    const told = {
      bedId: bed,
      ...row,
      ...(piles ? { pileIds: piles } : {}),
      ...(material ? { materialId: material } : {}),
    };
    const spread = manureSpread(input.garden, told);
    const clashes = spread === undefined ? [] : heldInTime(input, spread).clashes;
    return clashes.map((clash) => doubtOf(input, clash, `topdressed[${i}]`));
  });
}

/** What is to be spread is worked out with the whole pass, and only where a pile counts as raw. */
function plannedDoubts(file: GardenFile, input: PracticeInput): Problem[] {
  const { garden } = input;
  if (!garden.piles.some((pile) => rawManureOf(garden, pile) !== undefined)) return [];
  const { beds } = compostBalance(input);
  const planned = manureOnBeds({ ...input, garden: { ...garden, topdressed: [] } }, beds);
  return planned
    .flatMap(({ clashes }) => clashes)
    .map((clash) => {
      const at = file.plantings.findIndex(({ id }) => id === clash.span.planting.id);
      return doubtOf(input, clash, writtenAt(file, at).where);
    });
}

function doubtOf({ garden }: PracticeInput, clash: ManureClash, where: string): Problem {
  const { happened, day } = clash.span.planting.start;
  return {
    where,
    what: `${spreadWords(garden, clash.spread)} ${permittedWords(clash)}`,
    mend: `${waysOutOfCrop(clash, happened ? undefined : { latest: day })} ${LOCAL_RULES}`,
  };
}
