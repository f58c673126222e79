/**
 * What a season goes short of, and by when.
 */
import { addDays, clampDay, type Day, latestOf } from '../../measures/days.ts';
import type { Window } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import type { BoughtHeap } from './bought.ts';
import { ORDER_TO_SPREAD_DAYS } from './order-days.ts';
import type { Share } from './stock.ts';

/** Days before spreading that compost is ordered: the last is what delivery and test take, the others house defaults. */
export const ORDER_DAYS = { first: 56, usual: 42, last: ORDER_TO_SPREAD_DAYS } as const;
/** Litres an order is rounded up to. House default. */
const ROUND_LITRES = 10;

/** What a season goes short of. */
export interface Shortage {
  season: number;
  /** Litres all its beds want, and those the bins and orders will not give. */
  need: number;
  lacking: number;
  /** The same, rounded up to what is ordered. */
  litres: number;
  /** The beds that go short. */
  short: readonly Share[];
  /** All beds of the season still to be served. */
  beds: readonly Share[];
  /** The last day of the first of them. */
  day: Day;
  order: Window;
}

/** What each season goes short of. What is on its way counts as there. */
export function shortagesOf(input: PracticeInput, shares: readonly Share[], bought: readonly BoughtHeap[]): Shortage[] {
  const wanted = shares.filter(({ skipped }) => !skipped);
  const seasons = [...new Set(wanted.map(({ season }) => season))];
  return seasons.flatMap((season) => {
    const beds = wanted.filter((share) => share.season === season);
    const short = beds.filter(({ litres, fromBins }) => fromBins < litres);
    const [day] = short.map(({ window }) => window.latest).sort();
    if (day === undefined) return [];
    const need = sum(beds, ({ litres }) => litres);
    const lacking = need - sum(beds, ({ fromBins }) => fromBins) - onItsWay(bought, beds, day);
    if (lacking <= 0) return [];
    const litres = Math.ceil(lacking / ROUND_LITRES) * ROUND_LITRES;
    const [best = day] = short.map(({ window }) => window.preferred).sort();
    return [{ season, need, lacking, litres, short, beds, day, order: orderWindow(input, best, day) }];
  });
}

/** Litres ordered that come too late for the first bed and that no bed of the season has been given. */
function onItsWay(bought: readonly BoughtHeap[], shares: readonly Share[], first: Day): number {
  const late = bought.filter(({ ordered, ready }) => ordered && ready > first);
  const keys = new Set(late.map(({ testKey }) => testKey));
  const given = shares.flatMap(({ drawn }) => drawn).filter(({ heap }) => keys.has(heap.unproven ?? ''));
  return Math.max(0, sum(late, ({ litres }) => litres) - sum(given, ({ litres }) => litres));
}

/** In time for the day on which the first bed is best served, and at the latest for its last; not before the garden was. */
function orderWindow({ garden: { startedOn } }: PracticeInput, best: Day, day: Day): Window {
  const latest = latestOf(addDays(day, -ORDER_DAYS.last), startedOn);
  const from = (days: number): Day => clampDay(addDays(best, -days), startedOn, latest);
  return { earliest: from(ORDER_DAYS.first), preferred: from(ORDER_DAYS.usual), latest };
}

function sum<Item>(items: readonly Item[], of: (item: Item) => number): number {
  return items.reduce((total, item) => total + of(item), 0);
}
