/**
 * The bibliography. Ids carry the prefix of their table, because S1 is a different book in each.
 */
import { compostSources } from './bibliography/compost.ts';
import { coverSources } from './bibliography/covers.ts';
import { phenologySources } from './bibliography/phenology.ts';
import { vegetableSources } from './bibliography/vegetables.ts';
import { agrometSources, climateSources } from './bibliography/weather-and-soil.ts';
import type { Source } from './shapes/row.ts';

/** Every source that some figure or rule rests on, and no other. */
export const sources: readonly Source[] = [
  ...vegetableSources,
  ...coverSources,
  ...phenologySources,
  ...compostSources,
  ...agrometSources,
  ...climateSources,
];
