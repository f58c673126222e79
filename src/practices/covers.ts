/**
 * Covers and mixes of covers, read alike: what is in the ground, how it is called, how it behaves as one stand.
 */
import { coverCropById } from '../handbook/cover-crops.ts';
import { coverMixById } from '../handbook/cover-mixes.ts';
import type { CoverCrop, CoverMix } from '../handbook/shapes/cover.ts';
import { originOf, provenanceOf, type Span } from '../handbook/shapes/row.ts';
import type { ReasonSource } from './draft.ts';

/** One kind in a stand, with the seed broadcast of it when the stand is sown in good time. */
export interface CoverPart {
  cover: CoverCrop;
  gPerM2: number;
  /** Where the rate comes from. */
  rateFrom: ReasonSource;
}

/** The kinds in a stand: one for a plain cover, several for a mix. */
export function coverParts(coverId: string): CoverPart[] {
  const mix = coverMixById.get(coverId);
  if (mix === undefined) {
    const cover = coverCrop(coverId);
    return [{ cover, gPerM2: cover.usualGPerM2, rateFrom: originOf(cover, 'broadcastGPerM2') }];
  }
  const rateFrom = originOf(mix, 'parts');
  return mix.parts.map(({ coverId: id, gPerM2 }) => ({ cover: inMix(coverCrop(id), mix), gPerM2, rateFrom }));
}

/** A kind as it is sown in a mix: at the mix's own time in spring, where it has one. */
function inMix(cover: CoverCrop, mix: CoverMix): CoverCrop {
  if (mix.springSow === undefined) return cover;
  const [readIn] = mix.sources;
  return {
    ...cover,
    springSow: mix.springSow,
    marks: { ...cover.marks, springSow: provenanceOf(mix, 'springSow') },
    readIn: { ...cover.readIn, ...(readIn === undefined ? {} : { springSow: readIn }) },
  };
}

/** The cover or mix in words, for the middle of a sentence. */
export function coverName(coverId: string): string {
  return (coverMixById.get(coverId)?.name ?? coverCrop(coverId).name).toLowerCase();
}

/** Days to wait between cutting a stand green and planting: the longest its parts ask for. */
export function waitDaysOf(parts: readonly CoverPart[]): { smallSeed: number; transplant: number } {
  return {
    smallSeed: Math.max(...parts.map(({ cover }) => cover.waitDays.smallSeed)),
    transplant: Math.max(...parts.map(({ cover }) => cover.waitDays.transplant)),
  };
}

/** The depth every part may be sown at, cm; nothing where small seed and large do not meet. */
export function commonDepthCm(parts: readonly CoverPart[]): Span | undefined {
  const low = Math.max(...parts.map(({ cover }) => cover.depthCm.low));
  const high = Math.min(...parts.map(({ cover }) => cover.depthCm.high));
  return low <= high ? { low, high } : undefined;
}

function coverCrop(coverId: string): CoverCrop {
  const cover = coverCropById.get(coverId);
  if (cover === undefined) throw new RangeError(`No cover crop or mix is called "${coverId}" in the handbook.`);
  return cover;
}
