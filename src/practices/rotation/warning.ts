/**
 * The word about a crop whose family comes back too soon, where no changeover in its bed carries it.
 */

import type { Bed } from '../../garden/garden.ts';
import { addDays, latestOf } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import { type CropSpan, cropSpans } from '../bed-timeline.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import { LOOK_MINUTES } from '../effort.ts';
import { cropLockOut } from '../lock-out.ts';
import type { PracticeInput } from '../practice.ts';
import { plantingSubject } from '../subjects.ts';
import { returnsTooSoon } from './reasons.ts';

/** Days before a crop goes in that its rotation is looked at: time to choose another bed, or another crop. House default. */
const AHEAD_DAYS = { first: 28, usual: 21 } as const;

/** A look at the rotation for each crop still to go in that comes back too soon. */
export function warnings(input: PracticeInput, bed: Bed, clears: readonly TaskDraft[]): TaskDraft[] {
  const carried = new Set(clears.flatMap(({ reasons }) => reasons.map(inOneForm)));
  const spans = cropSpans(input.garden, bed.id, input.climate);
  return spans.flatMap((span) => {
    const { planting, from } = span;
    if (planting.start.happened || from <= input.garden.startedOn || from > input.until) return [];
    // A crop that a disease keeps out is named in the look at the plan already.
    if (cropLockOut(input.garden, bed.id, span.crop, from) !== undefined) return [];
    const back = returnsTooSoon(span, spans, input.climate);
    return back === undefined || carried.has(inOneForm(back)) ? [] : [warningDraft(input, bed, span, back)];
  });
}

function inOneForm({ rule, saw }: Reason): string {
  return JSON.stringify([rule, saw]);
}

function warningDraft(
  { garden }: PracticeInput,
  bed: Bed,
  { planting, crop, from }: CropSpan,
  back: Reason,
): TaskDraft {
  const grows = crop.name.toLowerCase();
  const latest = addDays(from, -1);
  const ahead = (days: number) => latestOf(garden.startedOn, addDays(from, -days));
  return {
    key: `rotation-check/planting:${planting.id}`,
    practice: 'rotation',
    kind: 'check-rotation',
    job: { id: 'check-rotation', title: 'Look at the rotation' },
    subject: plantingSubject(planting.id, grows, bed),
    weight: 'check',
    title: `Mind the rotation: ${grows} in ${bed.name}`,
    steps: [
      `It is to go in on ${dated(from)}. Choose another bed for it, or another family for this one, on the Beds page.`,
    ],
    cautions: [],
    supplies: [],
    window: { earliest: ahead(AHEAD_DAYS.first), preferred: ahead(AHEAD_DAYS.usual), latest },
    ifMissed: 'drop',
    missedNote:
      'What lives in the soil from the last crop of its family finds it again: watch it, and leave a longer gap after it.',
    effortMinutes: LOOK_MINUTES,
    needs: [],
    after: [],
    confidence: 'recorded',
    reasons: [back],
    makes: [],
  };
}
