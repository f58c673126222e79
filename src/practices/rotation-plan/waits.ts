/**
 * How long families wait for one another in a bed.
 */
import { rotationIntervals } from '../../handbook/rotation.ts';
import type { RotationGroup } from '../../handbook/shapes/plant.ts';
import type { SourceId } from '../../handbook/shapes/row.ts';
import type { Vegetable } from '../../handbook/shapes/vegetable.ts';
import type { Entry } from './problem.ts';

/** The long end of a family's published interval, where it is longer than the one to plan by. */
export interface LongestWait {
  years: number;
  source: SourceId;
}

/** The long end of the interval of a crop's family. */
export function longestWait({ rotationGroup, rotationYears }: Vegetable): LongestWait | undefined {
  const interval = rotationIntervals.find(({ group }) => group === rotationGroup);
  const [source] = interval?.sources ?? [];
  if (interval === undefined || source === undefined || interval.years.high <= rotationYears) return undefined;
  return { years: interval.years.high, source };
}

/** Years between legumes in a bed, covers with a legume among them: they share root rots (veg:V62). */
const LEGUME_YEARS = 3;

/** Whether peas or beans are among a bed's crops too near for a cover with a legume ahead of a season. */
export function legumesWait(entries: readonly Entry[], season: number): boolean {
  return entries.some(
    ({ crop, season: its }) => crop.rotationGroup === 'legume' && Math.abs(its - season) < LEGUME_YEARS,
  );
}

/** Families that do not follow each other from one year to the next: both carry verticillium wilt (veg:V64). */
const WILT: readonly RotationGroup[] = ['mallow', 'nightshade'];

/** The family that is not to stand in a bed the year before or after a family. */
export function wiltNeighbour(group: RotationGroup): RotationGroup | undefined {
  const at = WILT.indexOf(group);
  return at < 0 ? undefined : WILT[1 - at];
}

/** Whether a bed's past is not known as far back as a crop's wait asks. */
export function isPastUnknown(
  { knownSince }: { knownSince?: number },
  first: number,
  { rotationYears }: Vegetable,
  season: number,
): boolean {
  return (knownSince ?? first) > season - rotationYears + 1;
}
