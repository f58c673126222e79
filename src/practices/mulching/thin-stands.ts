/**
 * Mulch on the bare places of a cover that came up thin and is not sown again.
 */
import { areaOf } from '../bed-timeline.ts';
import type { TaskDraft } from '../draft.ts';
import { effortOverArea, MULCH_MINUTES_PER_M2 } from '../effort.ts';
import { BARE_DEPTH_MM } from '../mulch-layer.ts';
import type { Findings, PracticeInput, ThinStand } from '../practice.ts';
import { standSubject } from '../subjects.ts';
import { atOnce, LEAST_BARE_DAYS } from './bare-window.ts';
import { amountReason, CARRYING_CAUTIONS, draftOnBed, mulchAmount, mulchSupply } from './mulch.ts';

/** One mulch for every thin stand whose bed stays open long enough to be worth it. */
export function thinStandDrafts(input: PracticeInput, found: Findings): TaskDraft[] {
  return found.thinStands.flatMap((thin) => {
    const bed = input.garden.beds.find(({ id }) => id === thin.bedId);
    const { window, days = LEAST_BARE_DAYS } = atOnce(input, thin.from, thin.to);
    return bed === undefined || days < LEAST_BARE_DAYS ? [] : [{ ...thinDraft(input, bed, thin), window }];
  });
}

function thinDraft(
  input: PracticeInput,
  bed: PracticeInput['garden']['beds'][number],
  { standId, cover, bareShare, why, after }: ThinStand,
): Omit<TaskDraft, 'window'> {
  return {
    ...draftOnBed(input, bed),
    subject: standSubject(standId, cover, bed),
    key: `mulch-thin/stand:${standId}`,
    kind: 'mulch-thin-cover',
    job: { id: 'mulch-thin-cover', title: 'Mulch bare places among covers' },
    title: `Mulch the bare places among the ${cover} in ${bed.name}`,
    steps: [
      `Lay shredded leaves or clean straw where the ground is bare: ${mulchAmount(bed, BARE_DEPTH_MM, bareShare)}.`,
      'Pull weeds first. Tuck it up to the young plants and leave them their light.',
      'Wet it so that it stays.',
    ],
    cautions: CARRYING_CAUTIONS,
    supplies: [mulchSupply(bed, BARE_DEPTH_MM, undefined, bareShare), { what: 'barrow' }],
    effortMinutes: effortOverArea(areaOf(bed) * bareShare, MULCH_MINUTES_PER_M2),
    ifMissed: 'still do',
    missedNote: 'Bare places wash and seal in rain, and weeds take them: lay it late rather than not at all.',
    after: after.map((key) => ({ key, minDays: 0 })),
    reasons: [...why, amountReason('mulch-bare.amount', bed, BARE_DEPTH_MM, 'veg:V22', bareShare)],
  };
}
