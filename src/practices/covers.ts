/**
 * Covers and mixes of covers, read alike: what is in the ground, how it is called, how it behaves as one stand.
 */
import { coverCropById } from '../handbook/cover-crops.ts';
import { coverMixById } from '../handbook/cover-mixes.ts';
import type { CoverCrop, Span } from '../handbook/shapes.ts';

/** One kind in a stand, with the seed broadcast of it when the stand is sown in good time. */
export interface CoverPart {
  cover: CoverCrop;
  gPerM2: number;
}

/** The kinds in a stand: one for a plain cover, several for a mix. */
export function coverParts(coverId: string): CoverPart[] {
  const mix = coverMixById.get(coverId);
  if (mix === undefined) {
    const cover = coverCrop(coverId);
    return [{ cover, gPerM2: cover.usualGPerM2 }];
  }
  return mix.parts.map((part) => ({ cover: coverCrop(part.coverId), gPerM2: part.gPerM2 }));
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

/** Sowing depth that suits every part, cm: the shallowest deep end. */
export function sowingDepthCm(parts: readonly CoverPart[]): Span {
  return {
    low: Math.min(...parts.map(({ cover }) => cover.depthCm.low)),
    high: Math.max(...parts.map(({ cover }) => cover.depthCm.high)),
  };
}

function coverCrop(coverId: string): CoverCrop {
  const cover = coverCropById.get(coverId);
  if (cover === undefined) throw new RangeError(`No cover crop or mix is called "${coverId}" in the handbook.`);
  return cover;
}
