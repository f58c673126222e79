/**
 * Other spellings of the handbook's names, resolved where a garden file is read.
 */
import { coverCropById } from '../handbook/cover-crops.ts';
import { coverMixById } from '../handbook/cover-mixes.ts';
import { fertilisers } from '../handbook/fertilisers.ts';
import { vegetables } from '../handbook/vegetables.ts';

/** Short names of trade that stand for one kind. */
const SHORT_NAMES: Readonly<Record<string, string>> = { rye: 'cereal_rye', corn: 'sweet-corn' };

const crops: ReadonlySet<string> = new Set(vegetables.map(({ id }) => id));

/** The id a word means: itself, or the one that differs by case, spaces, hyphens or underscores only. */
function meant(word: string, isKnown: (id: string) => boolean): string {
  if (isKnown(word)) return word;
  const plain = word.trim().toLowerCase();
  const spellings = [SHORT_NAMES[plain] ?? plain, plain.replace(/[\s_]+/g, '-'), plain.replace(/[\s-]+/g, '_')];
  return spellings.find(isKnown) ?? word;
}

const KNOWN: Readonly<Record<string, (id: string) => boolean>> = {
  crop: (id) => crops.has(id),
  cover: (id) => coverCropById.has(id),
  mix: (id) => coverMixById.has(id),
  fertiliser: (id) => fertilisers.some((each) => each.id === id),
};

/** Plain data with the crops, covers, mixes and fertilisers in its lists spelt as the handbook spells them. */
export function spelt(data: unknown): unknown {
  if (Array.isArray(data)) return data.map(spelt);
  if (typeof data !== 'object' || data === null) return data;
  return Object.fromEntries(
    Object.entries(data).map(([key, value]) => {
      const isKnown = KNOWN[key];
      return [key, isKnown !== undefined && typeof value === 'string' ? meant(value, isKnown) : spelt(value)];
    }),
  );
}
