/**
 * Sowing the thin places of a young stand again.
 */
import type { StandLook } from '../../garden/garden.ts';
import { quantity } from '../../measures/quantity.ts';
import { tenth } from '../../measures/tenth.ts';
import { areaOf } from '../bed-timeline.ts';
import { coverName } from '../covers.ts';
import type { Reason, TaskDraft, TaskKey } from '../draft.ts';
import { effortOverArea, SOW_COVER_MINUTES_PER_M2, START_UP_MINUTES } from '../effort.ts';
import type { PracticeInput } from '../practice.ts';
import { COVERED_SHARE } from '../stand-cover.ts';
import type { SowAgain } from './fit/sow-again.ts';
import { lookReason } from './look-reason.ts';
import { seedAmounts, seedReasons, seedSown, seedSupplies } from './seed.ts';
import { watering } from './sow-steps.ts';
import { draftOfStand, type StandInBed } from './stand.ts';

/** What of a kind's fit is told of its sowing into thin places. */
const TOLD: ReadonlySet<string> = new Set([
  'cover-fit.establish',
  'cover-fit.heat-left',
  'cover-fit.next-met',
  'cover-fit.next-short',
]);

/** Key of the sowing that the latest look at a stand asks for. */
export function sowAgainKey({ stand }: StandInBed): TaskKey {
  return `cover-sow-again/stand:${stand.id}/look:${stand.looked?.length ?? 0}`;
}

/** Sow the share of the bed that is bare, with the kind whose time and odds still hold. */
export function sowAgainDraft(input: PracticeInput, at: StandInBed, look: StandLook, again: SowAgain): TaskDraft {
  const { bed, stand } = at;
  const { parts, sow, coverId } = again;
  const name = coverName(coverId);
  const bareM2 = areaOf(bed) * (1 - COVERED_SHARE[look.covered]);
  const seed = seedAmounts(parts, bareM2, sow.window.preferred, input.climate);
  const amounts = seed.map(({ part, grams }) => `${part.cover.name}: ${quantity(grams, 'g')}`);
  return {
    ...draftOfStand(input, at),
    key: sowAgainKey(at),
    kind: 'sow-cover-again',
    job: { id: 'sow-cover-again', title: 'Sow thin places again' },
    weight: 'work',
    title: `Sow the thin places in ${bed.name} again, with ${name}`,
    steps: [
      ...(look.weedy ? ['Pull the weeds out of the bare places first.'] : []),
      'Use seed you have or can buy nearby: what is ordered now may come too late.',
      `Weigh out the seed for what is bare, ${quantity(tenth(bareM2), 'm2')}. ${amounts.join('; ')}.`,
      ...(parts.some(({ cover }) => cover.inoculant !== undefined)
        ? ['Damp the legume seed and roll it in its inoculant just before sowing.']
        : []),
      'Scatter it on the bare ground only, scratch it in between the plants and firm it with the back of the rake.',
      watering(bed.watered),
    ],
    cautions: [],
    supplies: [...seedSupplies(seed), { what: 'rake' }],
    window: sow.window,
    ifMissed: 'replace',
    missedNote: 'Too late to sow: lay leaves or straw over the bare places instead.',
    effortMinutes: effortOverArea(bareM2, SOW_COVER_MINUTES_PER_M2),
    onceMinutes: START_UP_MINUTES,
    needs: ['soil-fit'],
    reasons: [lookReason(look), kindReason(at, again), ...oddsTold(again), ...seedReasons(seed, bareM2)],
    makes: [{ makes: 'stand-resown', standId: stand.id, coverId }, ...seedSown(seed, stand.id)],
  };
}

function kindReason({ stand }: StandInBed, { coverId, sow }: SowAgain): Reason {
  const own = coverId === stand.coverId;
  return {
    rule: own ? 'cover-again.own' : 'cover-again.later',
    saw: { cover: coverName(coverId), ...(own ? {} : { first: coverName(stand.coverId) }) },
    limit: sow.window.latest,
    source: 'house default',
  };
}

function oddsTold({ fit: { pros, cons } }: SowAgain): Reason[] {
  return [...pros, ...cons].filter(({ rule }) => TOLD.has(rule));
}
