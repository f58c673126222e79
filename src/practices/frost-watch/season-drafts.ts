/**
 * The season's watch while nobody has told of a night: one entry in spring and one in autumn, with the odds.
 */

import type { FreezeLimitF } from '../../climate/climate.ts';
import { freezeDay, freezeOdds } from '../../climate/freeze.ts';
import { seasonOf } from '../../climate/season.ts';
import { addDays, type Day, earliestOf, latestOf } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import { celsius } from '../../measures/units.ts';
import { knownAs } from '../confidence.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import { LOOK_MINUTES } from '../effort.ts';
import { isTender } from '../frozen.ts';
import { freezeWords } from '../odds-of.ts';
import type { PracticeInput } from '../practice.ts';
import { gardenSubject } from '../subjects.ts';
import { watchKey } from './keys.ts';
import { type Standing, standingOn } from './standing.ts';
import { cropNames } from './words.ts';

type Half = 'spring' | 'autumn';

/** Days before the watch of autumn begins that covers are best looked out, and the first on which they may be. */
const READY_DAYS = { best: 7, first: 14 } as const;

/** A half of a season with what stands out in it and the days of the watch. */
interface Watch {
  half: Half;
  season: number;
  crops: readonly Standing[];
  /** The day the watch ends in spring or begins in autumn. */
  turn: Day;
  window: TaskDraft['window'];
}

/** The watches of a season that are still unanswered: a night that was told shows that somebody watches. */
export function seasonDrafts(input: PracticeInput, watched: readonly Standing[], season: number): TaskDraft[] {
  const crops = watched.filter(({ crop }) => crop.frostClass !== 'hardy');
  const watches = [springWatch(input, crops, season), autumnWatch(input, crops, season)];
  return watches.flatMap((watch) =>
    watch === undefined || isAnswered(input, watch) ? [] : [watchDraft(input, watch)],
  );
}

function isAnswered({ garden }: PracticeInput, { window: { earliest, latest } }: Watch): boolean {
  return garden.coldNights.some(({ evening }) => evening >= earliest && evening <= latest);
}

/** The freeze that ends a crop: the first of any kind, or one of 28 °F where it stands a light one. */
function limitOf({ crop }: Standing): FreezeLimitF {
  return isTender(crop) ? 32 : 28;
}

function springWatch(input: PracticeInput, crops: readonly Standing[], season: number): Watch | undefined {
  const { climate, garden, today } = input;
  const safe = (one: Standing) =>
    freezeDay(climate, {
      event: 'last-spring',
      limitF: limitOf(one),
      season,
      chancePercent: garden.place.frostRisk,
    });
  const early = crops.flatMap((one) => {
    const until = seasonOf(climate.seasonTurn, one.from) === season ? safe(one) : undefined;
    return until === undefined || one.out > until || until <= today ? [] : [{ one, until }];
  });
  const [first, ...rest] = early;
  if (first === undefined) return undefined;
  const from = earliestOf(first.one.out, ...rest.map(({ one }) => one.out));
  const turn = latestOf(first.until, ...rest.map(({ until }) => until));
  const window = { earliest: from, preferred: from, latest: turn };
  return { half: 'spring', season, crops: early.map(({ one }) => one), turn, window };
}

function autumnWatch(input: PracticeInput, crops: readonly Standing[], season: number): Watch | undefined {
  const { climate, garden } = input;
  const event = 'first-autumn';
  const late = crops.flatMap((one) => {
    const ask = { event, limitF: limitOf(one), season } as const;
    const turn = freezeDay(climate, { ...ask, chancePercent: garden.place.frostRisk });
    if (turn === undefined || one.to === undefined || !standsOn(one, turn)) return [];
    if (seasonOf(climate.seasonTurn, one.to) !== season) return [];
    const { late: nearlyAlways = turn } = freezeOdds(climate, ask);
    return [{ one, turn, end: latestOf(turn, earliestOf(nearlyAlways, one.to)) }];
  });
  const [first, ...rest] = late;
  if (first === undefined) return undefined;
  const turn = earliestOf(first.turn, ...rest.map((row) => row.turn));
  const latest = latestOf(first.end, ...rest.map(({ end }) => end));
  const window = { earliest: addDays(turn, -READY_DAYS.first), preferred: addDays(turn, -READY_DAYS.best), latest };
  return { half: 'autumn', season, crops: late.map(({ one }) => one), turn, window };
}

/** Whether a crop is out on a day; one whose end is only worked out may well be picked longer, a stated end is meant. */
function standsOn(one: Standing, day: Day): boolean {
  if (one.end === 'days to maturity') return standingOn([one], day).length > 0;
  return one.out <= day && one.to !== undefined && one.to >= day;
}

function watchDraft({ garden, climate }: PracticeInput, watch: Watch): TaskDraft {
  const { half, season, crops, turn, window } = watch;
  const event = half === 'spring' ? 'last-spring' : 'first-autumn';
  const limits = [...new Set(crops.map(limitOf))].sort((a, b) => b - a);
  const ask = { event, limitF: limits[0] ?? 32, season } as const;
  const oddsReasons = limits.map((limitF): Reason => {
    const { early, median, late } = freezeOdds(climate, { event, limitF, season });
    const days = { ...(early && { early }), ...(median && { median }), ...(late && { late }) };
    const limit = Number(celsius(limitF).toFixed(1));
    return { rule: `frost-watch.${half}-odds`, saw: days, limit, source: "the garden's climate" };
  });
  return {
    key: watchKey(half, season),
    practice: 'frost-watch',
    kind: 'watch-for-frost',
    job: { id: 'frost-watch', title: 'Frost watch: have covers ready' },
    subject: gardenSubject(garden),
    weight: 'check',
    title: `Frost watch: have covers ready ${half === 'spring' ? 'until' : 'from'} ${dated(turn)}`,
    steps: [
      'Look out covers, hoops and weights, mend what is torn, and lay them by the beds.',
      `Out in that time: ${cropNames(crops)}.`,
      'Read the forecast on clear, calm afternoons. When it names a low near freezing, report it: what to cover, and by ' +
        'what hour, is then worked out for that evening.',
    ],
    cautions: [],
    supplies: [],
    window,
    ifMissed: 'drop',
    missedNote: 'What is tender is lost to a frost on an evening without covers at hand.',
    effortMinutes: 2 * LOOK_MINUTES,
    needs: [],
    after: [],
    confidence: knownAs(climate, 'modelled'),
    odds: freezeOdds(climate, ask),
    oddsOf: freezeWords(ask),
    reasons: [
      {
        rule: `frost-watch.${half}-turn`,
        saw: { day: turn, percent: garden.place.frostRisk },
        source: "the garden's climate",
      },
      ...oddsReasons,
    ],
    makes: [],
  };
}
