/**
 * Beds that are still to be made: from when they are there, and what a file may not put in them before.
 */
import { type Day, earliestOf, isDay } from '../measures/days.ts';
import type { Bed, Garden } from './garden.ts';
import type { GardenFile } from './garden-file.ts';
import { slug } from './ids.ts';
import type { Problem } from './problem.ts';
import { rowsOf, textOf } from './raw-rows.ts';

/** The day a bed was there, or is to be; nothing for one that always was. */
export function thereFrom({ plannedFor, filledOn }: Pick<Bed, 'plannedFor' | 'filledOn'>): Day | undefined {
  return filledOn ?? plannedFor;
}

/** Whether a bed is still to be made. */
export function isStillToBeMade({ plannedFor, filledOn }: Pick<Bed, 'plannedFor' | 'filledOn'>): boolean {
  return plannedFor !== undefined && filledOn === undefined;
}

/** The beds, with those filled that something has been sown or set out in: what grows in a bed shows that it is there. */
export function withThoseGrownIn({
  beds,
  plantings,
  stands,
}: Pick<Garden, 'beds' | 'plantings' | 'stands'>): readonly Bed[] {
  if (!beds.some(isStillToBeMade)) return beds;
  const begun = [
    ...plantings.map(({ bedId, start }) => ({ bedId, ...start })),
    ...stands.map(({ bedId, sow }) => ({ bedId, ...sow })),
  ].filter(({ happened }) => happened);
  return beds.map((bed) => {
    const [first, ...rest] = begun.filter(({ bedId }) => bedId === bed.id).map(({ day }) => day);
    return !isStillToBeMade(bed) || first === undefined ? bed : { ...bed, filledOn: earliestOf(first, ...rest) };
  });
}

/** What a file puts into a bed: the list, the keys its day may stand under, and what it is called. */
const PUT_IN = [
  { list: 'plantings', keys: ['sow', 'setOut'], what: 'It is to go in' },
  { list: 'coverStands', keys: ['sow'], what: 'It is to be sown' },
  { list: 'mulches', keys: ['from'], what: 'It is to lie there' },
] as const;

/**
 * Crops, covers and mulches that a file puts into a bed before the bed is there. Works on plain data that may be wrong in
 * other ways.
 *
 * @param existing the garden already held, as a file: it may know of a filling that the file does not
 */
export function beforeItsBed(file: unknown, existing?: GardenFile): Problem[] {
  const planned = rowsOf(file, 'beds').flatMap((row) => plannedBed(row, existing) ?? []);
  if (planned.length === 0) return [];
  return PUT_IN.flatMap(({ list, keys, what }) =>
    rowsOf(file, list).flatMap((row, at) => {
      const bed = planned.find(({ words }) => words.includes(textOf(row, 'bed') ?? ''));
      const key = keys.find((each) => textOf(row, each) !== undefined);
      const day = key && textOf(row, key);
      if (bed === undefined || day === undefined || !isDay(day) || day >= bed.there) return [];
      return [
        {
          where: `${list}[${at}].${key}`,
          what: `${what} on ${day}, and ${bed.name} is not there before ${bed.there}.`,
          mend: `Give a day from ${bed.there} on, another bed, or an earlier plannedFor of ${bed.name}.`,
        },
      ];
    }),
  );
}

function plannedBed(row: object, existing: GardenFile | undefined) {
  const [name, id] = [textOf(row, 'name'), textOf(row, 'id')];
  const plannedFor = textOf(row, 'plannedFor');
  if (plannedFor === undefined || !isDay(plannedFor)) return undefined;
  const held = existing?.beds.find((bed) => (id === undefined ? bed.name === name : bed.id === id));
  const filled = [textOf(row, 'filledOn'), held?.filledOn].filter((day) => day !== undefined && isDay(day));
  const words = [name, id, held?.id, name && slug(name)].filter((word) => word !== undefined);
  const there = filled.reduce<Day>((first, day) => earliestOf(first, day ?? first), plannedFor);
  return { name: name ?? id ?? 'the bed', words, there };
}
