/**
 * How much of its ground a stand covers, as it was last seen, and what grows in it since.
 */
import type { Stand, StandLook } from '../garden/garden.ts';
import type { Day } from '../measures/days.ts';
import { type CoverPart, coverName, coverParts } from './covers.ts';

/**
 * The share of the ground that each answer of a look stands for, 0–1. House default: the middles of what an eye can tell
 * apart, under a tenth, up to a half, up to four fifths, and more.
 */
export const COVERED_SHARE: Readonly<Record<StandLook['covered'], number>> = {
  'hardly-any': 0.05,
  'a-third': 0.33,
  'two-thirds': 0.67,
  'nearly-all': 0.95,
};

/** The share under which a stand is thin, so that what is bare is sown again or mulched. House default: half. */
export const THIN_BELOW = 0.5;

/** Each answer in words, for "about a third of the ground". */
export const COVERED_WORDS: Readonly<Record<StandLook['covered'], string>> = {
  'hardly-any': 'hardly any',
  'a-third': 'about a third',
  'two-thirds': 'about two thirds',
  'nearly-all': 'nearly all',
};

/** The look that still holds: the newest, unless thin places were sown again since. Nothing where nobody looked. */
export function lastLook({ looked = [], resown = [] }: Stand): StandLook | undefined {
  const last = looked.at(-1);
  return last === undefined || resown.some(({ on }) => on >= last.on) ? undefined : last;
}

/** The share of its ground a stand covers, 0–1; nothing where it is not known. */
export function coveredShare(stand: Stand): number | undefined {
  const look = lastLook(stand);
  return look && COVERED_SHARE[look.covered];
}

/** Whether the look before a sowing of thin places found next to nothing, so that only what was sown then grows. */
function begunAnew({ looked = [] }: Stand, on: Day): boolean {
  return looked.findLast((look) => look.on <= on)?.covered === 'hardly-any';
}

/** What grows in a stand: what was sown first and what was sown into its thin places, each with its day. */
function sowingsOf(stand: Stand): { on: Day; coverId: string }[] {
  const all = [{ on: stand.sow.day, coverId: stand.coverId }, ...(stand.resown ?? [])];
  const anew = all.findLastIndex(({ on }, at) => at > 0 && begunAnew(stand, on));
  return anew < 0 ? all : all.slice(anew);
}

/** The day from which a stand's growth counts: its sowing, or the sowing that took the place of one that failed. */
export function grownSince(stand: Stand): Day {
  return sowingsOf(stand)[0]?.on ?? stand.sow.day;
}

/** The kinds that grow in a stand, each once. */
export function growingParts(stand: Stand): CoverPart[] {
  const parts = sowingsOf(stand).flatMap(({ coverId }) => coverParts(coverId));
  return parts.filter(({ cover }, at) => parts.findIndex((other) => other.cover.id === cover.id) === at);
}

/** What grows in a stand, in words: "oats and winter rye". */
export function standName(stand: Stand): string {
  return [...new Set(sowingsOf(stand).map(({ coverId }) => coverName(coverId)))].join(' and ');
}
