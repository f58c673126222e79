import { describe, expect, it, onTestFinished, test } from 'vitest';
import { feedEventsOf } from '../../src/calendar/feed-events.ts';
import { createSteward } from '../../src/steward/create-steward.ts';
import type { GardenView } from '../../src/steward/doings/steward.ts';
import { layDemo } from '../../src/steward/gardens/demo.ts';
import { openStore } from '../../src/store/store.ts';
import { southernFile } from './gardens.ts';
import { household } from './household.ts';

/** Days and titles of a plain feed that stand in it more than once: a widespread sync program may keep one of them. */
function twinsIn({ plan, garden }: GardenView): string[] {
  const lines = feedEventsOf(plan, garden.place.units).map(({ day, title }) => `${day} ${title}`);
  expect(lines.length).toBeGreaterThan(5);
  return lines.filter((line, index) => lines.indexOf(line) !== index);
}

describe('entries of one day differ in their title', () => {
  test.each(['2026-11-25', '2027-01-15', '2027-03-10', '2027-05-12', '2027-07-20', '2027-09-08', '2028-02-29'])(
    'in the demo garden of %s',
    async (today) => {
      const clock = { now: () => `${today}T12:00:00.000Z`, today };
      const steward = createSteward({ store: await openStore({ file: ':memory:' }), clock });
      onTestFinished(() => steward.close());
      expect(twinsIn(await steward.view(await layDemo({ steward, clock })))).toEqual([]);
    },
  );

  it.each(['2027-03-01', '2027-10-20', '2028-02-29'])('in a southern garden on %s', async (today) => {
    const { steward, garden } = await household(southernFile(), `${today}T00:00:00.000Z`);
    expect(twinsIn(await steward.view(garden))).toEqual([]);
  });
});
