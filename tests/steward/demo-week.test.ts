import { expect, it, onTestFinished } from 'vitest';
import { weekStart } from '../../src/measures/days.ts';
import { createSteward } from '../../src/steward/create-steward.ts';
import { layDemo } from '../../src/steward/demo.ts';
import { openStore } from '../../src/store/store.ts';

it.each(['2027-01-15', '2027-04-18', '2027-10-05'])(
  'the busiest week of the demo garden laid on %s shows at most seven entries, and nothing clashes',
  async (today) => {
    const clock = { now: () => `${today}T15:00:00.000Z`, today };
    const store = await openStore({ file: ':memory:', now: clock.now() });
    const steward = createSteward({ store, clock });
    onTestFinished(() => steward.close());
    const { plan } = await steward.view(await layDemo({ steward, clock }));
    const weeks = new Map<string, number>();
    for (const { day, state } of plan.entries) {
      if (state === 'open') weeks.set(weekStart(day), (weeks.get(weekStart(day)) ?? 0) + 1);
    }
    expect(Math.max(...weeks.values())).toBeLessThanOrEqual(7);
    expect(plan.clashes).toEqual([]);
  },
);
