/**
 * The six freeze dates of a climate, gathered.
 */
import type { Climate, FreezeDates, FreezeEvent, FreezeLimitF } from './climate.ts';

/** Every freeze limit with both its events, filled by one function. */
export function freezeTable(datesOf: (limitF: FreezeLimitF, event: FreezeEvent) => FreezeDates): Climate['freezes'] {
  const both = (limitF: FreezeLimitF): Record<FreezeEvent, FreezeDates> => ({
    'last-spring': datesOf(limitF, 'last-spring'),
    'first-autumn': datesOf(limitF, 'first-autumn'),
  });
  return { 32: both(32), 28: both(28), 24: both(24) };
}
