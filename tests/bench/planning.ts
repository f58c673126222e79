/**
 * What the thirty seasons cost: making the plan again after one weather report, with them and without, and how that grows
 * with beds and with seasons. All as ratios of times measured in turn.
 */
import { performance } from 'node:perf_hooks';
import type { Climate, SeasonWeather } from '../../src/climate/climate.ts';
import { usualOf, withWeather } from '../../src/climate/logged.ts';
import type { Garden } from '../../src/garden/garden.ts';
import { type LoggedDay, withLogged } from '../../src/garden/weather.ts';
import { addDays } from '../../src/measures/days.ts';
import { draftsOf } from '../../src/practices/catalogue.ts';
import { makePlan } from '../../src/schedule/reconcile.ts';
import type { GardenView } from '../../src/steward/doings/steward.ts';
import { bedsTimes } from './large-garden.ts';
import { median } from './median.ts';

const ROUNDS = 5;
const TIMES = [4, 16];
/** Days ahead that a plan is worked out for, as the steward does. */
const DAYS_AHEAD = 396;

/** A garden, and the climate behind it without the garden's own weather. */
interface Planned {
  garden: Garden;
  usual: Climate;
}

/** Prints the ratios for a garden as it stands. */
export function reportPlanning(view: GardenView): void {
  const { garden } = view;
  const usual = usualOf(view.climate);
  const whole = { garden, usual };
  const bare = { garden, usual: { ...usual, seasons: [] } };
  const told = (what: string, a: Planned, b: Planned) => console.log(`${what}: ${ratioText(view, a, b)}`);
  told(`planning again after one weather report, with ${usual.seasons.length} seasons against none`, whole, bare);
  for (const times of TIMES) {
    told(`the same, ${times} times the beds against once`, { garden: bedsTimes(garden, times), usual }, whole);
  }
  for (const times of TIMES) {
    const more = { garden, usual: { ...usual, seasons: seasonsTimes(usual.seasons, times) } };
    told(`the same, ${times} times the seasons against once`, more, whole);
  }
}

function ratioText(view: GardenView, a: Planned, b: Planned): string {
  let reports = 0;
  const replanned = ({ garden, usual }: Planned): number => {
    reports += 1;
    const from = performance.now();
    planAfterReport(view, { garden, usual }, reports);
    return performance.now() - from;
  };
  const pairs = Array.from({ length: ROUNDS + 1 }, () => ({ a: replanned(a), b: replanned(b) })).slice(1);
  const ratio = median(pairs.map((pair) => pair.a / pair.b));
  return `ratio of times ${ratio.toFixed(2)} (${median(pairs.map((pair) => pair.a)).toFixed(0)} ms)`;
}

/** What the steward does after a report of weather: the usual climate stands, what the log moves is worked out anew. */
function planAfterReport({ plan }: GardenView, { garden, usual }: Planned, report: number): void {
  const { today, revisedAt, factsVersion } = plan;
  const row: LoggedDay = { kind: 'observed', day: today, tminC: -2 - report / 100, tmaxC: 4, rainMm: 0, newSnowMm: 50 };
  const weather = withLogged(garden.weather, [row]);
  const climate = withWeather(usual, weather, today);
  const drafts = draftsOf({ garden: { ...garden, weather }, climate, today, until: addDays(today, DAYS_AHEAD) });
  makePlan({ garden, drafts, today, now: revisedAt, factsVersion, published: plan });
}

/** A record many times as long: the same seasons again before the first. */
function seasonsTimes(seasons: readonly SeasonWeather[], times: number): SeasonWeather[] {
  const span = (seasons.at(-1)?.season ?? 0) - (seasons[0]?.season ?? 0) + 1;
  return Array.from({ length: times }, (_, copy) => times - 1 - copy).flatMap((copy) =>
    seasons.map((row) => ({ ...row, season: row.season - copy * span })),
  );
}
