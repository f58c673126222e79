/**
 * Heat of a working pile.
 */

/** Core temperature from which a pile is at work; below it a working one is inspected and turned (USDA NRCS, compost:S27: 110 °F). */
export const AT_WORK_C = 43;
