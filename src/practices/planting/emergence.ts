/**
 * When seed is expected to be up: its rate at the soil's usual warmth, added up day by day.
 */
import type { Climate } from '../../climate/climate.ts';
import { soilTempNormC } from '../../climate/soil-temperature.ts';
import { type EmergenceDays, emergenceByVegetable } from '../../handbook/emergence.ts';
import { addDays, type Day } from '../../measures/days.ts';

/** Days after which seed that is still not up is not waited for. House default. */
const LONGEST_DAYS = 60;
/** Degrees below the coldest temperature a kind came up at where nothing grows any more: one column of the trial. */
const FALL_C = 5;

/**
 * The day seed sown on a day is expected to be up.
 *
 * @returns nothing for kinds not grown from seed, and where the soil stays too cold for two months
 */
export function expectedUp(climate: Climate, cropId: string, sown: Day): Day | undefined {
  const rates = emergenceByVegetable.get(cropId);
  if (rates === undefined) return undefined;
  let grown = 0;
  for (let days = 1; days <= LONGEST_DAYS; days += 1) {
    const day = addDays(sown, days);
    grown += ratePerDay(rates, soilTempNormC(climate, day));
    if (grown >= 1) return day;
  }
  return undefined;
}

/**
 * Share of the way to emergence made in a day at a soil temperature, 0–1. Straight lines between the temperatures of
 * the trial; below the coldest of them it comes up at falls to nothing within {@link FALL_C}, above the warmest it stays.
 */
export function ratePerDay({ byTempC }: EmergenceDays, tempC: number): number {
  const [coldest] = byTempC;
  if (coldest === undefined) return 0;
  if (tempC <= coldest[0]) return Math.max(0, 1 - (coldest[0] - tempC) / FALL_C) / coldest[1];
  let below = coldest;
  for (const here of byTempC) {
    if (here[0] >= tempC) {
      const share = here[0] === below[0] ? 1 : (tempC - below[0]) / (here[0] - below[0]);
      return 1 / below[1] + share * (1 / here[1] - 1 / below[1]);
    }
    below = here;
  }
  return 1 / below[1];
}
