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
  /** Set where they had been dry before today and were wetted since. */
  again?: true;
}

/**
 * The first day after a sowing on which the surface is dry in half of the members or more: when the water that
 * evaporates readily has gone (FAO-56, agro:S1). The rows were watered in, so that each begins with a full top layer. Rows
 * that dried and have been wetted since are looked at when they dry the next time.
 *
 * @returns nothing where it stays moist until the seed is up or the season ends, or no rain is known
 */
export function dryRows({ garden, climate, today }: PracticeInput, bed: Bed, sown: Day, up: Day): DryRows | undefined {
  const layer = layerWaterOf({ texture: textureRow(textureOf(garden, bed)), raised: bed.raised });
  const from = seasonIndex(climate.seasonTurn, sown);
  const days = daysBetween(sown, up);
  const courses = surfaceCourses(climate, seasonOf(climate.seasonTurn, sown));
  const passed = Math.max(0, Math.min(days - 1, daysBetween(sown, today)));
  const spells = courses.map((course) =>
    drySpell(course.slice(-DAYS_IN_SEASON).slice(from, from + days), layer, passed),
  );
  const known = spells.flatMap((spell) => spell ?? []).sort((a, b) => a.after - b.after);
  const half = known[Math.ceil(courses.length / 2) - 1];
  if (half === undefined) return undefined;
  const again = 2 * known.filter((spell) => spell.again).length >= courses.length;
  const told = { day: addDays(sown, half.after), goneMm: READILY_EVAPORATED_MM, years: courses.length };
  return again ? { ...told, again } : told;
}

/** The dry spell that lasts on a day or is the next after it: days to its beginning, and whether there was one before. */
interface DrySpell {
  after: number;
  again: boolean;
}

/** Nothing where the surface stays moist from then on. */
function drySpell(days: readonly SurfaceDay[], layer: LayerWater, passed: number): DrySpell | undefined {
  let [depletionMm, spells] = [0, 0];
  let began: number | undefined;
  for (const [at, { wetMm, referenceMm }] of days.entries()) {
    depletionMm = depletionAfter(depletionMm, wetMm, referenceMm, layer);
    if (depletionMm < READILY_EVAPORATED_MM) began = undefined;
    else if (began === undefined) {
      began = at;
      spells += 1;
    }
    if (began !== undefined && at >= passed) return { after: began + 1, again: spells > 1 };
  }
  return undefined;
}
