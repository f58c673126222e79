/**
 * Which beds want compost for which season, when it can go on, and how much.
 */

import { seasonOf } from '../../climate/season.ts';
import type { Bed } from '../../garden/garden.ts';
import { inBed } from '../../garden/in-bed.ts';
import { daysBetween } from '../../measures/days.ts';
import { areaOf } from '../bed-timeline.ts';
import type { BedUnserved, Thinner } from '../compost-balance.ts';
import { type BedLayer, bedLayer } from '../compost-layer.ts';
import { bedFillings, fillOf } from '../fill-window.ts';
import type { Findings, PracticeInput } from '../practice.ts';
import { firstSeasonOf, seasonAfter } from '../seasons.ts';
import { autumnWindow } from './autumn-window.ts';
import type { LayerWindow } from './layer-window.ts';
import { springWindow } from './spring-window.ts';

/** Days after its window that a layer nobody spread is still counted on. House default, as for work still to do. */
const STILL_WANTED_DAYS = 60;

/** One bed's want of compost for a season. */
export interface BedNeed extends LayerWindow {
  bed: Bed;
  season: number;
  layer: BedLayer;
  litres: number;
  /** Where it is spread thinner: rather than order so little, or because an order comes too late. */
  thinner?: Thinner;
  /** Whether the gardener skipped it: it stays in sight, and takes no compost. */
  skipped: boolean;
  /** A new bed that is filled with it, and no layer: it takes what is promised to none of them. */
  fill?: true;
}

/** Litres rounded up, so that a layer is never short; a hundredth over a whole one is the arithmetic's, not the bed's. */
function wholeLitres(litres: number): number {
  return Math.max(1, Math.ceil(Math.round(litres * 100) / 100));
}

/** A layer over an area: litres = m² × mm. */
export function layerLitres(areaM2: number, depthMm: number): number {
  return areaM2 * depthMm;
}

/**
 * What the beds want in the running season and the two after it, in the order they want it, however far ahead: what is
 * short must not creep up as beds come into sight one by one. A bed that was given its layer for a season is not asked
 * again for it, nor one that nobody served for two months after its window. A new bed has its compost in it for the first
 * season.
 */
export function bedNeeds(input: PracticeInput, found: Findings): BedNeed[] {
  const first = seasonOf(input.climate.seasonTurn, input.today);
  return [first, first + 1, first + 2].flatMap((season) => seasonNeeds(input, found, season)).sort(byTime);
}

/** Needs in the order in which they are best served. */
export function byTime(a: BedNeed, b: BedNeed): number {
  if (a.window.preferred !== b.window.preferred) return a.window.preferred < b.window.preferred ? -1 : 1;
  return a.key < b.key ? -1 : 1;
}

function seasonNeeds(input: PracticeInput, found: Findings, season: number): BedNeed[] {
  const { garden, today } = input;
  return garden.beds.flatMap((bed) => {
    const wanted = wantedIn(input, found, bed, season);
    if (wanted === undefined) return [];
    const { layer, when } = wanted;
    const { latest } = when.window;
    if (latest < garden.startedOn || daysBetween(latest, today) > STILL_WANTED_DAYS) return [];
    const litres = wholeLitres(layerLitres(areaOf(bed), layer.depthMm));
    return [{ bed, season, layer, litres, skipped: garden.skipped[when.key] !== undefined, ...when }];
  });
}

/** A bed's layer of a season not given yet, and when it can go on, past or to come; nothing where it gets none. */
function wantedIn(
  input: PracticeInput,
  found: Findings,
  bed: Bed,
  season: number,
): { layer: BedLayer; when: LayerWindow } | undefined {
  const { garden, climate } = input;
  if ((firstSeasonOf(climate, bed) ?? season - 1) >= season) return undefined;
  const layer = bedLayer(garden, bed.id);
  if (layer.depthMm === 0 || alreadyGiven(input, bed, season)) return undefined;
  const when = layerWindow(input, found, bed, season, layer);
  return when && { layer, when };
}

/**
 * Beds whose days for the coming layer were over before the garden was brought in: told until midsummer, when the next
 * layer comes into sight.
 */
export function closedBefore(input: PracticeInput, found: Findings): BedUnserved[] {
  const { garden, climate, today } = input;
  const season = seasonAfter(climate, garden.startedOn);
  if (seasonAfter(climate, today) !== season) return [];
  return garden.beds.flatMap((bed) => {
    const window = wantedIn(input, found, bed, season)?.when.window;
    return window !== undefined && window.latest < garden.startedOn
      ? [{ bedName: bed.name, season, closes: window.latest }]
      : [];
  });
}

/** What new beds could take: each as much compost as may go into it, in the order of their days. */
export function fillNeeds(input: PracticeInput): BedNeed[] {
  return bedFillings(input).flatMap((filling) => {
    const { key, bed, season, window } = filling;
    const { compostMostL: litres, areaM2 } = fillOf(filling, 0);
    if (litres === 0) return [];
    const { season: half } = bedLayer(input.garden, bed.id);
    const layer = { depthMm: litres / areaM2, season: half, by: 'default' } as const;
    const skipped = input.garden.skipped[key] !== undefined;
    return [{ key, bed, season, half, window, layer, litres, skipped, after: [], reasons: [], fill: true as const }];
  });
}

/** One layer of compost a bed and season: a day after midsummer already serves the season after. */
function alreadyGiven({ garden, climate }: PracticeInput, bed: Bed, season: number): boolean {
  return inBed(garden.topdressed, bed.id).some(
    ({ on, materialId }) => materialId === undefined && seasonAfter(climate, on) === season,
  );
}

/** The window by the household's habit, or by the other half of the year where the bed is not free in the habit's. */
function layerWindow(
  input: PracticeInput,
  found: Findings,
  bed: Bed,
  season: number,
  layer: BedLayer,
): LayerWindow | undefined {
  const autumn = (): LayerWindow | undefined => autumnWindow(input, found, bed, season);
  const spring = (): LayerWindow | undefined => springWindow(input, found, bed, season);
  return layer.season === 'autumn' ? (autumn() ?? spring()) : (spring() ?? autumn());
}
