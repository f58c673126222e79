/**
 * A planting where it grows, and what all its tasks have in common.
 */

import type { Bed, Planting } from '../../garden/garden.ts';
import type { Vegetable } from '../../handbook/shapes/vegetable.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { type CropSpan, cropSpans } from '../bed-timeline.ts';
import { knownAs } from '../confidence.ts';
import { setOutKey, sowCropKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { plantingSubject } from '../subjects.ts';

/** A planting with all its tasks need: where it is, what it is, what grows there before and after it. */
export interface PlantingInBed {
  planting: Planting;
  bed: Bed;
  crop: Vegetable;
  /** Its name in the middle of a sentence. */
  name: string;
  /** Every crop of the bed in the order they go in. */
  spans: readonly CropSpan[];
}

/** The plantings of a bed, each with what its tasks need. */
export function plantingsIn({ garden, climate }: PracticeInput, bed: Bed): PlantingInBed[] {
  const spans = cropSpans(garden, bed.id, climate);
  return spans.map(({ planting }) => {
    const crop = vegetableById(planting.cropId);
    return { planting, bed, crop, name: crop.name.toLowerCase(), spans };
  });
}

/** The task that puts a planting into its bed. */
export function startKey({ start, id }: Planting): string {
  return start.how === 'sow' ? sowCropKey(id) : setOutKey(id);
}

/** Kinds put in as cloves, sets, tubers or crowns and not as seed, and what those are called. Common practice. */
const NOT_SEED: ReadonlyMap<string, string> = new Map([
  ['garlic', 'garlic cloves'],
  ['onion-sets', 'onion sets'],
  ['shallot', 'shallot sets'],
  ['potato', 'seed potatoes'],
  ['jerusalem-artichoke', 'Jerusalem artichoke tubers'],
  ['asparagus', 'asparagus crowns'],
  ['rhubarb', 'rhubarb crowns'],
]);

/** Whether a planting is of seed sown in its bed. */
export function isSeed({ planting }: { planting: Pick<Planting, 'start' | 'cropId'> }): boolean {
  return planting.start.how === 'sow' && !NOT_SEED.has(planting.cropId);
}

/** How a crop goes in, in a word: sets, crowns, cloves and seed potatoes are planted. */
export function startWord(cropId: string, how: Planting['start']['how']): 'sown' | 'planted' | 'set out' {
  return how === 'set-out' ? 'set out' : NOT_SEED.has(cropId) ? 'planted' : 'sown';
}

/** What is put into the bed, in words. */
export function startedFrom(at: PlantingInBed): string {
  return NOT_SEED.get(at.planting.cropId) ?? `${at.name} ${isSeed(at) ? 'seed' : 'plants'}`;
}

/** What every draft about a planting begins from. */
export const draftOfPlanting = ({ climate }: PracticeInput, { planting, bed, name }: PlantingInBed) => ({
  practice: 'planting' as const,
  subject: plantingSubject(planting.id, name, bed),
  cautions: [],
  supplies: [],
  needs: [],
  after: [],
  confidence: knownAs(climate, 'derived'),
  makes: [],
});
