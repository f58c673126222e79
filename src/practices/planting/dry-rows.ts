/**
 * When the rows of a sowing dry, as the season so far and the seasons of the record have it.
 */
import { DAYS_IN_SEASON } from '../../climate/climate.ts';
import { seasonIndex, seasonOf } from '../../climate/season.ts';
import { type SurfaceDay, surfaceCourses } from '../../climate/surface.ts';
import { depletionAfter, type LayerWater, layerWaterOf, READILY_EVAPORATED_MM } from '../../climate/top-layer.ts';
import type { Bed } from '../../garden/garden.ts';
import { addDays, type Day, daysBetween } from '../../measures/days.ts';
import type { PracticeInput } from '../practice.ts';
import { textureOf, textureRow } from '../soil-class.ts';

/** The day rows are reckoned dry. */
export interface DryRows {
  day: Day;
  /** Water gone from the top layer by which its surface is dry, mm. */
  goneMm: number;
  /** Seasons it was counted over. */
  years: number;
}

/**
 * The first day after a sowing on which the surface is dry in half of the members or more: when the water that
 * evaporates readily has gone (FAO-56, agro:S1). The rows were watered in, so that each begins with a full top layer.
 *
 * @returns nothing where it stays moist until the seed is up or the season ends, or no rain is known
 */
export function dryRows({ garden, climate }: PracticeInput, bed: Bed, sown: Day, up: Day): DryRows | undefined {
  const layer = layerWaterOf({ texture: textureRow(textureOf(garden, bed)), raised: bed.raised });
  const from = seasonIndex(climate.seasonTurn, sown);
  const days = daysBetween(sown, up);
  const courses = surfaceCourses(climate, seasonOf(climate.seasonTurn, sown));
  const dryAfter = courses.map((course) => daysToDry(course.slice(-DAYS_IN_SEASON).slice(from, from + days), layer));
  const found = dryAfter.filter((after) => after !== undefined).sort((a, b) => a - b);
  const half = found[Math.ceil(courses.length / 2) - 1];
  if (half === undefined) return undefined;
  return { day: addDays(sown, half), goneMm: READILY_EVAPORATED_MM, years: courses.length };
}

/** Days until the surface is dry; nothing where it stays moist. */
function daysToDry(days: readonly SurfaceDay[], layer: LayerWater): number | undefined {
  let depletionMm = 0;
  const at = days.findIndex(({ wetMm, referenceMm }) => {
    depletionMm = depletionAfter(depletionMm, wetMm, referenceMm, layer);
    return depletionMm >= READILY_EVAPORATED_MM;
  });
  return at < 0 ? undefined : at + 1;
}
