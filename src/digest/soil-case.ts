/**
 * The case for compost on a sandy or clay bed, in words.
 */
import type { Bed, Garden } from '../garden/garden.ts';
import { bedLayer } from '../practices/compost-layer.ts';
import { poorSoilReasons } from '../practices/topdressing/poor-soil.ts';
import { reasonSentence } from '../schedule/explain.ts';

/** Why compost there, how much, over how many years, and when to stop; nothing on other soils. May hold marked amounts. */
export function soilCase(garden: Garden, bed: Bed): string[] {
  return poorSoilReasons(garden, bed, bedLayer(garden, bed.id)).map(reasonSentence);
}
