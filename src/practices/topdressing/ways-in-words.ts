/**
 * The ways out of a shortage, in words.
 */
import type { Day } from '../../measures/days.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import { LITRES_PER_CUBIC_YARD } from '../../measures/units.ts';
import type { WaysOut } from '../compost-balance.ts';

/** In bags or loose: how many, how heavy, and what a seller may ask for. */
export function boughtWords({ litres, bags, bagLitres, kg, barrows }: WaysOut['buy']): string {
  const loose =
    litres < LITRES_PER_CUBIC_YARD
      ? `Loose, many sellers bring no less than ${quantity(LITRES_PER_CUBIC_YARD, 'L')}: ask for their least load`
      : `Loose it is ${yards(litres)} cubic yards (${quantity(litres, 'L')}): ask what a load holds, and where it can be tipped`;
  return (
    `In bags that is ${bags === 1 ? 'one' : bags} of ${quantity(bagLitres, 'L')}, about ${quantity(kg, 'kg')} in all ` +
    `(${barrows}). ${loose}. Have a tarp to tip it on.`
  );
}

function yards(litres: number): number {
  return Math.ceil((litres / LITRES_PER_CUBIC_YARD) * 10) / 10;
}

/** What the beds can be given instead. */
export function thinnerWords({ thinner, evenPercent }: Pick<WaysOut, 'thinner' | 'evenPercent'>): string {
  const none = thinner.filter(({ depthMm }) => depthMm <= 0).map(({ bedName }) => bedName);
  const words = [
    ...thinner
      .filter(({ depthMm }) => depthMm > 0)
      .map(
        ({ bedName, depthMm, insteadMm }) =>
          `${Math.floor((100 * depthMm) / insteadMm)} % of the ${quantity(insteadMm, 'mm')} on ${bedName}`,
      ),
    ...(none.length > 0 ? [`no layer this time on ${none.join(', ')}`] : []),
  ].join(', ');
  return evenPercent > 0 && none.length > 0 ? `${words}; or ${evenPercent} % of its layer on every bed` : words;
}

/**
 * A pile that would close the gap.
 *
 * @param by the last day of the first bed that goes short: a pile that is ready later serves only what comes after
 */
export function pileWords({ litres, startBy, readyBy }: NonNullable<WaysOut['pile']>, by: Day): string {
  return (
    `Build a hot pile of ${quantity(litres, 'L')} by ${dated(startBy)}, two parts of browns to one of greens, and turn it ` +
    `every week: its compost can then be counted on by ${dated(readyBy)}${readyBy > by ? ', for the last of these layers and no sooner' : ''}.`
  );
}
