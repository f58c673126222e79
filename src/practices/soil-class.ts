/**
 * Soil by its texture: which beds share one, and what a squeezed handful of it has said this spring.
 */
import type { Climate } from '../climate/climate.ts';
import { dayOfIndex } from '../climate/season.ts';
import type { Bed, Garden, SoilSqueeze, SoilTextureId } from '../garden/garden.ts';
import type { SoilTexture } from '../handbook/shapes.ts';
import { soilTextureById } from '../handbook/soil-textures.ts';
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

/** The squeeze a texture waits for in a season: the one after those that smeared, or the one that crumbled. */
export function awaitedSqueezeKey(
  garden: Garden,
  climate: Climate,
  soilTexture: SoilTextureId,
  season: number,
): TaskKey {
  const squeezes = squeezesOf(garden, climate, soilTexture, season);
  const crumbled = squeezes.findIndex(({ answer }) => answer === 'crumbles');
  return squeezeKey(soilTexture, season, (crumbled < 0 ? squeezes.length : crumbled) + 1);
}
