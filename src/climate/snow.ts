/**
 * Snow on the ground: what falls as snow, how much water it holds, and how it melts.
 */

/** At and below this daily mean what falls is snow, °C: half of it is at 1.0 on average in the north (agro:S24, S20). */
const SNOW_UP_TO_C = 1;

/** Depth of fresh snow per depth of its water: near freezing (agro:S25), and colder (mean of the US record, agro:S23). */
const FRESH_RATIO = { nearFreezing: 10, colder: 13 } as const;

/** Daily mean at and above which fresh snow is the wet kind, °C (28 °F, agro:S25). */
const NEAR_FREEZING_FROM_C = -2.2;

/** Melt per degree of daily mean above 0 °C, mm of water (USDA NRCS handbook, agro:S19; published 1.6 to 6.0). */
const MELT_MM_PER_C = 2.74;

/** Depth of settled snow per depth of its water, for what insulates the ground (density 25 to 45 %, from memory). */
const SETTLED_RATIO = 3;

/** Most water that lying snow holds for its depth: that of a ripe pack (density 25 to 45 %, from memory). */
const RIPEST_SHARE = 0.45;

/** Most water that snow lying so deep can hold, mm. */
export function mostWaterMm(depthMm: number): number {
  return RIPEST_SHARE * depthMm;
}

/** What a day says of rain and snow; absent where it was not measured. */
export interface DayWater {
  /** Rain and melted snow, mm of water. */
  rainMm?: number | undefined;
  /** Snow fallen, mm deep. */
  newSnowMm?: number | undefined;
}

/**
 * Rain and snow of a day, mm of water each. Where new snow was measured it decides: all of the day's water is snow when
 * there was some, rain when there was none. Otherwise the day's mean decides.
 */
export function rainAndSnowMm({ rainMm, newSnowMm }: DayWater, meanC: number): { rainMm: number; snowMm: number } {
  const waterMm = rainMm ?? freshSnowWaterMm(newSnowMm ?? 0, meanC);
  const isSnow = newSnowMm === undefined ? meanC <= SNOW_UP_TO_C : newSnowMm > 0;
  return isSnow ? { rainMm: 0, snowMm: waterMm } : { rainMm: waterMm, snowMm: 0 };
}

/** Water in fresh snow, mm. */
export function freshSnowWaterMm(depthMm: number, meanC: number): number {
  return depthMm / (meanC >= NEAR_FREEZING_FROM_C ? FRESH_RATIO.nearFreezing : FRESH_RATIO.colder);
}

/** Water that melts out of lying snow in a day, mm: never more than there is. */
export function meltMm(snowWaterMm: number, meanC: number): number {
  return Math.min(snowWaterMm, MELT_MM_PER_C * Math.max(0, meanC));
}

/** Depth of lying snow, cm, from the water it holds. */
export function lyingSnowCm(snowWaterMm: number): number {
  return (snowWaterMm * SETTLED_RATIO) / 10;
}
