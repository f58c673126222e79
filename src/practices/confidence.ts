/**
 * How well a task's date is known.
 */
import type { Climate } from '../climate/climate.ts';
import type { Confidence } from '../climate/odds.ts';

/** A date's own confidence, held down to `assumed` where the climate under it is only assumed. */
export function knownAs(climate: Climate, best: Confidence): Confidence {
  return climate.confidence === 'assumed' ? 'assumed' : best;
}
