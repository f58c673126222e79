/**
 * The cover crops: when they are sown, what winter does to them, how much seed they take, what they leave behind.
 *
 * Rates are for seed broadcast by hand. A figure for winter-killed kinds is the temperature that kills them, and no
 * hardiness zone is given beside it: zones for them are only remembered, and they are seen to die in milder ones.
 * `carbonToNitrogenMature` is the stand in flower, or straw where that is what was published (wheat, oats, pea).
 * Nitrogen 0 is a real zero: grasses and broadleaf covers hold nitrogen but bring none.
 */
import { coverBrassicas, coverBroadleaves } from './cover-crops/brassicas-and-broadleaves.ts';
import { coverClovers } from './cover-crops/clovers.ts';
import { coverGrasses } from './cover-crops/grasses.ts';
import { coverLegumes } from './cover-crops/legumes.ts';
import type { CoverCrop } from './shapes/cover.ts';

/** Every cover crop of the handbook. */
export const coverCrops: readonly CoverCrop[] = [
  ...coverGrasses,
  ...coverLegumes,
  ...coverClovers,
  ...coverBrassicas,
  ...coverBroadleaves,
];

/** The cover crops by id. */
export const coverCropById: ReadonlyMap<string, CoverCrop> = new Map(coverCrops.map((cover) => [cover.id, cover]));
