/**
 * Compost from elsewhere: when it can be spread, and the bean test it waits for.
 */
import type { Climate } from '../../climate/climate.ts';
import type { CompostBought, Garden } from '../../garden/garden.ts';
import { addDays, type Day, latestOf } from '../../measures/days.ts';
import type { TaskKey } from '../draft.ts';
import { seasonAfter } from '../seasons.ts';
import { BEAN_TEST_DAYS, DELIVERY_DAYS } from './order-days.ts';
import type { Heap } from './stock.ts';

/** What was bought on a day and is not yet told to have come with a later delivery. */
export interface BoughtHeap extends Heap {
  on: Day;
  here: Day;
  ordered: boolean;
  testKey: TaskKey;
}

/**
 * What was bought, oldest first. A delivery settles what was ordered up to its day, so that nothing counts as ordered
 * and as delivered. A test counts from its third week on, also where it was marked done as it was begun.
 */
export function boughtHeaps({ compostBought }: Pick<Garden, 'compostBought'>, climate: Climate): BoughtHeap[] {
  const rows = settled([...compostBought].sort(byDay));
  const days = [...new Set(compostBought.map(({ on }) => on))].sort();
  return rows.map(({ on, litres, ordered, tested }): BoughtHeap => {
    const testKey = testKeyOf(on, days, climate);
    const here = ordered ? addDays(on, DELIVERY_DAYS) : on;
    const ready =
      tested === undefined ? addDays(here, BEAN_TEST_DAYS.low) : latestOf(tested, addDays(on, BEAN_TEST_DAYS.low));
    return {
      on,
      ordered: ordered === true,
      litres,
      from: { what: ordered === true ? 'order' : 'delivery', of: on },
      here,
      ready,
      testKey,
      ...(tested === undefined ? { unproven: testKey } : {}),
    };
  });
}

function byDay(a: CompostBought, b: CompostBought): number {
  if (a.on !== b.on) return a.on < b.on ? -1 : 1;
  return Number(b.ordered === true) - Number(a.ordered === true) || a.litres - b.litres;
}

/** Orders less what has been delivered since; a delivery takes over the test of the order it settles. */
function settled(rows: readonly CompostBought[]): CompostBought[] {
  const left = rows.map((row) => ({ ...row }));
  for (const delivery of left.filter(({ ordered }) => ordered !== true)) {
    let came = delivery.litres;
    for (const order of left.filter(({ ordered, on }) => ordered === true && on <= delivery.on)) {
      const litres = Math.min(came, order.litres);
      if (litres <= 0) continue;
      order.litres -= litres;
      came -= litres;
      if (delivery.tested === undefined && order.tested !== undefined && order.tested >= delivery.on)
        delivery.tested = order.tested;
    }
  }
  return left.filter(({ litres }) => litres > 0);
}

/** Named by the season it serves and its place among what was bought for that. */
function testKeyOf(on: Day, days: readonly Day[], climate: Climate): TaskKey {
  const season = seasonAfter(climate, on);
  const ofSeason = days.filter((day) => seasonAfter(climate, day) === season);
  return `compost-test/garden/${season}/bought:${ofSeason.indexOf(on) + 1}`;
}
