/**
 * Raw manure on beds, done and planned, against the harvests that come too soon after it.
 */
import type { Garden, Topdressed } from '../garden/garden.ts';
import { type Day, earliestOf, latestOf } from '../measures/days.ts';
import { type CropSpan, cropSpans, firstRipe } from './bed-timeline.ts';
import type { BedDemand } from './compost-balance.ts';
import type { TaskKey, Window } from './draft.ts';
import { harvestFrom, manuresAmong, manureWaitDays, type RawManure, rawManureOf, spreadBy } from './manure.ts';
import type { PracticeInput } from './practice.ts';

/** Raw manure, or compost that counts as it, on a bed. */
export interface ManureSpread {
  bedId: string;
  raw: RawManure;
  /** The day it was spread, or the last day for it: whenever it goes on, what is reckoned from that is no day too soon. */
  on: Day;
  /** The task that is to spread it, with its days; absent where it was done. */
  planned?: { key: TaskKey; window: Window };
}

/** A harvest that comes too soon after a spreading. */
export interface ManureClash {
  spread: ManureSpread;
  span: CropSpan;
  /** The day the first of it may be ripe, or is harvested where it bears already. */
  ripe: Day;
  /** The first day it may be harvested, counted from the day it was spread, or the last day for that. */
  permitted: Day;
  days: number;
  /** The last day of spreading that would keep the wait. */
  spreadBy: Day;
}

type YardOf = Pick<Garden, 'piles' | 'bins'>;

/** What was spread and counts as raw manure. Layers of which nobody told the pile say nothing. */
export function manureSpread(
  garden: YardOf,
  { bedId, on, pileIds = [], materialId }: Topdressed,
): ManureSpread | undefined {
  const laid = materialId === undefined ? undefined : manuresAmong([materialId]);
  const raw = laid === undefined ? rawOf(garden, pileIds) : { manure: laid };
  return raw === undefined ? undefined : { bedId, raw, on };
}

/** What is to be spread and counts as raw manure as its piles stand. */
function manurePlanned(garden: YardOf, beds: readonly BedDemand[]): ManureSpread[] {
  return beds.flatMap(({ key, bedId, window, drawn, skipped }) => {
    const raw = skipped
      ? undefined
      : rawOf(
          garden,
          drawn.flatMap(({ pileId }) => pileId ?? []),
        );
    return raw === undefined ? [] : [{ bedId, raw, on: window.latest, planned: { key, window } }];
  });
}

/** The first of some piles that counts as raw, by its id. */
function rawOf(garden: YardOf, pileIds: readonly string[]): RawManure | undefined {
  const piles = garden.piles.filter(({ id }) => pileIds.includes(id)).sort((a, b) => (a.id < b.id ? -1 : 1));
  return piles.flatMap((pile) => rawManureOf(garden, pile) ?? [])[0];
}

/**
 * The harvests a spreading comes too close before, in the order the crops go in: of what grows there, and of what goes in
 * after it. Lasting crops have no known first day.
 */
function manureClashes({ garden, climate }: PracticeInput, spread: ManureSpread): ManureClash[] {
  return cropSpans(garden, spread.bedId, climate).flatMap((span) => {
    const { crop, to, end } = span;
    if (to === undefined || end === 'happened' || end === 'frozen' || to <= spread.on) return [];
    const first = earliestOf(firstRipe(span), to);
    const by = spreadBy(first, crop.id);
    if (by >= spread.on) return [];
    const permitted = harvestFrom(spread.on, crop.id);
    return [{ spread, span, ripe: latestOf(first, spread.on), permitted, days: manureWaitDays(crop.id), spreadBy: by }];
  });
}

/** A spreading held to the days that keep the wait, where it can: the harvests that set them, and those still too soon. */
export interface HeldSpread {
  spread: ManureSpread;
  /** Kept because the layer goes on in time; the first of its days is the last of the window. */
  kept: readonly ManureClash[];
  clashes: readonly ManureClash[];
}

/** Brings the last day of a layer still to be spread forward where a harvest's wait can be kept by that. */
export function heldInTime(input: PracticeInput, spread: ManureSpread): HeldSpread {
  const all = manureClashes(input, spread);
  const { planned } = spread;
  const kept = planned === undefined ? [] : all.filter(({ spreadBy: by }) => by >= planned.window.earliest);
  const [first, ...others] = kept.map(({ spreadBy: by }) => by);
  if (planned === undefined || first === undefined) return { spread, kept, clashes: all };
  const { key, window } = planned;
  const latest = earliestOf(first, ...others);
  const held = { earliest: window.earliest, preferred: earliestOf(window.preferred, latest), latest };
  const sooner = { ...spread, on: latest, planned: { key, window: held } };
  return { spread: sooner, kept, clashes: manureClashes(input, sooner) };
}

/** The beds of a balance with the days of layers that are held in time. */
export function heldBeds(input: PracticeInput, beds: readonly BedDemand[]): BedDemand[] {
  const windows = new Map(
    manurePlanned(input.garden, beds).flatMap((each) => {
      const { planned } = heldInTime(input, each).spread;
      return planned === undefined ? [] : [[planned.key, planned.window] as const];
    }),
  );
  return beds.map((bed) => ({ ...bed, window: windows.get(bed.key) ?? bed.window }));
}

/** Everything that counts as raw manure on the beds of a garden, done and planned, held in time where it can be. */
export function manureOnBeds(input: PracticeInput, beds: readonly BedDemand[]): HeldSpread[] {
  const { garden } = input;
  const done = garden.topdressed.flatMap((row) => manureSpread(garden, row) ?? []);
  return [...done, ...manurePlanned(garden, beds)].map((spread) => heldInTime(input, spread));
}

/** Whether a layer from a pile would come too close before a harvest of a bed on every day it may go on. */
export function clashesWherever(
  input: PracticeInput,
  { key, bedId, window, pileId }: { key: TaskKey; bedId: string; window: Window; pileId: string },
): boolean {
  const raw = rawOf(input.garden, [pileId]);
  if (raw === undefined) return false;
  return heldInTime(input, { bedId, raw, on: window.latest, planned: { key, window } }).clashes.length > 0;
}
