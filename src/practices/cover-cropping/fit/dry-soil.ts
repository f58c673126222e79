/**
 * How likely the top of a bed is dry on the day a cover is sown, so that it has to be watered up.
 */
import { groundCourses } from '../../../climate/ground.ts';
import { seasonIndex, seasonOf } from '../../../climate/season.ts';
import { layerWaterOf } from '../../../climate/top-layer.ts';
import type { Bed } from '../../../garden/garden.ts';
import type { Day } from '../../../measures/days.ts';
import type { PracticeInput } from '../../practice.ts';
import { soilClassOf, textureOf } from '../../soil-class.ts';
import type { Share } from './fit.ts';

/** Share of the water that can go from the top layer at which seed in it waits for rain. House default. */
const DRY_SHARE = 0.8;

/** Seasons of the record in which the top layer is dry on a day; nothing without a daily record that has rain in it. */
export function dryOn({ garden, climate }: PracticeInput, bed: Bed, day: Day): Share | undefined {
  const soil = soilClassOf(garden, textureOf(garden, bed));
  const { mostMm } = layerWaterOf(soil);
  const at = seasonIndex(climate.seasonTurn, day) - 1;
  const days = groundCourses(climate, seasonOf(climate.seasonTurn, day), soil)
    .flatMap((course) => course[at] ?? [])
    .filter(({ known }) => known);
  if (days.length === 0) return undefined;
  return { of: days.filter(({ depletionMm }) => depletionMm >= DRY_SHARE * mostMm).length, among: days.length };
}
