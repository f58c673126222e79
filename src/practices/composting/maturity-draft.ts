/**
 * Seeing whether compost is ready.
 */
import type { Odds } from '../../climate/odds.ts';
import type { Bin, Pile } from '../../garden/garden.ts';
import { addDays, type Day } from '../../measures/days.ts';
import { quantity } from '../../measures/quantity.ts';
import { DUST } from '../cautions.ts';
import type { Reason, TaskDraft, Window } from '../draft.ts';
import { LOOK_MINUTES, START_UP_MINUTES } from '../effort.ts';
import { maturityKey } from '../keys.ts';
import { MANURE_DAYS } from '../manure.ts';
import { cureKey } from './cure-draft.ts';
import { CLOSED_RECORD_HOURS, HOT_RECORD, type HotRecord, hotRecord } from './hot-record.ts';
import { draftOfPile } from './pile-draft.ts';
import { builtLitres, COLD_DAYS, CURING_DAYS, finishedLitres, mayHoldManure, VOLUME_LOSS } from './pile-life.ts';

/** Days after a look that found it unready until the next. House default: two weeks, and two more to do it in. */
export const AGAIN_DAYS = { first: 14, last: 28 } as const;

/** The look after one that found it unready; nothing where there was none since a day. */
function againDraft(pile: Pile, bin: Bin, since: Day): TaskDraft | undefined {
  const last = pile.notReady?.findLast(({ on }) => on >= since);
  if (last === undefined) return undefined;
  const earliest = addDays(last.on, AGAIN_DAYS.first);
  return maturity(pile, bin, {
    window: { earliest, preferred: earliest, latest: addDays(last.on, AGAIN_DAYS.last) },
    reason: {
      rule: 'pile-maturity.again',
      saw: { on: last.on, failed: last.failed.join(' '), days: AGAIN_DAYS.first },
      source: 'house default',
    },
  });
}

/** See whether a cured pile is ready. */
export function curedDraft(pile: Pile, bin: Bin, since: Day): TaskDraft {
  const again = againDraft(pile, bin, since);
  if (again !== undefined) return again;
  return maturity(pile, bin, {
    window: {
      earliest: addDays(since, CURING_DAYS.low),
      preferred: addDays(since, CURING_DAYS.high),
      latest: addDays(since, 2 * CURING_DAYS.high),
    },
    reason: {
      rule: 'pile-maturity.cured',
      saw: { since, daysLow: CURING_DAYS.low, daysHigh: CURING_DAYS.high },
      source: 'compost:S16',
    },
  });
}

/** When a pile's heat should end: by what its method takes in a usual year, and over the years. */
interface Expected {
  end: { low: Day; usual: Day; high: Day };
  odds: Odds;
}

/** See whether a pile that still heats, or is still to be built, is ready: when that is expected. */
export function expectedDraft(pile: Pile, bin: Bin, { end, odds }: Expected): TaskDraft {
  const draft = maturity(pile, bin, {
    window: {
      earliest: addDays(end.low, CURING_DAYS.low),
      preferred: addDays(end.usual, CURING_DAYS.high),
      latest: addDays(end.high, CURING_DAYS.high),
    },
    reason: {
      rule: 'pile-maturity.expected',
      saw: { day: end.usual, daysLow: CURING_DAYS.low, daysHigh: CURING_DAYS.high },
      source: 'compost:S16',
    },
  });
  return {
    ...draft,
    odds: readyOdds(odds),
    oddsOf: `the day the pile in ${bin.name} is cured`,
    after: [{ key: cureKey(pile), minDays: CURING_DAYS.low }],
  };
}

/** When it should be ready: its curing after the end of its heat. */
function readyOdds({ early, median, late, ...odds }: Odds): Odds {
  const ready = (day: Day | undefined): Day | undefined => day && addDays(day, CURING_DAYS.high);
  const [first, middle, last] = [ready(early), ready(median), ready(late)];
  return {
    ...odds,
    ...(first === undefined ? {} : { early: first }),
    ...(middle === undefined ? {} : { median: middle }),
    ...(last === undefined ? {} : { late: last }),
  };
}

/** See whether a pile that nobody turns, or turns any more, is ready: from the early to the late end of what it takes. */
export function coldDraft(pile: Pile, bin: Bin, end: { low: Day; high: Day }): TaskDraft {
  const built = pile.built.day;
  const again = againDraft(pile, bin, built);
  if (again !== undefined) return again;
  return maturity(pile, bin, {
    window: {
      earliest: end.low,
      preferred: end.low,
      latest: end.high,
    },
    reason: {
      rule: pile.method === 'cold' ? 'pile-maturity.cold' : 'pile-maturity.left-alone',
      saw: { built, daysLow: COLD_DAYS.low, daysHigh: COLD_DAYS.high },
      source: 'common practice',
    },
  });
}

function maturity(pile: Pile, bin: Bin, at: { window: Window; reason: Reason }): TaskDraft {
  return {
    ...draftOfPile(pile, bin),
    key: maturityKey(pile.id),
    kind: 'check-maturity',
    job: { id: 'check-maturity', title: 'Is the compost ready?' },
    weight: 'work',
    title: `Is the compost in ${bin.name} ready?`,
    steps: [
      'Dig into the middle: dark, crumbly, smelling of earth, nothing left to recognise.',
      'Seal a handful in a bag for a week: no ammonia or sour smell when it is opened.',
      'Has it lain for a few days since it was last turned and wetted? It must not have heated again.',
      'All right: mark this done and the compost counts as found ready. Else say below what is amiss, and look again later.',
    ],
    cautions: [DUST, ...(mayHoldManure(pile) ? manureCaution(hotRecord(pile, bin)) : [])],
    window: at.window,
    ifMissed: 'still do',
    missedNote:
      'Nobody knows whether it may be spread yet, and unfinished compost harms seedlings: look before you spread any.',
    effortMinutes: LOOK_MINUTES + START_UP_MINUTES,
    onceMinutes: START_UP_MINUTES,
    confidence: 'derived',
    reasons: [at.reason, ...heatReasons(pile, bin), ...volumeReasons(pile)],
    makes: [{ makes: 'pile-finished' as const, pileId: pile.id, litres: finishedLitres(pile) }],
  };
}

/** Keep it off: said of what has no record, with what of the pile keeps heat from making one. */
function manureCaution({ passed, unfit }: HotRecord): string[] {
  if (passed !== undefined) return [];
  const { days, turns, fromC } = HOT_RECORD;
  const because =
    unfit === undefined
      ? `Compost that may hold manure counts as raw manure unless its log shows ${days} days at ${quantity(fromC, 'tempC')} with ${turns} turns`
      : `This compost may hold manure and counts as raw manure however hot it was: ${unfit}`;
  const wait = `Keep it off for ${MANURE_DAYS.touching} days before harvest, ${MANURE_DAYS.clear} where the crop does not touch soil.`;
  return [`${because}. ${wait} Follow local rules.`];
}

/** How far a pile that holds manure has come toward a hot record; nothing of others. */
export function heatReasons(pile: Pile, bin: Bin): Reason[] {
  if (!mayHoldManure(pile) || pile.ingredients.length === 0) return [];
  const { days, turns, hours, longestHours, unfit, passed } = hotRecord(pile, bin);
  if (passed === 'closed') {
    const saw = { hours: Math.floor(longestHours), hoursWanted: CLOSED_RECORD_HOURS, tempC: HOT_RECORD.fromC };
    return [{ rule: 'pile-maturity.heated-closed', saw, source: 'compost:S23' }];
  }
  return [
    {
      rule: passed ? 'pile-maturity.heated' : 'pile-maturity.not-heated',
      saw: {
        days,
        turns,
        hours: Math.floor(hours),
        daysWanted: HOT_RECORD.days,
        turnsWanted: HOT_RECORD.turns,
        tempC: HOT_RECORD.fromC,
        ...(unfit === undefined ? {} : { unfit }),
      },
      source: 'compost:S23',
    },
  ];
}

function volumeReasons(pile: Pile): Reason[] {
  const litresBuilt = builtLitres(pile);
  if (litresBuilt === 0) return [];
  const [percentLow, percentHigh] = [100 * VOLUME_LOSS.low, 100 * VOLUME_LOSS.high];
  const saw = { litresBuilt, percentLow, percentHigh, litres: finishedLitres(pile) };
  return [{ rule: 'pile-maturity.volume', saw, source: 'compost:S13' }];
}
