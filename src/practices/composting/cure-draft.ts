/**
 * Letting a pile that has done heating cure.
 */
import type { Bin, Pile } from '../../garden/garden.ts';
import { addDays, type Day, latestOf } from '../../measures/days.ts';
import type { Reason, TaskDraft, TaskKey, Window } from '../draft.ts';
import { START_UP_MINUTES } from '../effort.ts';
import { draftOfPile, forkingMinutes, pileCautions } from './pile-draft.ts';
import { CURING_DAYS, finishedLitres, HOT_DAYS, heatedAgain, lastMoved } from './pile-life.ts';
import { CALENDAR_DAYS, COLD_C } from './turn.ts';

/** Days in which a pile that no longer heats is moved to cure. House default. */
const MOVE_DAYS = 14;

/** Key of the task that moves a pile to cure; again under another where it was moved too soon and heated. */
export function cureKey(pile: Pile): TaskKey {
  const again = heatedAgain(pile).length;
  return `pile-cure/pile:${pile.id}${again === 0 ? '' : `/again:${again}`}`;
}

/** Why a pile is moved to cure: its thermometer says so, or its days are full. */
type DoneBecause = { coldOn: Day } | { end: { low: Day; usual: Day; high: Day } };

/** Move a pile to curing. */
export function cureDraft(pile: Pile, bin: Bin, because: DoneBecause): TaskDraft {
  return {
    ...draftOfPile(pile, bin),
    key: cureKey(pile),
    kind: 'cure-pile',
    job: { id: 'cure-pile', title: 'Let the pile cure' },
    weight: 'work',
    title: `Move the pile in ${bin.name} to curing`,
    steps: [
      'Turn it once more and wet it: if it heats again within five days it is not done, and goes on as before.',
      'Else heap it up, cover it against rain, and leave it alone.',
      `It cures for ${CURING_DAYS.low} to ${CURING_DAYS.high} days.`,
    ],
    cautions: pileCautions(pile),
    supplies: [{ what: 'fork' }, { what: 'cover against rain' }],
    window: windowOf(pile, because),
    ifMissed: 'still do',
    missedNote: 'No harm: it goes on ripening where it lies.',
    effortMinutes: forkingMinutes(finishedLitres(pile)),
    onceMinutes: START_UP_MINUTES,
    confidence: 'coldOn' in because ? 'recorded' : 'derived',
    reasons: [reasonOf(pile, because)],
    makes: [{ makes: 'pile-curing' as const, pileId: pile.id }],
  };
}

function windowOf(pile: Pile, because: DoneBecause): Window {
  if ('end' in because) {
    return { earliest: because.end.low, preferred: because.end.usual, latest: because.end.high };
  }
  const from = latestOf(because.coldOn, addDays(lastMoved(pile), CALENDAR_DAYS.low));
  return { earliest: from, preferred: from, latest: addDays(from, MOVE_DAYS) };
}

function reasonOf(pile: Pile, because: DoneBecause): Reason {
  if ('coldOn' in because) {
    return {
      rule: 'pile-cure.no-heat',
      saw: { turns: pile.turns.length, on: because.coldOn },
      limit: COLD_C,
      source: 'compost:S47',
    };
  }
  return {
    rule: 'pile-cure.days',
    saw: { built: pile.built.day, daysLow: HOT_DAYS.low, daysHigh: HOT_DAYS.high, day: because.end.usual },
    source: 'compost:S26',
  };
}
