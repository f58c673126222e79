/**
 * Layers that lean on bought compost which cannot be in hand, tested with beans, before their days are over: in a garden
 * just brought in, and where an order or a delivery came late.
 */
import { addDays, type Day } from '../../measures/days.ts';
import type { Reason } from '../draft.ts';
import { amongCropsTopdressKey } from '../keys.ts';
import type { Findings, PracticeInput } from '../practice.ts';
import { midsummerOf } from '../seasons.ts';
import type { BoughtHeap } from './bought.ts';
import type { LayerWindow } from './layer-window.ts';
import { type BedNeed, byTime } from './need.ts';
import { ORDER_TO_SPREAD_DAYS } from './order-days.ts';
import { springWindow } from './spring-window.ts';
import { type Share, type Stock, shareOut } from './stock.ts';

/** Days in which a layer that goes on among what grows is spread once its compost is in hand. House default. */
const AMONG_CROPS_DAYS = 14;
/** Days that an order put at once, or its delivery, may take longer. House default: half a week has a day for it. */
const SLACK_DAYS = 3;
/** Share of its layer for which a bed is rather spread thinner at its time than left waiting. House default: a half. */
const WORTH_SPREADING = 0.5;

/** A layer that no compost can be had for in its season, and the first day there could be any. */
export interface Unserved {
  need: BedNeed;
  comes: Day;
}

/** Layers each in a time by which its compost can be there, and those for which there is none. */
export interface InHand {
  layers: BedNeed[];
  unserved: Unserved[];
}

/**
 * The layers, with those moved that lean on compost which cannot be in hand in their time. One that the bins serve by half
 * or more is spread thinner. Any other goes on in spring instead of autumn, then up to the day before the crop goes in,
 * then among what grows; after midsummer it is the next season's.
 */
export function layersInHand(
  input: PracticeInput,
  found: Findings,
  stock: Stock & { bought: readonly BoughtHeap[] },
  needs: readonly BedNeed[],
): InHand {
  const result: InHand = { layers: [], unserved: [] };
  for (const share of shareOut(input.garden, input.today, stock, needs)) {
    const { fromBins, ready: _ready, unproven: _unproven, drawn: _drawn, ...shared } = share;
    const need = needs.find(({ key }) => key === share.key) ?? shared;
    const comes = inHandFrom(input, share, stock.bought);
    if (share.skipped || fromBins >= share.litres || isInHand(comes, share)) result.layers.push(need);
    else if (fromBins >= WORTH_SPREADING * share.litres) result.layers.push(thinnedTo(need, fromBins, comes));
    else {
      const moved = movedTo(input, found, need, comes);
      if (moved === undefined) result.unserved.push({ need, comes });
      else result.layers.push(moved);
    }
  }
  return { ...result, layers: result.layers.sort(byTime) };
}

/** The day from which what a layer leans on can be spread: of what is bought and not yet tested, else of an order put at once. */
function inHandFrom({ garden }: PracticeInput, { window }: Share, bought: readonly BoughtHeap[]): Day {
  const [late] = bought.flatMap(({ ready, unproven }) =>
    unproven === undefined || ready <= window.latest ? [] : [ready],
  );
  return late ?? addDays(garden.startedOn, ORDER_TO_SPREAD_DAYS);
}

/** Whether what comes on a day can be counted on for a layer. */
function isInHand(comes: Day, { window }: Pick<LayerWindow, 'window'>): boolean {
  return addDays(comes, SLACK_DAYS) <= window.latest;
}

function thinnedTo(need: BedNeed, fromBins: number, comes: Day): BedNeed {
  const litres = Math.max(1, Math.floor(fromBins));
  const percent = Math.round((100 * litres) / need.litres);
  return { ...need, litres, thinner: { fullLitres: need.litres, lacking: need.litres - litres, percent, comes } };
}

function movedTo(input: PracticeInput, found: Findings, need: BedNeed, comes: Day): BedNeed | undefined {
  const { bed, season } = need;
  const usual = need.half === 'autumn' ? springWindow(input, found, bed, season) : undefined;
  const toTheDay =
    (usual ?? need.half === 'spring') ? springWindow(input, found, bed, season, 'to the day') : undefined;
  const when =
    [usual, toTheDay].find((each) => each !== undefined && isInHand(comes, each)) ??
    (toTheDay === undefined ? undefined : amongCrops(input, need, comes));
  if (when === undefined) return undefined;
  const how = when === usual ? 'spring' : when === toTheDay ? 'to the day' : 'among crops';
  return {
    ...need,
    ...when,
    reasons: [...when.reasons, lateReason(need, comes, how)],
    skipped: input.garden.skipped[when.key] !== undefined,
  };
}

/** Among what grows, as soon as it is in hand; nothing where that is after midsummer. */
function amongCrops(input: PracticeInput, { bed, season }: BedNeed, comes: Day): LayerWindow | undefined {
  if (comes > midsummerOf(input.climate, season)) return undefined;
  return {
    key: amongCropsTopdressKey(bed.id, season),
    half: 'spring',
    window: { earliest: comes, preferred: comes, latest: addDays(comes, AMONG_CROPS_DAYS) },
    after: [],
    reasons: [],
  };
}

function lateReason({ window }: BedNeed, comes: Day, how: string): Reason {
  return { rule: 'topdress.in-hand', saw: { comes, how }, limit: window.latest, source: 'compost:S33' };
}
