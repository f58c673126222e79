/**
 * What a plan costs in one garden, by its beds and the years of its record.
 */
import { performance } from 'node:perf_hooks';
import type { Garden } from '../../src/garden/garden.ts';
import type { DailyWeather } from '../../src/garden/weather.ts';
import { isDay } from '../../src/measures/days.ts';
import type { Plan } from '../../src/schedule/plan.ts';
import { noClimates, workOut } from '../../src/steward/crew/work.ts';
import type { WeatherRecord } from '../../src/store/weather.ts';
import { bedsTimes } from './large-garden.ts';

const BEDS = [10, 100, 500];
const YEARS = [1, 10, 80];
/** A cell that is likely to take longer is left out, and that is said. */
const LONGEST_MS = 180_000;

interface Told {
  firstMs: number;
  againMs: number;
  planKiB: number;
}

/** Prints the table, and how it grows. Years are tried with the fewest beds, beds with the record as it is. */
export async function reportGarden(garden: Garden, record: WeatherRecord, today: string): Promise<void> {
  const years = new Set(record.days.map(({ day }) => day.slice(0, 4))).size;
  console.log('One garden: beds, years of record, first plan ms, plan again ms, plan KiB');
  for (const each of YEARS) await row(bedsOnly(garden, BEDS[0] ?? 1), yearsOf(record, each), { years: each, today });
  let before: { beds: number; told: Told } | undefined;
  for (const beds of BEDS) {
    const growth = before === undefined ? 1 : (beds / before.beds) ** 2;
    if (before !== undefined && before.told.firstMs * growth > 4 * LONGEST_MS) {
      console.log(`${beds} beds are left out: they would take too long here.`);
      continue;
    }
    const told = await row(bedsOnly(garden, beds), record, { years, today });
    if (told === undefined) continue;
    if (before !== undefined)
      console.log(
        `  from ${before.beds} to ${beds} beds: first ${exponent(before, { beds, told }, 'firstMs')}, again ${exponent(before, { beds, told }, 'againMs')}`,
      );
    before = { beds, told };
  }
}

function exponent(a: { beds: number; told: Told }, b: { beds: number; told: Told }, of: 'firstMs' | 'againMs'): string {
  return `beds^${(Math.log(b.told[of] / a.told[of]) / Math.log(b.beds / a.beds)).toFixed(2)}`;
}

async function row(
  garden: Garden,
  record: WeatherRecord,
  at: { years: number; today: string },
): Promise<Told | undefined> {
  const climates = noClimates();
  const { today } = at;
  const planned = async (published?: Plan): Promise<{ plan: Plan | undefined; ms: number }> => {
    const from = performance.now();
    const rest = { now: `${today}T12:00:00.000Z`, factsVersion: 1, published };
    const asked = { garden: { ...garden }, today, climateName: 'record', plan: rest };
    const { plan } = await workOut(asked, { climates, ground: async () => ({ record }) });
    return { plan, ms: performance.now() - from };
  };
  try {
    const first = await planned();
    const again = await planned(first.plan);
    const told = { firstMs: first.ms, againMs: again.ms, planKiB: JSON.stringify(again.plan).length / 1024 };
    const figures = [told.firstMs, told.againMs, told.planKiB].map((value) => Math.round(value));
    console.log([garden.beds.length, at.years, ...figures].join(', '));
    return told;
  } catch (error) {
    console.log(`${garden.beds.length}, ${at.years}: refused: ${String(error).split('\n')[1]?.trim()}`);
    return undefined;
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
