/**
 * What a plan costs in one garden, by its beds and the years of its record.
 */
import { fork } from 'node:child_process';
import { once } from 'node:events';
import type { Garden } from '../../src/garden/garden.ts';
import type { DailyWeather } from '../../src/garden/weather.ts';
import { isDay } from '../../src/measures/days.ts';
import type { WeatherRecord } from '../../src/store/weather.ts';
import { bedsTimes } from './large-garden.ts';
import type { Cell, CellTold } from './scale-cell.ts';
import { NOT_BEGUN, type Told } from './scale-told.ts';

const BEDS = [10, 100, 500];
/** Eleven calendar years hold the ten whole seasons that are the fewest a record is read by. */
const YEARS = [1, 11, 80];
/** Longest a garden is planned for. */
const LONGEST_S = 90;

/** Tells the table, and how it grows. Years are tried with the fewest beds, beds with the record as it is. */
export async function reportGarden(told: Told, { garden, record, today }: Cell): Promise<void> {
  const years = new Set(record.days.map(({ day }) => day.slice(0, 4))).size;
  told.table('beds', 'years of record', 'first plan, ms', 'the next day, ms', 'plan, KiB');
  const [fewest = 1] = BEDS;
  for (const each of YEARS)
    await row(told, each, { garden: bedsOnly(garden, fewest), record: yearsOf(record, each), today });
  const known: { beds: number; firstMs: number }[] = [];
  for (const beds of BEDS) {
    const firstMs = await row(told, years, { garden: bedsOnly(garden, beds), record, today });
    if (firstMs !== undefined) known.push({ beds, firstMs });
  }
  const powers = known.slice(1).map(({ beds, firstMs }, at) => {
    const before = known[at] ?? { beds, firstMs };
    const power = Math.log(firstMs / before.firstMs) / Math.log(beds / before.beds);
    return `From ${before.beds} to ${beds} beds a first plan grows with the beds to the power of ${power.toFixed(1)}.`;
  });
  if (powers.length > 0) told.say('', ...powers);
}

/** Tells a row, and returns what the first plan took where it came to an end. */
async function row(told: Told, years: number, cell: Cell): Promise<number | undefined> {
  const { length } = cell.garden.beds;
  const done = told.isTimeLeft ? await within(LONGEST_S, cell) : NOT_BEGUN;
  if (typeof done === 'string') told.row(length, years, done, '', '');
  else if ('refused' in done) told.row(length, years, `refused: ${done.refused}`, '', '');
  else {
    told.row(length, years, ...[done.firstMs, done.againMs, done.planKiB].map(Math.round));
    return done.firstMs;
  }
  return undefined;
}

async function within(seconds: number, cell: Cell): Promise<CellTold | string> {
  const child = fork(new URL('./scale-cell.ts', import.meta.url), { serialization: 'advanced' });
  try {
    child.send(cell);
    const signal = AbortSignal.timeout(seconds * 1000);
    const [done] = await Promise.race([once(child, 'message', { signal }), once(child, 'exit', { signal })]);
    if (typeof done !== 'object' || done === null) throw new Error(`The planning process ended with ${done}.`);
    return done as CellTold;
  } catch (error) {
    if (error instanceof Error && error.name === 'AbortError') return `not within ${seconds} s`;
    throw error;
  } finally {
    child.kill();
  }
}

/** The garden with so many beds, laid out again beside themselves, and hours to match. */
function bedsOnly(garden: Garden, count: number): Garden {
  const large = bedsTimes(garden, Math.ceil(count / garden.beds.length));
  const beds = large.beds.slice(0, count);
  const kept = new Set(beds.map(({ id }) => id));
  const { hoursPerWeek } = garden.place;
  const hours = hoursPerWeek === undefined ? {} : { hoursPerWeek: (hoursPerWeek * count) / garden.beds.length };
  const inKept = ({ bedId }: { bedId: string }): boolean => kept.has(bedId);
  return {
    ...large,
    place: { ...garden.place, ...hours },
    beds,
    plantings: large.plantings.filter(inKept),
    stands: large.stands.filter(inKept),
    topdressed: large.topdressed.filter(inKept),
  };
}

/** The last years of a record; where it has fewer, it is told over again before itself. */
function yearsOf(record: WeatherRecord, years: number): WeatherRecord {
  const [first = '', last = ''] = [record.days[0]?.day, record.days.at(-1)?.day];
  const span = Number(last.slice(0, 4)) - Number(first.slice(0, 4)) + 1;
  const from = String(Number(last.slice(0, 4)) - years + 1);
  const copies = Array.from({ length: Math.ceil(years / span) }, (_, copy) =>
    record.days.map((row) => back(row, copy * span)),
  );
  const days = copies.flat().filter(({ day }) => isDay(day) && day >= from);
  return { ...record, days: days.sort((a, b) => (a.day < b.day ? -1 : 1)) };
}

function back(row: DailyWeather, years: number): DailyWeather {
  return { ...row, day: `${Number(row.day.slice(0, 4)) - years}${row.day.slice(4)}` };
}
