/**
 * The practices of the house by name, as a garden file and a feed's filter name them.
 */

/** In the order they are worked through. */
export const PRACTICE_NAMES = [
  'soil-readiness',
  'planting',
  'cover-cropping',
  'composting',
  'topdressing',
  'new-beds',
  'mulching',
  'rotation',
  'fertility',
  'frost-watch',
  'season-end',
] as const;

/** One practice. */
export type PracticeName = (typeof PRACTICE_NAMES)[number];
