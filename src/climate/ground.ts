/**
 * The ground of a bed day by day: whether it can be worked, and how dry its top layer is.
 */
import { type Climate, DAYS_IN_SEASON } from './climate.ts';
import { isThawed } from './frozen-ground.ts';
import { holderOf } from './members.ts';
import { memory } from './remembered.ts';
import { seasonIndex, seasonOf } from './season.ts';
import { liesSnow, type SurfaceCourse, surfaceCourses } from './surface.ts';
import { depletionAfter, depletionAsFelt, type Handful, layerWaterOf, type SoilClass } from './top-layer.ts';

/** The ground at the end of a day. */
export interface GroundDay {
  /** Water missing from the top layer, mm; negative while it has still to drain. */
  depletionMm: number;
  /** Why it cannot be worked, or that it can. `soaked` has still to drain, `wet` has drained and has still to dry. */
  state: 'snow' | 'frozen' | 'soaked' | 'wet' | 'fit';
  /** Whether the day's weather was known. */
  known: boolean;
}

/** A season of ground by index − 1. */
export type GroundCourse = readonly GroundDay[];

const grounds = memory<Climate, string, readonly GroundCourse[]>();

/**
 * The ground of a soil through a season, one course a member of the ensemble, oldest first. Empty where the climate has
 * no daily record with rain in it.
 */
export function groundCourses(climate: Climate, season: number, soil: SoilClass): readonly GroundCourse[] {
  const { holder, season: at } = holderOf(climate, season);
  const felt = feltIn(climate, season, soil);
  const said = [...felt].map(([index, { crumbled }]) => `${season} ${index} ${crumbled}`);
  return grounds(holder, `${at} ${soil.texture.id} ${soil.raised} ${said.join(' ')}`, () =>
    surfaceCourses(climate, season).map((surface) => groundCourse(surface, soil, felt)),
  );
}

/** Handfuls by their place in a course: squeezed in the season before, or in the season. */
function feltIn({ seasonTurn }: Climate, season: number, { handfuls = [] }: SoilClass): ReadonlyMap<number, Handful> {
  const placed = handfuls.map((handful) => {
    const years = seasonOf(seasonTurn, handful.on) - season + 1;
    return [years * DAYS_IN_SEASON + seasonIndex(seasonTurn, handful.on) - 1, handful] as const;
  });
  return new Map(placed.filter(([at]) => at >= 0 && at < 2 * DAYS_IN_SEASON));
}

function groundCourse(surface: SurfaceCourse, soil: SoilClass, felt: ReadonlyMap<number, Handful>): GroundDay[] {
  const layer = layerWaterOf(soil);
  let depletionMm = 0;
  const days = surface.map(({ wetMm, referenceMm, frostIndex, snowWaterMm, known }, at): GroundDay => {
    const handful = felt.get(at);
    depletionMm = depletionAfter(depletionMm, wetMm, referenceMm, layer);
    if (handful !== undefined) depletionMm = depletionAsFelt(depletionMm, handful, layer);
    const dry = depletionMm >= layer.fitMm ? 'fit' : depletionMm < 0 ? 'soaked' : 'wet';
    const state = liesSnow({ snowWaterMm }) ? 'snow' : isThawed(frostIndex) ? dry : 'frozen';
    return { depletionMm, state, known };
  });
  return days.slice(-DAYS_IN_SEASON);
}
