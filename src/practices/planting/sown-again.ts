/**
 * Kinds sown again through a season: until when, and where the last sowings of a succession come too late.
 */
import { sownAgainOf } from '../../handbook/sown-again.ts';
import { addDays, type Day } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import type { Window } from '../draft.ts';
import type { PlantingInBed } from './planting-in-bed.ts';

/** Days before the last of a season within which one sowing in a bed is enough. House default. */
const NEAR_LAST_DAYS = 7;

/**
 * The step that says until when a crop may be sown again, for kinds of which that is usual.
 *
 * @param start the window of this sowing, and the last day season and bed let the crop in where that is known
 */
export function againSteps(
  at: PlantingInBed,
  { window: { preferred }, lastDay }: { window: Window; lastDay?: Day },
): string[] {
  const usual = sownAgainOf(at.crop.id);
  if (usual === undefined || lastDay === undefined) return [];
  const next = nextSowing(at);
  if (next !== undefined) return [`The next sowing of ${at.name} here is planned for ${dated(next)}.`];
  const { low, high } = usual.days;
  if (addDays(preferred, low) > lastDay) return [`No later sowing of ${at.name} is ready in time here this season.`];
  return [
    `For a longer harvest sow ${at.name} again in ${low} to ${high} days: here it may be sown until ${dated(lastDay)}.`,
  ];
}

/** The day of the next sowing of the same crop in the same bed, before this one is over. */
function nextSowing({ planting, spans }: PlantingInBed): Day | undefined {
  const own = spans.find((span) => span.planting.id === planting.id);
  return spans.find(
    ({ planting: { cropId, start }, from }) =>
      cropId === planting.cropId && start.how === 'sow' && from > planting.start.day && from < (own?.to ?? from),
  )?.from;
}

/** The sowing of the same crop in the bed that stands so near the last day that a later one adds nothing. */
export function lateAfter({ planting, spans }: PlantingInBed, latest: Day): Day | undefined {
  return spans.findLast(
    ({ planting: { id, cropId }, from }) =>
      id !== planting.id &&
      cropId === planting.cropId &&
      from <= planting.start.day &&
      from > addDays(latest, -NEAR_LAST_DAYS),
  )?.from;
}
