/**
 * Ordering what the bins will not give.
 */

import { addDays, type Day } from '../../measures/days.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import { barrowLoads } from '../barrow.ts';
import type { WaysOut } from '../compost-balance.ts';
import { knownAs } from '../confidence.ts';
import type { Reason, TaskDraft, TaskKey } from '../draft.ts';
import { ORDER_MINUTES } from '../effort.ts';
import type { Findings, PracticeInput } from '../practice.ts';
import { gardenSubject } from '../subjects.ts';
import { BEAN_TEST_DAYS } from './order-days.ts';
import { ORDER_DAYS, type Shortage } from './shortage.ts';
import { boughtWords, thinnerWords } from './ways-in-words.ts';
import { waysOut } from './ways-out.ts';

/** Least heat that bought compost should have been through, °C (compost:S22, compost:S23). */
const SANITISED_C = 55;

/** The order of a season that goes short. */
export interface SeasonOrder {
  season: number;
  draft: TaskDraft;
}

/** One order a season, in time for the first bed that would go short. What is on its way is not ordered again. */
export function orderDrafts(input: PracticeInput, found: Findings, shortages: readonly Shortage[]): SeasonOrder[] {
  return shortages.map((shortage) => ({
    season: shortage.season,
    draft: orderDraft(input, shortage, waysOut(input, found, shortage)),
  }));
}

/** An order's key; where one of the season was placed and there is still not enough, the next one's. */
function orderKey({ garden }: PracticeInput, season: number): TaskKey {
  const first = `compost-order/garden/${season}`;
  const placed = new Set(garden.done.map(({ key }) => key).filter((key) => `${key}/`.startsWith(`${first}/`)));
  return placed.size === 0 ? first : `${first}/order:${placed.size + 1}`;
}

function orderDraft(input: PracticeInput, shortage: Shortage, ways: WaysOut): TaskDraft {
  const { season, need, lacking, litres, day, order } = shortage;
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
      boughtWords(ways.buy),
      `Or go without: ${thinnerWords(ways)}.`,
      `Ask the seller: was it heated to ${quantity(SANITISED_C, 'tempC')} and turned, is there manure in it and whose, was it tested for salts, can there be jumping worms in it? Go, look and smell before you pay.`,
      `When it comes, cover it against rain, and sow a few beans in pots of it that same day: it goes on no bed until they have grown well for ${BEAN_TEST_DAYS.low} days.`,
    ],
    cautions: [
      'Bought compost, hay and straw can carry persistent weedkiller that ruins beans, peas and tomatoes for years.',
      'Does it hold manure? Without a record of its heat it counts as raw manure, and local rules come first.',
    ],
    supplies: [{ what: 'compost to order', amount: { value: litres, unit: 'L' }, also: barrowLoads(litres) }],
    window: order,
    ifMissed: 'still do',
    missedNote:
      'A load may come too late for the bed: buy it in bags near the day, and still test it with beans; or spread thinner.',
    effortMinutes: ORDER_MINUTES,
    needs: [],
    after: [],
    confidence: knownAs(input.climate, 'derived'),
    reasons: orderReasons({ need, have: Math.floor(need - lacking), litres, day }),
    makes: [{ makes: 'compost-bought', litres }],
  };
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
