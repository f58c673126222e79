/**
 * Hardiness zones: the mean of every winter's coldest night, in halves of 5 °F (agro:S49, agro:S50, agro:S51).
 *
 * The zone says how cold winters get. It says nothing of frost dates, summer heat or snow.
 */
import { hardinessZones } from '../handbook/hardiness-zones.ts';
import { fahrenheit } from '../measures/units.ts';
import type { SeasonWeather } from './climate.ts';

/** Winters needed before their mean is called a zone; the published map uses thirty. House default. */
export const WINTERS_NEEDED = 10;

/** First index of a winter's year, counted in the season before it: 1 July north, 29 December south. */
const WINTER_YEAR_FROM = 182;

/** The three midwinter months: from this index of the season before (1 December north) … */
const MIDWINTER_FROM = 335;

/** … to this index of the season itself (28 February north). */
const MIDWINTER_TO = 59;

/** Divisions that only come from turning °C into °F and back lie below this, °F. */
const SAME_TEMPERATURE_F = 1e-6;

/**
 * The half zone of a mean yearly minimum. Compared in °F alone, the lower edge of a half belonging to it (house default:
 * published tables leave the edge open). Beyond the table its nearest zone counts.
 */
export function hardinessZoneOf(meanYearlyMinimumC: number): string {
  const meanF = fahrenheit(meanYearlyMinimumC) + SAME_TEMPERATURE_F;
  const zone = hardinessZones.findLast(({ fromF }) => fromF <= meanF) ?? hardinessZones[0];
  if (!zone) throw new RangeError('The table of hardiness zones is empty.');
  return zone.zone;
}

/**
 * The coldest night of each winter, °C. A winter's year runs from midsummer to midsummer and is named by the season
 * whose first half it ends with; a winter with a missing night in its three midwinter months is left out.
 *
 * @param seasons oldest first; seasons not next to each other make no winter
 */
export function yearlyMinima(seasons: readonly SeasonWeather[]): { season: number; tminC: number }[] {
  const minima: { season: number; tminC: number }[] = [];
  seasons.forEach((season, i) => {
    const before = seasons[i - 1];
    if (before?.season !== season.season - 1) return;
    const midwinter = [...before.tminC.slice(MIDWINTER_FROM - 1), ...season.tminC.slice(0, MIDWINTER_TO)];
    if (midwinter.includes(undefined)) return;
    const nights = [
      ...before.tminC.slice(WINTER_YEAR_FROM - 1),
      ...season.tminC.slice(0, WINTER_YEAR_FROM - 1),
      season.leapDay?.tminC,
    ].filter((tminC) => tminC !== undefined);
    minima.push({ season: season.season, tminC: Math.min(...nights) });
  });
  return minima;
}

/**
 * The mean yearly minimum in the middle of a half zone, °F.
 *
 * @param name "5b"
 */
export function zoneMiddleF(name: string): number {
  const zone = hardinessZones.find((each) => each.zone === name);
  if (!zone) throw new RangeError(`There is no hardiness zone "${name}": give a half zone such as "5b".`);
  return (zone.fromF + zone.belowF) / 2;
}
