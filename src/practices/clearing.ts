/**
 * The clearings that have to be done before anything else goes on a bed.
 */
import type { CropSpan } from './bed-timeline.ts';
import type { TaskKey } from './draft.ts';
import { clearKey } from './keys.ts';

/**
 * The tasks that clear a crop and whatever stood beside it. A crop that is out may still have its clearing open, so
 * that none is left out for that; a key whose task is not in the plan holds nothing up.
 *
 * @param spans every crop of the bed
 * @param before the crop that leaves the bed last, with its own key first
 */
export function clearingsOf(spans: readonly CropSpan[], before: CropSpan): TaskKey[] {
  const end = before.to;
  const beside = spans.filter(
    ({ planting, from, to }) =>
      planting.id !== before.planting.id &&
      end !== undefined &&
      to !== undefined &&
      from < end &&
      to > before.from &&
      to <= end,
  );
  return [before, ...beside].map(({ planting }) => clearKey(planting.id));
}
