/**
 * How long jobs take. No published time study for these garden jobs is known to us: every figure is a house default
 * recalled from practice, to be corrected by the gardener's own experience.
 */

/** Minutes to fetch tools and clean them, once a task. */
export const START_UP_MINUTES = 5;
/** Minutes a square metre to cut down a crop or cover by hand with shears or sickle. */
export const CUT_MINUTES_PER_M2 = 2;
/** Minutes a square metre to spread compost from a barrow within 20 m. */
export const SPREAD_MINUTES_PER_M2 = 2;
/** Minutes a square metre to broadcast seed and rake it in. */
export const SOW_COVER_MINUTES_PER_M2 = 1;
/** Minutes a square metre to pull or cut the weeds out of a young cover. House default, from memory. */
export const WEED_COVER_MINUTES_PER_M2 = 3;
/** Minutes a square metre to lay leaves or straw, or to rake them off again. House default (1, from 0.5 to 2), from memory. */
export const MULCH_MINUTES_PER_M2 = 1;
/** Minutes to turn a cubic metre of compost with a fork. */
export const TURN_MINUTES_PER_M3 = 30;
/** Minutes a square metre to loosen soil with a fork by small lifts. */
export const LOOSEN_MINUTES_PER_M2 = 1.5;
/** Minutes to take a soil sample, of a whole garden or of one bed kept apart. */
export const SAMPLE_MINUTES = 30;
/** Minutes a square metre to strew a meal and rake it in. */
export const STREW_MINUTES_PER_M2 = 1;
/** Minutes to sow three metres of row by hand. */
export const SOW_ROW_MINUTES_PER_3_M = 5;
/** Minutes to set one plant. */
export const SET_PLANT_MINUTES = 1;
/** Minutes a square metre to plant sets, cloves or tubers. */
export const PLANT_SETS_MINUTES_PER_M2 = 3;
/** Minutes to sow a tray indoors, or to begin with plants on their first days outside. */
export const TRAY_MINUTES = 15;
/** Minutes for a look at a bed or pile. */
export const LOOK_MINUTES = 3;
/** Minutes to knock a frame of boards together. House default. */
export const FRAME_MINUTES = 60;
/** Minutes a square metre to mark out a new bed, mow it and lay cardboard. House default. */
export const MARK_OUT_MINUTES_PER_M2 = 6;
/** Minutes to load, push 20 m and spread a cubic metre of loose soil: 42, 42 and 27 by the norms of veg:V52, from memory. */
export const FILL_MINUTES_PER_M3 = 111;
/** Minutes to order something. */
export const ORDER_MINUTES = 15;

/** Minutes to pull a cover over a bed, or off it, and see to its edges. From memory. */
export const COVER_BED_MINUTES = 5;
/** Minutes to pick what is ripe in a bed before a frost. */
export const PICK_BED_MINUTES = 10;

/** Minutes for a job over an area, start-up included, rounded up to a minute. */
export function effortOverArea(areaM2: number, minutesPerM2: number): number {
  return Math.ceil(START_UP_MINUTES + areaM2 * minutesPerM2);
}
