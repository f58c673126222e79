/**
 * Changed amounts as a reader would tell them.
 */
import { formatQuantity } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { AmountChange } from '../../steward/doings/steward.ts';

/** "finished compost 60 L instead of 80 L", in a row; where a thing was or will be wanted in no amount it says so. */
export function amountsInWords(amounts: readonly AmountChange[], units: UnitSystem): string {
  return amounts
    .map(({ what, from, to }) => {
      const [was, is] = [from, to].map((amount) => (amount === undefined ? 'none' : formatQuantity(amount, units)));
      return `${what} ${is} instead of ${was}`;
    })
    .join(', ');
}
