/**
 * Whether the ground is frozen, by an index of cold that snow slows down (Molnau & Bissell 1983, agro:S22). Its limits
 * were set for the Pacific Northwest; the ground of a raised bed, open to the air on its sides, follows sooner.
 */

/** Share of yesterday's index that is left. */
const LEFT_OVER = 0.97;
/** How strongly a cm of snow shuts cold out, and how strongly it shuts warmth out. */
const SNOW_PER_CM = { cold: 0.08, warm: 0.5 } as const;
const SNOW_WEIGHT = 0.4;

/** Index below which the ground is not frozen, °C·days. Above 83 it is; between the two some of it is. */
const THAWED_BELOW = 56;

/** The index after a day, °C·days. */
export function frozenGroundIndex(before: number, meanC: number, snowCm: number): number {
  const { cold, warm } = SNOW_PER_CM;
  const shut = Math.exp(-SNOW_WEIGHT * (meanC > 0 ? warm : cold) * snowCm);
  return Math.max(0, LEFT_OVER * before - meanC * shut);
}

/** Whether none of the ground is frozen. */
export function isThawed(index: number): boolean {
  return index < THAWED_BELOW;
}
