/**
 * Soil by its texture: which beds share one, and what a squeezed handful of it has said this spring.
 */
import type { Climate } from '../climate/climate.ts';
import { groundOn } from '../climate/fit-to-work.ts';
import { dayOfIndex, seasonOf } from '../climate/season.ts';
import type { SoilClass } from '../climate/top-layer.ts';
import type { Bed, Garden, SoilSqueeze, SoilTextureId } from '../garden/garden.ts';
import type { SoilTexture } from '../handbook/shapes.ts';
import { soilTextureById } from '../handbook/soil-textures.ts';
import type { Day } from '../measures/days.ts';
import type { TaskKey } from './draft.ts';
import { squeezeKey } from './keys.ts';
import { midsummerOf } from './seasons.ts';

/** The texture of a bed's soil: its own, or the garden's. */
export function textureOf({ place }: Pick<Garden, 'place'>, bed: Bed): SoilTextureId {
  return bed.soilTexture ?? place.soilTexture;
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

/** How the water of a texture behaves in this garden: as in a raised bed only where every bed of it is one. */
export function soilClassOf(garden: Garden, soilTexture: SoilTextureId): SoilClass {
  const beds = garden.beds.filter((bed) => textureOf(garden, bed) === soilTexture);
  return { texture: textureRow(soilTexture), raised: beds.length > 0 && beds.every(({ raised }) => raised) };
}

/** Weather that undid what a handful had said. */
export interface Setback {
  /** The last day that was logged. */
  on: Day;
  state: 'snow' | 'frozen' | 'soaked';
}

/**
 * Whether a soil lies under snow, is frozen or soaked again on the last logged day of a spring, some time after a day.
 * Only what was seen counts, never what is expected.
 */
export function setbackAfter(
  garden: Garden,
  climate: Climate,
  soilTexture: SoilTextureId,
  since: Day,
): Setback | undefined {
  const season = seasonOf(climate.seasonTurn, since);
  const last = climate.logged.findLast(({ kind }) => kind === 'observed')?.day;
  if (last === undefined || last < since || last > midsummerOf(climate, season)) return undefined;
  const state = groundOn(climate, last, soilClassOf(garden, soilTexture))?.state;
  return state === 'snow' || state === 'frozen' || state === 'soaked' ? { on: last, state } : undefined;
}

/**
 * The squeeze a texture waits for in a season: the one after those that smeared, or the one that crumbled; after weather
 * that undid it, the next.
 */
export function awaitedSqueezeKey(
  garden: Garden,
  climate: Climate,
  soilTexture: SoilTextureId,
  season: number,
): TaskKey {
  const squeezes = squeezesOf(garden, climate, soilTexture, season);
  const last = squeezes.at(-1);
  const stands = last?.answer === 'crumbles' && setbackAfter(garden, climate, soilTexture, last.on) === undefined;
  return squeezeKey(soilTexture, season, stands ? squeezes.length : squeezes.length + 1);
}
