/**
 * Crops sown again and again: a planting with `again` becomes a planting of its own for every sowing.
 */
import { vegetables } from '../handbook/vegetables.ts';
import { addDays, type Day, daysBetween } from '../measures/days.ts';
import type { GardenFile } from './garden-file.ts';
import { withIds } from './ids.ts';
import type { Problem } from './problem.ts';

type Row = GardenFile['plantings'][number];
type Bed = Pick<GardenFile['beds'][number], 'lengthM' | 'widthM'>;

/** The longest a succession may run, days: a season's sowings, and no rotation in one line. House default. */
const LONGEST_DAYS = 365;
/** Years a crop's row names where it never leaves its bed. */
const LASTING_YEARS = 99;

/** The ids of a row's sowings: the first keeps the row's own, then -2, -3 and so on. */
export function sowingIds({ id = '', again }: Row): string[] {
  return [id, ...Array.from({ length: again?.times ?? 0 }, (_, at) => `${id}-${at + 2}`)];
}

/**
 * A garden file in which every later sowing of a succession is a planting of its own, behind those that were written.
 * Where its row names no share of the bed, each sowing takes an equal one. A last harvest moves with its sowing. A file that
 * has been through this stays as it is.
 *
 * @param file a file whose every item has its id
 */
export function withSowings(file: GardenFile): GardenFile {
  const shared = file.plantings.map((row) => withShare(file, row));
  const there = new Set(shared.map(({ id }) => id));
  const later = shared.flatMap(laterSowings).filter(({ id }) => !there.has(id));
  return { ...file, plantings: [...shared, ...later] };
}

function withShare({ beds }: GardenFile, row: Row): Row {
  const bed = beds.find(({ id }) => id === row.bed);
  if (row.again === undefined || row.areaM2 !== undefined || bed === undefined) return row;
  return { ...row, areaM2: equalShare(row, bed) };
}

const HUNDREDTHS = 100;
/** The least share a crop may have, m²: as in a garden file. */
const LEAST_SHARE_M2 = 0.01;

/** The part of a bed each of a row's sowings takes, to the hundredth of a square metre. */
function equalShare(row: Row, { lengthM, widthM }: Bed): number {
  return Math.round((HUNDREDTHS * lengthM * widthM) / sowingIds(row).length) / HUNDREDTHS;
}

function laterSowings({ again, ...row }: Row): Row[] {
  if (again === undefined) return [];
  const [, ...ids] = sowingIds({ ...row, again });
  return ids.map((id, at) => {
    const later = (day: Day): Day => addDays(day, (at + 1) * again.everyDays);
    return {
      ...row,
      id,
      ...(row.sow === undefined ? {} : { sow: later(row.sow) }),
      ...(row.setOut === undefined ? {} : { setOut: later(row.setOut) }),
      ...(row.lastHarvest === undefined ? {} : { lastHarvest: later(row.lastHarvest) }),
    };
  });
}

/** Where in the file a planting of its list was written; a later sowing stands in the row of its first one. */
export function writtenAt({ plantings }: GardenFile, at: number): { where: string; row: Row | undefined } {
  const id = plantings[at]?.id ?? '';
  const first = plantings.findIndex((row) => sowingIds(row).includes(id));
  return { where: `plantings[${first}]`, row: plantings[first] };
}

/** What is wrong with the successions of a file. */
export function successionProblems(file: GardenFile, existing?: GardenFile): Problem[] {
  if (!file.plantings.some(({ again }) => again !== undefined)) return [];
  const { beds, plantings: given } = withIds(file, existing);
  return file.plantings.flatMap((row, at) => {
    if (row.again === undefined) return [];
    const bed = beds.find(({ id }) => id === given[at]?.bed);
    return [...problemsOf(row, row.again, { id: given[at]?.id ?? '', at, given }), ...thinProblems(row, bed, at)];
  });
}

/** More sowings than a bed can be shared among. */
function thinProblems(row: Row, bed: Bed | undefined, at: number): Problem[] {
  if (bed === undefined || row.areaM2 !== undefined || equalShare(row, bed) >= LEAST_SHARE_M2) return [];
  const what = `${sowingIds(row).length} sowings that share the bed have less than ${LEAST_SHARE_M2} m² each.`;
  return [{ where: `plantings[${at}].again`, what, mend: 'Give fewer times, or the share of each as areaM2.' }];
}

interface Place {
  id: string;
  at: number;
  given: readonly Row[];
}

function problemsOf(row: Row, { everyDays, times }: NonNullable<Row['again']>, { id, at, given }: Place): Problem[] {
  const where = `plantings[${at}].again`;
  const start = row.sow ?? row.setOut;
  const last = start === undefined ? undefined : addDays(start, everyDays * times);
  const sowings = laterSowings({ ...row, id, bed: given[at]?.bed ?? '' });
  const taken = given.find((other) => sowings.some((sowing) => sowing.id === other.id && !isSame(sowing, other)));
  const crop = vegetables.find((each) => each.id === row.crop);
  const lasting = crop !== undefined && crop.rotationYears >= LASTING_YEARS;
  return [
    ...(row.id === undefined
      ? [
          {
            where: `plantings[${at}].id`,
            what: 'is missing.',
            mend: `Give a planting that is sown again an id, such as id: ${id}. Its sowings are named after it, and stay themselves when the first day moves.`,
          },
        ]
      : []),
    ...(taken === undefined
      ? []
      : [{ where, what: `its sowings would be "${id}-2" and so on, and "${taken.id}" is there.`, mend: OWN_ID }]),
    ...(lasting ? [{ where, what: `does not go with ${crop.name}, which stays.`, mend: 'Leave "again" out.' }] : []),
    ...(start !== undefined && last !== undefined && daysBetween(start, last) > LONGEST_DAYS
      ? [{ where, what: `the last sowing would be on ${last}, more than a year after the first.`, mend: FEWER }]
      : []),
  ];
}

const OWN_ID = 'Give one of the two another id.';
const FEWER = 'Give fewer times or fewer days between; another year is a planting of its own.';

function isSame(a: Row, b: Row): boolean {
  return a.bed === b.bed && a.crop === b.crop && a.sow === b.sow && a.setOut === b.setOut;
}
