/**
 * Ordering what the bins will not give.
 */
import { addDays, type Day, earliestOf, latestOf } from '../../measures/days.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import { knownAs } from '../confidence.ts';
import type { Reason, TaskDraft, Window } from '../draft.ts';
import { ORDER_MINUTES } from '../effort.ts';
import type { PracticeInput } from '../practice.ts';
import { barrowLoads } from './barrow.ts';
import type { Share } from './stock.ts';

/** Days before spreading that bought compost is ordered: delivery and a three-week bean test. House default. */
const ORDER_DAYS = { first: 56, usual: 42, last: 35 } as const;
/** Days an order that was due before the garden was brought in stays open. House default. */
const LATE_ORDER_DAYS = 7;
/** Litres an order is rounded up to. House default. */
const ROUND_LITRES = 10;
/** Least heat that bought compost should have been through, °C (compost:S22, compost:S23). */
const SANITISED_C = 55;

/** One order a season, in time for the first bed that would go short. */
export function orderDrafts(input: PracticeInput, shares: readonly Share[]): TaskDraft[] {
  const wanted = shares.filter(({ skipped }) => !skipped);
  const seasons = [...new Set(wanted.map(({ season }) => season))];
  return seasons.flatMap((season) => {
    const ofSeason = wanted.filter((share) => share.season === season);
    const short = ofSeason.filter(({ litres, fromBins }) => fromBins < litres);
    return short.length === 0 ? [] : [orderDraft(input, season, ofSeason, short)];
  });
}

function orderDraft(
  input: PracticeInput,
  season: number,
  shares: readonly Share[],
  short: readonly Share[],
): TaskDraft {
  const [need, have] = [sum(shares, ({ litres }) => litres), sum(shares, ({ fromBins }) => fromBins)];
  const litres = Math.ceil((need - have) / ROUND_LITRES) * ROUND_LITRES;
  const [first = input.until, ...others] = short.map(({ window }) => window.latest);
  const day = earliestOf(first, ...others);
  return {
    key: `compost-order/garden/${season}`,
    practice: 'topdressing',
    kind: 'order-compost',
    job: { id: 'order-compost', title: 'Order compost' },
    subject: { type: 'garden', id: input.garden.id, name: input.garden.name },
    weight: 'deadline',
    title: 'Order compost: the bins will not give enough',
    steps: [
      `Wanted: ${quantity(litres, 'L')} more by ${dated(day)} (${barrowLoads(litres)}).`,
      `Or go without: a thinner layer on ${bedNames(short)}, or none there this year.`,
      `Ask the seller: was it heated to ${quantity(SANITISED_C, 'tempC')} and turned, is there manure in it and whose, was it tested for salts? Look and smell before paying.`,
      'When it comes, sow a few beans in a pot of it: cupped or twisted leaves in three weeks mean weedkiller residue. Then it goes on no bed.',
    ],
    cautions: [
      'Bought compost, hay and straw can carry persistent weedkiller that ruins beans, peas and tomatoes for years.',
    ],
    supplies: [{ what: 'compost to order', amount: { value: litres, unit: 'L' }, also: barrowLoads(litres) }],
    window: orderWindow(input, day),
    ifMissed: 'still do',
    missedNote:
      'A load may come too late for the bed: buy it in bags near the day, and still test it with beans; or spread thinner.',
    effortMinutes: ORDER_MINUTES,
    needs: [],
    after: [],
    confidence: knownAs(input.climate, 'derived'),
    reasons: orderReasons({ need, have: Math.floor(have), litres, day }),
    makes: [{ makes: 'compost-bought', litres }],
  };
}

/** In time for the day; where that time was past when the garden was brought in, as soon as it was. */
function orderWindow({ garden: { startedOn } }: PracticeInput, day: Day): Window {
  const earliest = latestOf(addDays(day, -ORDER_DAYS.first), startedOn);
  const latest = latestOf(addDays(day, -ORDER_DAYS.last), addDays(startedOn, LATE_ORDER_DAYS));
  return { earliest, preferred: latestOf(earliest, addDays(day, -ORDER_DAYS.usual)), latest };
}

function orderReasons(saw: { need: number; have: number; litres: number; day: Day }): Reason[] {
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

function sum(shares: readonly Share[], of: (share: Share) => number): number {
  return shares.reduce((total, share) => total + of(share), 0);
}

function bedNames(shares: readonly Share[]): string {
  return [...new Set(shares.map(({ bed }) => bed.name))].join(', ');
}
