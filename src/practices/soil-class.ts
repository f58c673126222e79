/**
 * Soil by its texture: which beds share one, and what a squeezed handful of it has said this spring.
 */
import type { Climate } from '../climate/climate.ts';
import { groundOn, springWorkOdds } from '../climate/fit-to-work.ts';
import { type GroundDay, groundCourses } from '../climate/ground.ts';
import type { Odds } from '../climate/odds.ts';
import { dayOfIndex, seasonOf } from '../climate/season.ts';
import { soilWarmOdds } from '../climate/soil-temperature.ts';
import type { SoilClass } from '../climate/top-layer.ts';
import type { Bed, Garden, SoilSqueeze, SoilTextureId } from '../garden/garden.ts';
import type { SoilTexture } from '../handbook/shapes/ground.ts';
import { soilTextureById } from '../handbook/soil-textures.ts';
import { addDays, type Day, earliestOf } from '../measures/days.ts';
import type { TaskKey } from './draft.ts';
import { squeezeKey } from './keys.ts';
import type { PracticeInput } from './practice.ts';
import { midsummerOf, SOIL_AWAKE_C } from './seasons.ts';

/** The texture of a bed's soil: its own, or the garden's. */
export function textureOf({ place }: Pick<Garden, 'place'>, bed: Bed): SoilTextureId {
  return bed.soilTexture ?? place.soilTexture;
}

/** Every texture of a garden's beds, that of most beds first; the garden's own where it has no bed. */
export function texturesOf({ beds, place }: Pick<Garden, 'beds' | 'place'>): SoilTextureId[] {
  const counts = new Map<SoilTextureId, number>();
  for (const bed of beds) counts.set(textureOf({ place }, bed), (counts.get(textureOf({ place }, bed)) ?? 0) + 1);
  return counts.size === 0 ? [place.soilTexture] : [...counts].sort(([, a], [, b]) => b - a).map(([id]) => id);
}

/**
 * A texture's row in the handbook.
 *
 * @throws RangeError when the handbook has none of that id
 */
export function textureRow(id: SoilTextureId): SoilTexture {
  const found = soilTextureById.get(id);
  if (found === undefined) throw new RangeError(`No soil texture is called "${id}" in the handbook.`);
  return found;
}

/** The squeezes of a texture in the first half of a season, oldest first. */
export function squeezesOf(
  garden: Garden,
  climate: Climate,
  soilTexture: SoilTextureId,
  season: number,
): readonly SoilSqueeze[] {
  const [from, to] = [dayOfIndex(climate.seasonTurn, season, 1), midsummerOf(climate, season)];
  return garden.soilSqueezes
    .filter((squeeze) => squeeze.soilTexture === soilTexture && squeeze.on >= from && squeeze.on <= to)
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
}

/**
 * How the water of a texture behaves in this garden: as in a raised bed only where every bed of it is one; with what
 * handfuls of it said.
 */
export function soilClassOf({ beds, place, soilSqueezes }: Garden, soilTexture: SoilTextureId): SoilClass {
  const own = beds.filter((bed) => textureOf({ place }, bed) === soilTexture);
  const handfuls = soilSqueezes
    .filter((squeeze) => squeeze.soilTexture === soilTexture)
    .map(({ on, answer }) => ({ on, crumbled: answer === 'crumbles' }))
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
  return { texture: textureRow(soilTexture), raised: own.length > 0 && own.every(({ raised }) => raised), handfuls };
}

/** The day a soil is awake and fit over the seasons of the record, or awake only where no rain is known. */
export function readyOdds({ garden, climate }: Ground, soilTexture: SoilTextureId, season: number): Odds {
  const soil = soilClassOf(garden, soilTexture);
  return (
    springWorkOdds(climate, { season, tempC: SOIL_AWAKE_C, soil }) ??
    soilWarmOdds(climate, { season, tempC: SOIL_AWAKE_C })
  );
}

type Ground = Pick<PracticeInput, 'garden' | 'climate'>;

/** Weather that undid what a handful had said. */
export interface Setback {
  /** The last day the soil was closed, or the next day where a forecast closes it. */
  on: Day;
  /** The day from which it has still to become fit: the last that was seen, or that of the forecast. */
  from: Day;
  state: ClosedState;
  expected: boolean;
  /** Whether the climate has a record from which snow, frost and water in the ground are reckoned. */
  reckoned: boolean;
}

type ClosedState = 'snow' | 'frozen' | 'soaked';

/** Days ahead on which a forecast of snow or soaking already holds work up. House default: later ones leave time to work. */
const HELD_UP_DAYS = 1;

/** Snow lying this deep keeps people off a bed, mm: a millimetre of water, as where it is reckoned. House default. */
const LEAST_SNOW_MM = 10;

/**
 * Whether a soil lies under snow, is frozen or soaked again in a spring some time after a day, and not yet fit since: on
 * the last day that was seen, or by what is expected of the next day. What is expected later holds nothing up. Without a
 * record the log alone is asked, and only for snow: nobody can reckon when it melts, so it counts until a handful crumbles.
 */
export function setbackAfter(
  { garden, climate, today }: SoilAsked,
  soilTexture: SoilTextureId,
  since: Day,
): Setback | undefined {
  const season = seasonOf(climate.seasonTurn, since);
  const until = midsummerOf(climate, season);
  const soil = soilClassOf(garden, soilTexture);
  const soon = earliestOf(addDays(today, HELD_UP_DAYS), until);
  if (groundCourses(climate, season, soil).length === 0) return snowTold(climate, today, { from: since, to: soon });
  const seen = climate.logged.filter(({ kind, day }) => kind === 'observed' && day >= since);
  const last = seen.at(-1)?.day;
  for (const { day } of last !== undefined && last <= until ? seen.toReversed() : []) {
    const state = groundOn(climate, day, soil)?.state;
    if (state === 'fit') break;
    if (last !== undefined && isClosed(state)) return { on: day, from: last, state, expected: false, reckoned: true };
  }
  const next = climate.logged.find(({ kind, day }) => kind === 'expected' && day >= since && day > (last ?? ''));
  if (next === undefined || next.day > soon) return undefined;
  const state = groundOn(climate, next.day, soil)?.state;
  return isClosed(state) ? { on: next.day, from: next.day, state, expected: true, reckoned: true } : undefined;
}

/** The last day of a span on which snow was told to lie or to fall, or is expected to from today on. */
function snowTold({ logged }: Climate, today: Day, { from, to }: { from: Day; to: Day }): Setback | undefined {
  const last = logged.findLast(
    ({ kind, day, snowDepthMm = 0, newSnowMm = 0 }) =>
      day >= from &&
      day <= to &&
      (kind === 'observed' || day >= today) &&
      Math.max(snowDepthMm, newSnowMm) >= LEAST_SNOW_MM,
  );
  if (last === undefined) return undefined;
  const { day, kind } = last;
  return { on: day, from: day, state: 'snow', expected: kind === 'expected', reckoned: false };
}

function isClosed(state: GroundDay['state'] | undefined): state is ClosedState {
  return state === 'snow' || state === 'frozen' || state === 'soaked';
}

/** What is asked about a soil: in which garden and climate, on which day. */
type SoilAsked = Pick<PracticeInput, 'garden' | 'climate' | 'today'>;

/**
 * The squeeze a texture waits for in a season: the one after those that smeared, or the one that crumbled; after weather
 * that undid it, the next.
 */
export function awaitedSqueezeKey(input: SoilAsked, soilTexture: SoilTextureId, season: number): TaskKey {
  const squeezes = squeezesOf(input.garden, input.climate, soilTexture, season);
  const last = squeezes.at(-1);
  const stands = last?.answer === 'crumbles' && setbackAfter(input, soilTexture, last.on) === undefined;
  return squeezeKey(soilTexture, season, stands ? squeezes.length : squeezes.length + 1);
}
