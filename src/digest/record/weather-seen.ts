/**
 * The season's own weather, as far as it was logged.
 */
import { LAST_SPRING_INDEX, type SeasonTurn } from '../../climate/climate.ts';
import { freezesAt } from '../../climate/freeze-record.ts';
import { seasonIndex } from '../../climate/season.ts';
import type { Garden } from '../../garden/garden.ts';
import type { LoggedDay } from '../../garden/weather.ts';
import { addDays, type Day, earliestOf } from '../../measures/days.ts';
import type { SeasonDays } from './season-days.ts';
import type { SeasonSummary } from './shape.ts';

/** The freeze that is told: water freezes, 32 °F. */
const FREEZE_F = 32;

interface Low {
  on: Day;
  tempC: number;
}

/** What was logged of the days of a season up to today; nothing where no day was. */
export function weatherSeen({ weather }: Garden, days: SeasonDays, today: Day): SeasonSummary['weather'] {
  const seen = weather.filter((row) => isSeenIn(row, days, today));
  const [first, last] = [seen[0], seen.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  const lowest = extreme(seen, 'tminC', (a, b) => a < b);
  const highest = extreme(seen, 'tmaxC', (a, b) => a > b);
  return {
    ...{ days: seen.length, first: first.day, last: last.day },
    ...(lowest === undefined ? {} : { lowest }),
    ...(highest === undefined ? {} : { highest }),
    ...summed(seen, 'rainMm'),
    ...summed(seen, 'newSnowMm'),
    ...summed(seen, 'wateringMm'),
  };
}

function isSeenIn({ day, kind }: LoggedDay, { from, to }: SeasonDays, today: Day): boolean {
  return kind === 'observed' && day >= from && day <= earliestOf(to, today);
}

function extreme(
  seen: readonly LoggedDay[],
  which: 'tminC' | 'tmaxC',
  beats: (a: number, b: number) => boolean,
): Low | undefined {
  const read = seen.flatMap((row) => (row[which] === undefined ? [] : [{ on: row.day, tempC: row[which] }]));
  const [first, ...rest] = read;
  return first && rest.reduce((best, each) => (beats(each.tempC, best.tempC) ? each : best), first);
}

function summed(seen: readonly LoggedDay[], which: 'rainMm' | 'newSnowMm' | 'wateringMm') {
  const read = seen.map((row) => row[which]).filter((value) => value !== undefined);
  const sum = read.reduce((total, value) => total + value, 0);
  // A tenth of a millimetre is as fine as rain is read; sums of tenths would else end in a row of noughts and a one.
  return read.length === 0 ? {} : { [which]: Math.round(sum * 10) / 10 };
}

/**
 * Freezes among the lows that were seen: the log's, and lows told of a night, which fall on the morning after its evening.
 * Nothing where no low was seen.
 */
export function freezesSeen(
  { weather, coldNights }: Garden,
  turn: SeasonTurn,
  { from, to }: SeasonDays,
  today: Day,
): SeasonSummary['freezes'] {
  const lows = [
    ...weather.flatMap(({ day, kind, tminC }) =>
      kind === 'observed' && tminC !== undefined ? [{ on: day, tempC: tminC }] : [],
    ),
    ...coldNights
      .filter(({ how }) => how === 'measured')
      .map(({ evening, lowC }) => ({ on: addDays(evening, 1), tempC: lowC })),
  ].filter(({ on }) => on >= from && on <= to && on <= today);
  if (lows.length === 0) return undefined;
  const freezing = eachDayOnce(lows).filter(({ tempC }) => freezesAt(tempC, FREEZE_F));
  const isSpring = ({ on }: Low): boolean => seasonIndex(turn, on) <= LAST_SPRING_INDEX;
  const lastSpring = freezing.findLast(isSpring);
  const firstAutumn = freezing.find((night) => !isSpring(night));
  return {
    nights: freezing.length,
    ...(lastSpring === undefined ? {} : { lastSpring }),
    ...(firstAutumn === undefined ? {} : { firstAutumn }),
  };
}

/** The lowest of each day, by day. */
function eachDayOnce(lows: readonly Low[]): Low[] {
  const byDay = new Map<Day, Low>();
  for (const low of lows) {
    const known = byDay.get(low.on);
    if (known === undefined || low.tempC < known.tempC) byDay.set(low.on, low);
  }
  return [...byDay.values()].sort((a, b) => (a.on < b.on ? -1 : 1));
}
