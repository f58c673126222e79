/**
 * Keys by which one practice's task waits for another's without knowing it. A key whose task is not in the plan holds
 * nothing up.
 */
import type { SoilTextureId } from '../garden/garden.ts';
import type { Day } from '../measures/days.ts';
import type { TaskKey } from './draft.ts';

/** The task that clears a crop away. */
export function clearKey(plantingId: string): TaskKey {
  return `bed-clear/planting:${plantingId}`;
}

/** The task that covers and picks before a cold night, named by its evening. */
export function coverTonightKey(evening: Day): TaskKey {
  return `frost-cover/night:${evening}`;
}

/** The task that spreads the yearly compost on a bed in spring, named by the season whose crops it feeds. */
export function springTopdressKey(bedId: string, season: number): TaskKey {
  return `topdress/bed:${bedId}/${season}`;
}

/**
 * The same in the autumn before that season. It has a key of its own because a cover sown in autumn waits for it, and
 * the spring task waits for that cover's cut: under one key the three would wait for each other in a ring.
 */
export function autumnTopdressKey(bedId: string, season: number): TaskKey {
  return `topdress/bed:${bedId}/${season}/before-winter`;
}

/** The same among the crops of that season, where its compost is in hand only once they stand: nothing waits for it. */
export function amongCropsTopdressKey(bedId: string, season: number): TaskKey {
  return `topdress/bed:${bedId}/${season}/among-crops`;
}

/** The task that takes the soil sample of an autumn: of one bed, or of the garden's beds together. */
export function sampleKey(bedId: string | undefined, season: number): TaskKey {
  return `soil-sample/${bedId === undefined ? 'garden' : `bed:${bedId}`}/${season}`;
}

/** The task that marks out a new bed and covers the ground. */
export function markOutKey(bedId: string): TaskKey {
  return `bed-mark/bed:${bedId}`;
}

/** The task that orders the mix for a new bed. */
export function bedMixKey(bedId: string): TaskKey {
  return `bed-mix/bed:${bedId}`;
}

/** The task that fills a new bed: what grows there waits for it. */
export function fillKey(bedId: string): TaskKey {
  return `bed-fill/bed:${bedId}`;
}

/** The task that sows a stand. */
export function sowKey(standId: string): TaskKey {
  return `cover-sow/stand:${standId}`;
}

/** The task that cuts a stand. */
export function cutKey(standId: string): TaskKey {
  return `cover-cut/stand:${standId}`;
}

/** The task that looks for buds in a stand: the first look, the second, and so on. */
export function budsKey(standId: string, look: number): TaskKey {
  return `cover-buds/stand:${standId}/look:${look}`;
}

/** The task that looks for regrowth after a stand's cut: the first look, the second, and so on. */
export function regrowthKey(standId: string, look: number): TaskKey {
  return `cover-regrowth/stand:${standId}/check:${look}`;
}

/** The task that cuts what has grown again for the first time, the second, and so on. */
export function cutAgainKey(standId: string, regrowth: number): TaskKey {
  return `cover-cut-again/stand:${standId}/${regrowth}`;
}

/** The task that lays a sheet on what has grown again: the first sheet, or the next. */
export function laySheetKey(standId: string, sheet: number): TaskKey {
  return `cover-sheet/stand:${standId}/lay:${sheet}`;
}

/** The task that lifts that sheet. */
export function liftSheetKey(standId: string, sheet: number): TaskKey {
  return `cover-sheet/stand:${standId}/lift:${sheet}`;
}

/** The task that looks whether a pile's compost is ready. */
export function maturityKey(pileId: string): TaskKey {
  return `pile-maturity/pile:${pileId}`;
}

/** The squeeze test of a soil texture in a season: the first, the second after one that smeared, and so on. */
export function squeezeKey(soilTexture: SoilTextureId, season: number, ordinal: number): TaskKey {
  return `squeeze-test/soil:${soilTexture}/${season}/${ordinal}`;
}

/** The task that sows or plants a crop in its bed. */
export function sowCropKey(plantingId: string): TaskKey {
  return `sow/planting:${plantingId}`;
}

/** The task that sets out a crop's plants. */
export function setOutKey(plantingId: string): TaskKey {
  return `set-out/planting:${plantingId}`;
}
