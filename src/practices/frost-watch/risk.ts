/**
 * What a night would take, bed by bed.
 */
import type { Bed } from '../../garden/garden.ts';
import { type Day, daysBetween } from '../../measures/days.ts';
import { areaOf, firstRipe } from '../bed-timeline.ts';
import { isTender } from '../frozen.ts';
import type { Standing } from './standing.ts';

/**
 * Degrees above a tender crop's own limit at which a forecast is acted on. Frost is warned of from 36 °F in the shelter
 * of a thermometer (agro:S7): on a clear night leaves are colder than the air that is forecast.
 */
export const FORECAST_MARGIN_C = 2.2;

/** Halves of a degree only come from turning °F into °C: they decide nothing. */
const SAME_TEMPERATURE_C = 0.05;

/** A bed with what a night would hurt in it. */
export interface BedAtRisk {
  bed: Bed;
  crops: readonly Standing[];
  /** Degrees the warmest of their limits lies above the low; below zero where only the margin is touched. */
  shortC: number;
  /** Square metres times days of harvest still to come. */
  toLoseM2Days: number;
}

/** Whether a forecast low asks for something to be done about a crop. */
export function isAtRisk({ crop }: Standing, lowC: number): boolean {
  const limitC = crop.damageTempC + (isTender(crop) ? FORECAST_MARGIN_C : 0);
  return lowC <= limitC + SAME_TEMPERATURE_C;
}

/** Whether a low that was measured hurts a crop. */
export function isHurt({ crop }: Standing, lowC: number): boolean {
  return lowC <= crop.damageTempC + SAME_TEMPERATURE_C;
}

/** The crops a forecast low would hurt, by bed, the bed with the most to lose first. */
export function bedsAtRisk(standing: readonly Standing[], evening: Day, lowC: number): BedAtRisk[] {
  const byBed = new Map<string, Standing[]>();
  for (const one of standing) byBed.set(one.bed.id, [...(byBed.get(one.bed.id) ?? []), one]);
  return [...byBed.values()]
    .flatMap((inBed) => {
      const crops = inBed.filter((one) => isAtRisk(one, lowC));
      const [first] = crops;
      if (first === undefined) return [];
      const shareM2 = areaOf(first.bed) / inBed.length;
      const shortC = Math.max(...crops.map(({ crop }) => crop.damageTempC - lowC));
      const toLoseM2Days = crops.reduce((sum, one) => sum + shareM2 * daysToCome(one, evening), 0);
      return [{ bed: first.bed, crops, shortC, toLoseM2Days }];
    })
    .sort((a, b) => b.toLoseM2Days - a.toLoseM2Days || (a.bed.id < b.bed.id ? -1 : 1));
}

/** Days of its picking time that a crop still has before it after an evening; one at least. */
function daysToCome(one: Standing, evening: Day): number {
  const { low, high } = one.crop.harvestSpanDays;
  const whole = (low + high) / 2;
  return Math.max(1, whole - Math.max(0, daysBetween(firstRipe(one), evening)));
}
