/**
 * What a task's odds are the odds of, in words that begin small; amounts are marked.
 */
import type { FreezeEvent, FreezeLimitF } from '../climate/climate.ts';
import { quantity } from '../measures/quantity.ts';
import { celsius } from '../measures/units.ts';

/** "the last spring freeze of ⟦0 tempC⟧". */
export function freezeWords({ event, limitF }: { event: FreezeEvent; limitF: FreezeLimitF }): string {
  const which = event === 'last-spring' ? 'last spring' : 'first autumn';
  return `the ${which} freeze of ${quantity(Number(celsius(limitF).toFixed(1)), 'tempC')}`;
}

/** "the first spring day with soil of ⟦5 tempC⟧", and fit to work where rain is known too. */
export function soilWarmWords(tempC: number, { fit = false } = {}): string {
  return `the first spring day with soil ${fit ? 'fit to work and ' : ''}of ${quantity(tempC, 'tempC')}`;
}
