/**
 * Ordering what the bins will not give.
 */

import { addDays, clampDay, type Day, earliestOf, latestOf } from '../../measures/days.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import { barrowLoads } from '../barrow.ts';
import { knownAs } from '../confidence.ts';
import type { Reason, TaskDraft, TaskKey, Window } from '../draft.ts';
import { ORDER_MINUTES } from '../effort.ts';
import type { PracticeInput } from '../practice.ts';
import { gardenSubject } from '../subjects.ts';
import { BEAN_TEST_DAYS, type BoughtHeap, ORDER_TO_SPREAD_DAYS } from './bought.ts';
import type { Share } from './stock.ts';

/** Days before spreading that compost is ordered: the last is what delivery and test take, the others house defaults. */
const ORDER_DAYS = { first: 56, usual: 42, last: ORDER_TO_SPREAD_DAYS } as const;
/** Days an order that was due before the garden was brought in stays open. House default. */
const LATE_ORDER_DAYS = 7;
/** Litres an order is rounded up to. House default. */
const ROUND_LITRES = 10;
/** Least heat that bought compost should have been through, °C (compost:S22, compost:S23). */
const SANITISED_C = 55;

/** The order of a season that goes short. */
export interface SeasonOrder {
  season: number;
  draft: TaskDraft;
}

/** One order a season, in time for the first bed that would go short. What is on its way is not ordered again. */
export function orderDrafts(
  input: PracticeInput,
  shares: readonly Share[],
  bought: readonly BoughtHeap[],
): SeasonOrder[] {
  const wanted = shares.filter(({ skipped }) => !skipped);
  const seasons = [...new Set(wanted.map(({ season }) => season))];
  return seasons.flatMap((season) => {
    const ofSeason = wanted.filter((share) => share.season === season);
    const short = ofSeason.filter(({ litres, fromBins }) => fromBins < litres);
    const [first] = short.map(({ window }) => window.latest).sort();
    if (first === undefined) return [];
    const need = sum(ofSeason, ({ litres }) => litres);
    const have = sum(ofSeason, ({ fromBins }) => fromBins);
    const lacking = need - have - onItsWay(bought, ofSeason, first);
    return lacking <= 0 ? [] : [{ season, draft: orderDraft(input, season, short, { need, lacking }) }];
  });
}

/** Litres ordered that come too late for the first bed and that no bed of the season has been given. */
function onItsWay(bought: readonly BoughtHeap[], shares: readonly Share[], first: Day): number {
  const late = bought.filter(({ ordered, ready }) => ordered && ready > first);
  const keys = new Set(late.map(({ testKey }) => testKey));
  const given = shares.flatMap(({ drawn }) => drawn).filter(({ heap }) => keys.has(heap.unproven ?? ''));
  return Math.max(0, sum(late, ({ litres }) => litres) - sum(given, ({ litres }) => litres));
}

/** An order's key; where one of the season was placed and there is still not enough, the next one's. */
function orderKey({ garden }: PracticeInput, season: number): TaskKey {
  const first = `compost-order/garden/${season}`;
  const placed = new Set(garden.done.map(({ key }) => key).filter((key) => `${key}/`.startsWith(`${first}/`)));
  return placed.size === 0 ? first : `${first}/order:${placed.size + 1}`;
}

interface Shortage {
  need: number;
  lacking: number;
}

function orderDraft(
  input: PracticeInput,
  season: number,
  short: readonly Share[],
  { need, lacking }: Shortage,
): TaskDraft {
  const litres = Math.ceil(lacking / ROUND_LITRES) * ROUND_LITRES;
  const [best = input.until] = short.map(({ window }) => window.preferred).sort();
  const [day = best] = short.map(({ window }) => window.latest).sort();
  return {
    key: orderKey(input, season),
    practice: 'topdressing',
    kind: 'order-compost',
    job: { id: 'order-compost', title: 'Order compost' },
    subject: gardenSubject(input.garden),
    weight: 'deadline',
    title: 'Order compost: the bins will not give enough',
    steps: [
      `Wanted: ${quantity(litres, 'L')} more by ${dated(day)} (${barrowLoads(litres)}).`,
      `Or go without: a thinner layer on ${bedNames(short)}, or none there this year.`,
      `Ask the seller: was it heated to ${quantity(SANITISED_C, 'tempC')} and turned, is there manure in it and whose, was it tested for salts? Look and smell before paying.`,
      `When it comes, sow a few beans in pots of it that same day: it goes on no bed until they have grown well for ${BEAN_TEST_DAYS.low} days.`,
    ],
    cautions: [
      'Bought compost, hay and straw can carry persistent weedkiller that ruins beans, peas and tomatoes for years.',
    ],
    supplies: [{ what: 'compost to order', amount: { value: litres, unit: 'L' }, also: barrowLoads(litres) }],
    window: orderWindow(input, best, day),
    ifMissed: 'still do',
    missedNote:
      'A load may come too late for the bed: buy it in bags near the day, and still test it with beans; or spread thinner.',
    effortMinutes: ORDER_MINUTES,
    needs: [],
    after: [],
    confidence: knownAs(input.climate, 'derived'),
    reasons: orderReasons(input, { need, have: Math.floor(need - lacking), litres, day }),
    makes: [{ makes: 'compost-bought', litres }],
  };
}

/**
 * In time for the day on which the first bed is best served, and at the latest for its last; where that time was past
 * when the garden was brought in, as soon as it was.
 */
function orderWindow({ garden: { startedOn } }: PracticeInput, best: Day, day: Day): Window {
  const late = earliestOf(addDays(startedOn, LATE_ORDER_DAYS), latestOf(day, startedOn));
  const latest = latestOf(addDays(day, -ORDER_DAYS.last), late);
  const from = (days: number): Day => clampDay(addDays(best, -days), startedOn, latest);
  return { earliest: from(ORDER_DAYS.first), preferred: from(ORDER_DAYS.usual), latest };
}

function orderReasons(
  { garden: { startedOn } }: PracticeInput,
  saw: { need: number; have: number; litres: number; day: Day },
): Reason[] {
  const soonest = addDays(startedOn, ORDER_DAYS.last);
  if (soonest > saw.day) {
    return [
      { rule: 'compost-order.short', saw, source: "the garden's own plan" },
      { rule: 'compost-order.late', saw: { day: saw.day }, limit: soonest, source: 'compost:S33' },
    ];
  }
  return [
    { rule: 'compost-order.short', saw, source: "the garden's own plan" },
    {
      rule: 'compost-order.lead',
      saw: { daysFirst: ORDER_DAYS.usual, daysLast: ORDER_DAYS.last, day: saw.day },
      limit: addDays(saw.day, -ORDER_DAYS.last),
      source: 'compost:S33',
    },
  ];
}

function sum<Item>(items: readonly Item[], of: (item: Item) => number): number {
  return items.reduce((total, item) => total + of(item), 0);
}

function bedNames(shares: readonly Share[]): string {
  return [...new Set(shares.map(({ bed }) => bed.name))].join(', ');
}
