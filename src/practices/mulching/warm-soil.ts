/**
 * Soil that is warm: mulch laid sooner keeps it cold.
 */

/** Soil temperature from which warm crops may be mulched, °C. From memory (18 °C). */
export const WARM_SOIL_C = 18;
