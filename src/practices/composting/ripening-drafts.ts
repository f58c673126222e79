/**
 * A pile growing ripe: curing, and the look whether it is ready.
 */
import type { Bin, Pile } from '../../garden/garden.ts';
import { addDays } from '../../measures/days.ts';
import type { TaskDraft } from '../draft.ts';
import { LOOK_MINUTES, START_UP_MINUTES } from '../effort.ts';
import type { PracticeInput } from '../practice.ts';
import { draftOfPile, forkingMinutes, OPENING_CAUTIONS } from './pile-draft.ts';
import {
  activeEnd,
  builtLitres,
  COLD_DAYS,
  CURING_DAYS,
  finishedLitres,
  HOT_DAYS,
  lastMoved,
  VOLUME_LOSS,
} from './pile-life.ts';
import { doneHeating } from './turn.ts';

/** Let a pile that has done heating cure. */
export function cureDraft(input: PracticeInput, pile: Pile, bin: Bin): TaskDraft {
  const end = activeEnd(pile, input.climate);
  const done = doneHeating(pile);
  const from = lastMoved(pile);
  const window = done
    ? { earliest: addDays(from, 7), preferred: addDays(from, 7), latest: addDays(from, 21) }
    : { earliest: end.low, preferred: end.usual, latest: end.high };
  return {
    ...draftOfPile(pile, bin),
    key: `pile-cure/pile:${pile.id}`,
    kind: 'cure-pile',
    job: { id: 'cure-pile', title: 'Let the pile cure' },
    weight: 'work',
    title: `Move the pile in ${bin.name} to curing`,
    steps: [
      'Turn it once more and wet it: if it heats again within five days it is not done, and goes on as before.',
      'Else heap it up, cover it against rain, and leave it alone.',
      `It cures for ${CURING_DAYS.low} to ${CURING_DAYS.high} days.`,
    ],
    cautions: OPENING_CAUTIONS,
    supplies: [{ what: 'fork' }, { what: 'cover against rain' }],
    window,
    ifMissed: 'still do',
    missedNote: 'No harm: it goes on ripening where it lies.',
    effortMinutes: forkingMinutes(finishedLitres(pile)),
    confidence: 'derived',
    reasons: [
      done
        ? { rule: 'pile-cure.no-heat', saw: { turns: pile.turns.length, moved: from }, source: 'compost:S47' as const }
        : {
            rule: 'pile-cure.days',
            saw: { built: pile.built.day, daysLow: HOT_DAYS.low, daysHigh: HOT_DAYS.high, day: end.usual },
            source: 'compost:S26',
          },
    ],
    makes: [{ makes: 'pile-curing' as const, pileId: pile.id }],
  };
}

const MATURITY_STEPS = [
  'Dig into the middle: dark, crumbly, smelling of earth, nothing left to recognise.',
  'Seal a handful in a bag for a week: no ammonia or sour smell when it is opened.',
  'Both right: mark this done and the compost counts as on hand. Else leave it two weeks and look again.',
] as const;

/** See whether a cured pile is ready. */
export function maturityDraft(pile: Pile, bin: Bin, since: string): TaskDraft {
  return maturity(pile, bin, {
    window: {
      earliest: addDays(since, CURING_DAYS.low),
      preferred: addDays(since, CURING_DAYS.low),
      latest: addDays(since, 2 * CURING_DAYS.high),
    },
    reason: {
      rule: 'pile-maturity.cured',
      saw: { since, daysLow: CURING_DAYS.low, daysHigh: CURING_DAYS.high },
      source: 'compost:S16',
    },
  });
}

/** See whether an unturned pile is ready. */
export function coldMaturityDraft(pile: Pile, bin: Bin): TaskDraft {
  const built = pile.built.day;
  return maturity(pile, bin, {
    window: {
      earliest: addDays(built, COLD_DAYS.low),
      preferred: addDays(built, COLD_DAYS.low),
      latest: addDays(built, COLD_DAYS.high),
    },
    reason: {
      rule: 'pile-maturity.cold',
      saw: { built, daysLow: COLD_DAYS.low, daysHigh: COLD_DAYS.high },
      source: 'common practice',
    },
  });
}

function maturity(
  pile: Pile,
  bin: Bin,
  at: { window: TaskDraft['window']; reason: TaskDraft['reasons'][number] },
): TaskDraft {
  const litres = finishedLitres(pile);
  return {
    ...draftOfPile(pile, bin),
    key: `pile-maturity/pile:${pile.id}`,
    kind: 'check-maturity',
    job: { id: 'check-maturity', title: 'Is the compost ready?' },
    weight: 'work',
    title: `Is the compost in ${bin.name} ready?`,
    steps: MATURITY_STEPS,
    cautions: [
      'Compost made with manure counts as raw manure unless its log shows 15 days at 55 °C (131 °F) with 5 turns: then 120 days before harvest, 90 where the crop does not touch soil. Follow local rules.',
    ],
    window: at.window,
    ifMissed: 'still do',
    missedNote: 'Until somebody looks, the compost is not counted on.',
    effortMinutes: LOOK_MINUTES + START_UP_MINUTES,
    confidence: 'derived',
    reasons: [
      at.reason,
      {
        rule: 'pile-maturity.volume',
        saw: {
          litresBuilt: builtLitres(pile),
          percentLow: 100 * VOLUME_LOSS.low,
          percentHigh: 100 * VOLUME_LOSS.high,
          litres,
        },
        source: 'compost:S13',
      },
    ],
    makes: [{ makes: 'pile-finished' as const, pileId: pile.id }],
  };
}
