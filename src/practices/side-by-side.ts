/**
 * Crops that stand in one bed at the same time, and whether their shares of it fit together.
 */
import type { Climate } from '../climate/climate.ts';
import type { Bed, Garden } from '../garden/garden.ts';
import { type Day, earliestOf } from '../measures/days.ts';
import { areaOf, type CropSpan, cropSpans, firstRipe } from './bed-timeline.ts';

/** A crop that goes into a bed that has no room left for it. */
export interface Crowd {
  next: CropSpan;
  /** What stands there on its first day, the first in first. */
  standing: readonly CropSpan[];
  /** What all of them take, m²; each without a share takes the whole bed. */
  wantedM2: number;
}

/** What each share may be out by where it was written to the hundredth of a square metre. */
const ROUNDING_M2 = 0.01;

/**
 * Every crop of a bed that goes in while others stand that leave it no room. A crop stands for certain until its last
 * harvest where that is told, else until its quickest kinds may be ripe. Sowings of one crop share their space.
 *
 * @param counts which of the crops standing there count; all where it is left out
 */
export function crowdsIn(
  garden: Garden,
  bed: Bed,
  climate: Climate,
  counts: (standing: CropSpan) => boolean = () => true,
): Crowd[] {
  const spans = cropSpans(garden, bed.id, climate);
  return spans.flatMap((next, at) => {
    const standing = spans.slice(0, at).filter((span) => counts(span) && stands(span, next.from));
    const all = [...standing, next];
    const wantedM2 = wantedBy(all, areaOf(bed));
    const isFull = standing.length > 0 && wantedM2 > areaOf(bed) + ROUNDING_M2 * all.length;
    return isFull ? [{ next, standing, wantedM2 }] : [];
  });
}

/** The day from which a crop may be out; until then it holds its place; absent for one that never leaves. */
export function standsUntil(span: CropSpan): Day | undefined {
  if (span.to === undefined || span.end === 'stated' || span.end === 'happened' || span.end === 'frozen')
    return span.to;
  return earliestOf(span.to, firstRipe(span));
}

/** Whether a crop holds its place on a day. */
export function stands(span: CropSpan, day: Day): boolean {
  const until = standsUntil(span);
  return span.from <= day && (until === undefined || day < until);
}

/** What crops take of a bed together, m²; sowings of one crop share their space. */
export function wantedBy(spans: readonly CropSpan[], bedM2: number): number {
  const crops = new Map<string, CropSpan[]>();
  for (const span of spans) crops.set(span.crop.id, [...(crops.get(span.crop.id) ?? []), span]);
  return [...crops.values()].reduce((sum, sowings) => sum + shareOf(sowings, bedM2), 0);
}

function shareOf(sowings: readonly CropSpan[], bedM2: number): number {
  const shares = sowings.map(({ planting }) => planting.areaM2);
  if (shares.includes(undefined)) return bedM2;
  return shares.reduce<number>((sum, share = 0) => sum + share, 0);
}
