import { expect, it } from 'vitest';
import { weekStart } from '../../src/measures/days.ts';
import { demoPlan } from '../demo-data/demo-plan.ts';

it.each(['2027-01-15', '2027-04-18', '2027-10-05'])(
  'the busiest week of the demo garden laid on %s shows at most seven entries, and nothing clashes',
  async (today) => {
    const plan = await demoPlan(today);
    const weeks = new Map<string, number>();
    for (const { day, state } of plan.entries) {
      if (state === 'open') weeks.set(weekStart(day), (weeks.get(weekStart(day)) ?? 0) + 1);
    }
    expect(Math.max(...weeks.values())).toBeLessThanOrEqual(7);
    expect(plan.clashes).toEqual([]);
  },
);
