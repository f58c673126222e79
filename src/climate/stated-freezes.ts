/**
 * The six freeze dates of a climate from two that are known, the last and the first freeze at 0 °C.
 *
 * Those at −2.2 and −4.4 °C are derived: the mean minimum is followed from the known date to where it is as much
 * colder. The spread over years is taken to be that of the known date.
 */
import { celsius } from '../measures/units.ts';
import type { Climate, FreezeDates, FreezeEvent, FreezeLimitF } from './climate.ts';
import { FREEZE_SPREAD_DAYS } from './fitted.ts';
import { anchoredIndex, type MinimumCourse } from './freeze-curve.ts';
import { freezeTable } from './freeze-table.ts';
import type { Site } from './site.ts';

/** A freeze date at 0 °C: its median and its spread to either side. */
export type KnownFreeze = Omit<Extract<FreezeDates, { kind: 'stated' }>, 'kind'>;

/** A median with the spread that stations usually have (see {@link FREEZE_SPREAD_DAYS}). */
export function usuallySpread(event: FreezeEvent, median: number): KnownFreeze {
  return { median, spreadBeforeDays: FREEZE_SPREAD_DAYS[event], spreadAfterDays: FREEZE_SPREAD_DAYS[event] };
}

/** What is true of every climate whose freeze dates are stated. */
export const DERIVED_NOTE =
  'Dates of freezes at 28 and 24 °F are derived from those at 32 °F along the mean minimum: the median good to about a week, the cautious date to ten days.';

/**
 * All six freeze dates.
 *
 * @param known dates at 0 °C, for the place of the course
 * @param site its offsets are applied: degrees along the course, days at the end
 */
export function statedFreezes(
  known: Readonly<Record<FreezeEvent, KnownFreeze>>,
  course: MinimumCourse,
  { tempOffsetC, frostOffsetDays }: Pick<Site, 'tempOffsetC' | 'frostOffsetDays'>,
): Climate['freezes'] {
  return freezeTable((limitF, event) => {
    const date = known[event];
    const index = anchoredIndex(course, event, date.median, colderThanFreezing(limitF) - tempOffsetC);
    if (index === undefined) return { kind: 'none' };
    return { kind: 'stated', ...date, median: index + (event === 'last-spring' ? frostOffsetDays : -frostOffsetDays) };
  });
}

/** Degrees of a limit below freezing, °C: 0, −2.2 or −4.4. */
function colderThanFreezing(limitF: FreezeLimitF): number {
  return celsius(limitF);
}

/** A climate without any freeze date. */
export const NO_FREEZES: Climate['freezes'] = freezeTable(() => ({ kind: 'none' }));
