/**
 * Garlic to plant, ordered in late summer before it is sold out.
 */

import { seasonOf } from '../../climate/season.ts';
import { addDays, latestOf } from '../../measures/days.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import { knownAs } from '../confidence.ts';
import type { TaskDraft } from '../draft.ts';
import { ORDER_MINUTES } from '../effort.ts';
import type { PracticeInput } from '../practice.ts';
import { gardenSubject } from '../subjects.ts';

/** Days before planting that garlic is ordered: sellers close their lists weeks ahead. Common practice; the days a house default. */
const ORDER_DAYS = { first: 112, usual: 84, last: 56 } as const;
/** Cloves a square metre, six inches apart in rows of twelve: the wide end of the printed spacing. Derived. */
const CLOVES_PER_M2 = 22;
/** Cloves fit to plant in a bulb. From memory. */
const CLOVES_A_BULB = { low: 5, high: 10 } as const;

/** One order an autumn, for the first garlic that is planted in it. */
export function garlicOrderDrafts({ garden, climate }: PracticeInput): TaskDraft[] {
  const days = garden.plantings
    .filter(({ cropId, start }) => cropId === 'garlic' && !start.happened)
    .map(({ start }) => start.day)
    .filter((day) => addDays(day, -ORDER_DAYS.last) >= garden.startedOn)
    .sort();
  const firsts = new Map([...days].reverse().map((day) => [seasonOf(climate.seasonTurn, day), day]));
  return [...firsts].map(([season, day]) => {
    const latest = addDays(day, -ORDER_DAYS.last);
    const earliest = latestOf(addDays(day, -ORDER_DAYS.first), garden.startedOn);
    return {
      key: `garlic-order/garden/${season}`,
      practice: 'planting',
      kind: 'order-garlic',
      job: { id: 'order-garlic', title: 'Order garlic to plant' },
      subject: gardenSubject(garden),
      weight: 'deadline',
      title: 'Order garlic to plant, or set your own best bulbs aside',
      steps: [
        `It goes in on ${dated(day)}. ${quantity(1, 'm2')} of bed takes about ${CLOVES_PER_M2} cloves, ` +
          `${CLOVES_A_BULB.low} to ${CLOVES_A_BULB.high} of them from a bulb.`,
        'If your own crop was clean, set the largest bulbs aside whole: large cloves make large bulbs.',
        'Else order certified bulbs of a kind that is grown where winters are like yours.',
      ],
      cautions: [
        'Buy no garlic from ground with white rot, and plant none from a shop: both can close a bed to onions for good.',
      ],
      supplies: [],
      window: { earliest, preferred: latestOf(addDays(day, -ORDER_DAYS.usual), earliest), latest },
      ifMissed: 'still do',
      missedNote: 'Sellers may be out of it: ask growers at a market for bulbs they planted from themselves.',
      effortMinutes: ORDER_MINUTES,
      needs: [],
      after: [],
      confidence: knownAs(climate, 'derived'),
      reasons: [{ rule: 'seed.garlic', saw: { day }, limit: latest, source: 'common practice' }],
      makes: [],
    };
  });
}
