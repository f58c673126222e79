/**
 * What reaches the ground day by day, whatever the soil: snow lying, frost, water from rain and melt, and what the air
 * would take of it.
 *
 * Each member of the ensemble (members.ts) is run through the season before and the season planned, so that what was seen
 * last autumn and winter stands behind the spring.
 */
import { type Climate, DAYS_IN_SEASON, type DayWeather, type SeasonWeather } from './climate.ts';
import { radiationAboveAirMj, referenceEvaporationMm } from './evaporation.ts';
import { frozenGroundIndex, isThawed } from './frozen-ground.ts';
import { holderOf, membersFor } from './members.ts';
import { memory } from './remembered.ts';
import { calendarIndex } from './season.ts';
import { dayMeanC, daysAt } from './season-weather.ts';
import { freshSnowWaterMm, lyingSnowCm, meltMm, mostWaterMm, rainAndSnowMm } from './snow.ts';

/** Snow and frost at the end of a day. */
interface SnowAndFrost {
  /** Water in the snow lying, mm. */
  snowWaterMm: number;
  /** Index of frozen ground, °C·days (frozen-ground.ts). */
  frostIndex: number;
}

/** The surface of one day. */
export interface SurfaceDay extends SnowAndFrost {
  /** Rain, melt and watering that came down, mm. */
  wetMm: number;
  /** What the air would take of open ground, mm; 0 under snow and where it is frozen. */
  referenceMm: number;
  /** Whether the day's temperatures and rain were known; if not, snow and frost are those of the day before. */
  known: boolean;
}

/** A season and the one before it, day by day: two years of 365 days, of which the second is the season's own. */
export type SurfaceCourse = readonly SurfaceDay[];

const NOTHING: SnowAndFrost = { snowWaterMm: 0, frostIndex: 0 };

/** Snow with less water than this keeps nobody off a bed, mm. House default. */
const SNOW_GONE_BELOW_MM = 1;

/** Whether snow lies. */
export function liesSnow({ snowWaterMm }: Pick<SnowAndFrost, 'snowWaterMm'>): boolean {
  return snowWaterMm >= SNOW_GONE_BELOW_MM;
}

const surfaces = memory<Climate, number | 'any', readonly SurfaceCourse[]>();

/**
 * Surface courses for a season, one a member, in the order of the members. Empty where the climate has no daily record
 * with rain in it.
 */
export function surfaceCourses(climate: Climate, season: number): readonly SurfaceCourse[] {
  const { holder, season: name } = holderOf(climate, season);
  return surfaces(holder, name, () => (climate.seasons.some(hasRain) ? worked(climate, season) : []));
}

function hasRain({ rainMm }: SeasonWeather): boolean {
  return rainMm.some((mm) => mm !== undefined);
}

function worked(climate: Climate, season: number): SurfaceCourse[] {
  const before = new Map(membersFor(climate, season - 1).map((member) => [member.season, member]));
  const radiation = radiationOf(climate);
  return membersFor(climate, season).map((member) => {
    const lead = seasonCourse(climate, before.get(member.season - 1), NOTHING, radiation);
    return [...lead, ...seasonCourse(climate, member, lead.at(-1) ?? NOTHING, radiation)];
  });
}

function seasonCourse(
  { seasonTurn }: Climate,
  season: SeasonWeather | undefined,
  start: SnowAndFrost,
  radiation: readonly number[],
): SurfaceDay[] {
  let last: SurfaceDay = { ...NOTHING, ...start, wetMm: 0, referenceMm: 0, known: false };
  return radiation.map((radiationMj, at) => {
    const days = season === undefined ? [{}] : daysAt(seasonTurn, season, at + 1);
    let [wetMm, known] = [0, true];
    for (const day of days) {
      last = surfaceAfter(last, day, radiationMj);
      wetMm += last.wetMm;
      known = known && last.known;
    }
    return { ...last, wetMm, known };
  });
}

function radiationOf({ latitude, seasonTurn }: Climate): number[] {
  return Array.from({ length: DAYS_IN_SEASON }, (_, at) =>
    radiationAboveAirMj(latitude, calendarIndex(seasonTurn, at + 1)),
  );
}

/**
 * The surface after a day. Snow that was measured lying goes before the reckoning: it holds at least the water of fresh
 * snow as deep and at most that of ripe snow, and none is none; but snow that fell on that very day lies on top of it, for
 * depths are read in the morning. A day whose temperatures, or whose rain and snow, are not known leaves it as it was.
 */
export function surfaceAfter(before: SnowAndFrost, day: DayWeather, radiationMj: number): SurfaceDay {
  const { tminC, tmaxC, rainMm, newSnowMm, snowDepthMm, wateringMm = 0 } = day;
  const meanC = dayMeanC(day);
  const { snowWaterMm, frostIndex } = before;
  const known = tminC !== undefined && tmaxC !== undefined && (rainMm !== undefined || newSnowMm !== undefined);
  if (!known || meanC === undefined)
    return { snowWaterMm, frostIndex, wetMm: wateringMm, referenceMm: 0, known: false };
  const fallen = rainAndSnowMm({ rainMm, newSnowMm }, meanC);
  const lying = snowWaterMm + fallen.snowMm;
  const unmelted = lying - meltMm(lying, meanC);
  const left =
    snowDepthMm === undefined
      ? unmelted
      : heldTo(snowDepthMm, unmelted, { meanC, fallenMm: newSnowMm ? fallen.snowMm : 0 });
  const index = frozenGroundIndex(frostIndex, meanC, lyingSnowCm(left));
  const dries = !liesSnow({ snowWaterMm: left }) && isThawed(index);
  return {
    snowWaterMm: left,
    frostIndex: index,
    wetMm: fallen.rainMm + Math.max(0, lying - left) + wateringMm,
    referenceMm: dries ? referenceEvaporationMm({ tminC, tmaxC }, radiationMj) : 0,
    known: true,
  };
}

/** Water in the snow lying, mm, held to what a depth can hold and to what fell after it was read. */
function heldTo(depthMm: number, waterMm: number, { meanC, fallenMm }: { meanC: number; fallenMm: number }): number {
  const most = mostWaterMm(depthMm) + fallenMm - meltMm(fallenMm, meanC);
  return Math.max(Math.min(waterMm, most), freshSnowWaterMm(depthMm, meanC));
}
