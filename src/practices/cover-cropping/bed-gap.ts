/**
 * What a sowing owes to the gap it lies in: the work it waits for, and the crops on either side.
 */
import type { Bed } from '../../garden/garden.ts';
import type { Gap } from '../bed-timeline.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import { autumnTopdressKey, clearKey, cutKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { seasonAfter } from '../seasons.ts';
import type { SowWindow } from './sow-window.ts';

/**
 * A sowing waits for the bed to be clear of its crop and of the covers before it, and in autumn for the compost that
 * goes under it.
 */
export function waitsFor(
  input: PracticeInput,
  bed: Bed,
  gap: Gap | undefined,
  { half, window }: SowWindow,
): TaskDraft['after'] {
  const covers = input.garden.stands
    .filter(({ bedId, sow, cutOn, deadOn }) => bedId === bed.id && sow.happened && (cutOn ?? deadOn) === undefined)
    .map(({ id }) => ({ key: cutKey(id), minDays: 0 }))
    .sort((a, b) => (a.key < b.key ? -1 : 1));
  const clear = gap?.before ? [{ key: clearKey(gap.before.planting.id), minDays: 0 }] : [];
  const compost =
    half === 'autumn'
      ? [{ key: autumnTopdressKey(bed.id, seasonAfter(input.climate, window.preferred)), minDays: 0 }]
      : [];
  return [...clear, ...covers, ...compost];
}

/** The crops on either side of a gap. */
export function gapReasons(gap: Gap | undefined): Reason[] {
  if (gap?.before?.to === undefined) return [];
  return [
    {
      rule: 'cover-sow.gap',
      saw: {
        before: gap.before.crop.name.toLowerCase(),
        from: gap.before.to,
        ...(gap.next && gap.to ? { next: gap.next.crop.name.toLowerCase(), to: gap.to } : {}),
      },
      source: "the garden's own plan",
    },
  ];
}
