/**
 * Seeing whether compost is ready.
 */
import type { Bin, Pile } from '../../garden/garden.ts';
import { addDays, type Day } from '../../measures/days.ts';
import { quantity } from '../../measures/quantity.ts';
import type { Reason, TaskDraft, Window } from '../draft.ts';
import { LOOK_MINUTES, START_UP_MINUTES } from '../effort.ts';
import { maturityKey } from '../keys.ts';
import { cureKey } from './cure-draft.ts';
import { HOT_RECORD, hotRecord } from './hot-record.ts';
import { draftOfPile } from './pile-draft.ts';
import { builtLitres, COLD_DAYS, CURING_DAYS, finishedLitres, mayHoldManure, VOLUME_LOSS } from './pile-life.ts';

/** Days raw manure is kept from a harvest: where the crop touches soil, and elsewhere (7 CFR 205.203(c), compost:S23). */
const MANURE_DAYS = { touching: 120, clear: 90 } as const;

/** See whether a cured pile is ready. */
export function curedDraft(pile: Pile, bin: Bin, since: Day): TaskDraft {
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

/** See whether a pile that still heats, or is still to be built, is ready: when that is expected. */
export function expectedDraft(pile: Pile, bin: Bin, end: { low: Day; usual: Day; high: Day }): TaskDraft {
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
  return { ...draft, after: [{ key: cureKey(pile.id), minDays: CURING_DAYS.low }] };
}

/** See whether a pile that nobody turns, or turns any more, is ready. */
export function coldDraft(pile: Pile, bin: Bin): TaskDraft {
  const built = pile.built.day;
  return maturity(pile, bin, {
    window: {
      earliest: addDays(built, COLD_DAYS.low),
      preferred: addDays(built, COLD_DAYS.low),
      latest: addDays(built, COLD_DAYS.high),
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
      'Both right: mark this done and the compost counts as found ready. Else leave it two weeks and look again.',
    ],
    cautions: mayHoldManure(pile) && !hotRecord(pile).passed ? [manureCaution()] : [],
    window: at.window,
    ifMissed: 'still do',
    missedNote:
      'Nobody knows whether it may be spread yet, and unfinished compost harms seedlings: look before you spread any.',
    effortMinutes: LOOK_MINUTES + START_UP_MINUTES,
    onceMinutes: START_UP_MINUTES,
    confidence: 'derived',
    reasons: [at.reason, ...heatReasons(pile), ...volumeReasons(pile)],
    makes: [{ makes: 'pile-finished' as const, pileId: pile.id }],
  };
}

function manureCaution(): string {
  const { days, turns, fromC } = HOT_RECORD;
  return (
    `Compost that may hold manure counts as raw manure unless its log shows ${days} days at ` +
    `${quantity(fromC, 'tempC')} with ${turns} turns: keep it off for ${MANURE_DAYS.touching} days before harvest, ` +
    `${MANURE_DAYS.clear} where the crop does not touch soil. Follow local rules.`
  );
}

function heatReasons(pile: Pile): Reason[] {
  if (!mayHoldManure(pile) || pile.ingredients.length === 0) return [];
  const { days, turns, passed } = hotRecord(pile);
  return [
    {
      rule: passed ? 'pile-maturity.heated' : 'pile-maturity.not-heated',
      saw: { days, turns, daysWanted: HOT_RECORD.days, turnsWanted: HOT_RECORD.turns, tempC: HOT_RECORD.fromC },
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
