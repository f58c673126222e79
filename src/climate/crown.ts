/**
 * Winters as a plant at the ground lives through them: the coldest it gets at the crown, and how long it had to harden.
 *
 * Each winter of the ensemble runs from midsummer to midsummer and is named by the season whose first half it ends in. A
 * night's crown temperature is the air's minimum and what lying snow adds: a cautious line of ours below the figures seen,
 * phenology:P40 among them, which disagree. Bare soil adds nothing: no figure was seen.
 */
import { type Climate, DAYS_IN_SEASON, type SeasonTurn, type SeasonWeather } from './climate.ts';
import { isThawed } from './frozen-ground.ts';
import { holderOf, membersFor } from './members.ts';
import { memory } from './remembered.ts';
import { dayMeanC, daysAt } from './season-weather.ts';
import { lyingSnowCm } from './snow.ts';
import { soilCourses } from './soil-temperature.ts';
import { type SurfaceCourse, surfaceCourses } from './surface.ts';

/** Degrees by which a centimetre of snow warms the crown, and the most that snow does. House default under phenology:P40. */
const SNOW_WARMS = { perCm: 2.4, atMost: 22 } as const;

/** Share of the snow that stays on a raised bed in wind. House default: no figure was seen. */
const RAISED_SNOW_SHARE = 0.5;

/** First index of a winter, in the season before it: midsummer. Winters end with the same index. */
export const WINTER_FROM = 182;

/** Days a winter is followed: from midsummer to the end of spring's last freezes. */
const WINTER_DAYS = DAYS_IN_SEASON;

/** Nights without a minimum that a winter may have in its coldest half year. House default, as for freezes. */
const MISSING_ALLOWED = 5;

/** A day of a winter. */
export interface CrownDay {
  /** The night's minimum in the air, and at the crown under what snow lay the evening before, °C. */
  airC: number;
  crownC: number;
  /** The mean of the day's air, and of the soil at 10 cm where it is known, °C. */
  meanC: number;
  soilC: number | undefined;
  /** Snow lying the evening before, cm, and whether any of the ground was frozen then. */
  snowCm: number;
  frozen: boolean;
}

/** Winter days from {@link WINTER_FROM} of the season before on; absent where not measured. */
export type Winter = readonly (CrownDay | undefined)[];

/** Degrees that snow adds at the crown, °C. */
export function snowWarmingC(snowCm: number): number {
  return Math.min(SNOW_WARMS.atMost, SNOW_WARMS.perCm * snowCm);
}

const winters = memory<Climate, string, readonly Winter[]>();

/**
 * The winters that a sowing of a season may meet, one a member of the season after it whose season before is on record too.
 * Winters with more than five nights missing between autumn and spring are left out. Empty without a daily record.
 *
 * @param season the season that the winter ends
 */
export function wintersInto(climate: Climate, season: number, raised: boolean): readonly Winter[] {
  const { holder, season: name } = holderOf(climate, season);
  return winters(holder, `${name} ${raised}`, () => worked(holder, season, raised));
}

function worked(climate: Climate, season: number, raised: boolean): Winter[] {
  const before = new Map(membersFor(climate, season - 1).map((member, at) => [member.season, { member, at }]));
  const soilBefore = soilCourses(climate, season - 1);
  const soils = soilCourses(climate, season);
  const surfaces = surfaceCourses(climate, season);
  return membersFor(climate, season).flatMap((member, at) => {
    const lead = before.get(member.season - 1);
    if (lead === undefined) return [];
    const soil = [...(soilBefore[lead.at] ?? []), ...(soils[at] ?? [])];
    const winter = winterOf(climate.seasonTurn, [lead.member, member], { soil, surface: surfaces[at] ?? [], raised });
    return isKnown(winter) ? [winter] : [];
  });
}

interface Ground {
  soil: readonly (number | undefined)[];
  surface: SurfaceCourse;
  raised: boolean;
}

function winterOf(
  turn: SeasonTurn,
  [first, second]: readonly [SeasonWeather, SeasonWeather],
  { soil, surface, raised }: Ground,
): Winter {
  const share = raised ? RAISED_SNOW_SHARE : 1;
  return Array.from({ length: WINTER_DAYS }, (_, i) => {
    const at = WINTER_FROM - 1 + i;
    const [day] = daysAt(turn, at < DAYS_IN_SEASON ? first : second, (at % DAYS_IN_SEASON) + 1);
    const meanC = day && dayMeanC(day);
    if (day?.tminC === undefined || meanC === undefined) return undefined;
    const evening = surface[at - 1];
    const lyingCm = day.snowDepthMm === undefined ? lyingSnowCm(evening?.snowWaterMm ?? 0) : day.snowDepthMm / 10;
    const snowCm = share * lyingCm;
    const crownC = Math.min(day.tminC + snowWarmingC(snowCm), Math.max(day.tminC, 0));
    const frozen = evening?.known === true && !isThawed(evening.frostIndex);
    return { airC: day.tminC, crownC, meanC, soilC: soil[at], snowCm, frozen };
  });
}

/** Days from midsummer between which a missing night may hide the coldest: October to March in the north. */
const COLD_HALF = { from: 92, to: 273 } as const;

function isKnown(winter: Winter): boolean {
  return winter.slice(COLD_HALF.from, COLD_HALF.to).filter((day) => day === undefined).length <= MISSING_ALLOWED;
}
