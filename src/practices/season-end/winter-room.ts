/**
 * Which bin takes the winter's scraps, and whether it holds them.
 */
import type { Bin, Garden, Pile } from '../../garden/garden.ts';
import { addDays, type Day } from '../../measures/days.ts';
import type { FrozenSpan } from './frozen-span.ts';
import { scrapsOf } from './scraps.ts';

/** What stands in a bin before the freeze: the further along, the sooner it can be cleared. */
const STATES = ['empty', 'finished', 'curing', 'at work'] as const;
type BinState = (typeof STATES)[number];

/** The bin for the winter's scraps. */
export interface WinterBin {
  bin: Bin;
  state: BinState;
}

/** What a household brings to a bin while it is frozen. */
export interface WinterNeed {
  people: number;
  /** Litres of scraps, of browns, and of both. */
  scraps: number;
  browns: number;
  litres: number;
}

/** The bin easiest to clear before a winter, the largest of those alike; nothing where there is none. */
export function winterBin(garden: Garden, { from }: FrozenSpan): WinterBin | undefined {
  const bins = garden.bins.map((bin) => ({ bin, state: stateOf(bin, garden, from) }));
  return bins.sort(byEase)[0];
}

function stateOf(bin: Bin, garden: Garden, freeze: Day): BinState {
  const piles = garden.piles.filter(
    ({ id, binId, built }) =>
      binId === bin.id && built.day < freeze && garden.skipped[`pile-build/pile:${id}`] === undefined,
  );
  if (piles.length === 0) return 'empty';
  const unfinished = piles.filter(({ finishedOn }: Pile) => finishedOn === undefined);
  if (unfinished.length === 0) return 'finished';
  return unfinished.every(({ curingSince }) => curingSince !== undefined) ? 'curing' : 'at work';
}

function byEase(a: WinterBin, b: WinterBin): number {
  const ease = STATES.indexOf(a.state) - STATES.indexOf(b.state);
  return ease || b.bin.volumeL - a.bin.volumeL || (a.bin.id < b.bin.id ? -1 : 1);
}

/** What the household brings in a frozen span; nothing where the garden file does not say how many eat. */
export function winterNeed({ household }: Garden, { days }: FrozenSpan): WinterNeed | undefined {
  const people = household?.people;
  if (people === undefined) return undefined;
  const { scraps, browns } = scrapsOf(people, days);
  return { people, scraps, browns, litres: scraps + browns };
}

/** The day an empty bin is full, where that is before the thaw. */
export function fullOn({ volumeL }: Bin, { litres }: WinterNeed, { from, days }: FrozenSpan): Day | undefined {
  return litres <= volumeL ? undefined : addDays(from, Math.floor((volumeL / litres) * days));
}
