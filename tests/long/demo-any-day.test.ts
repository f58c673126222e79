import { expect, it } from 'vitest';
import { addDays, weekStart } from '../../src/measures/days.ts';
import { demoPlan } from '../demo-data/demo-plan.ts';

/** Anchors through two years, every eleventh day, a leap day and both turns of the year among them. */
const ANCHORS = [
  ...Array.from({ length: 66 }, (_, step) => addDays('2027-03-01', step * 11)),
  '2027-12-31',
  '2028-01-01',
  '2028-02-29',
];

/** Entries a week may hold in the demo garden (design). */
const MOST_A_WEEK = 7;

it.each(ANCHORS)('the demo garden laid on %s has work, no clash and no crowded week', async (today) => {
  const plan = await demoPlan(today);
  const open = plan.entries.filter(({ state }) => state === 'open');
  const weeks = new Map<string, string[]>();
  for (const { day, title } of open) weeks.set(weekStart(day), [...(weeks.get(weekStart(day)) ?? []), title]);
  const crowded = [...weeks].filter(([, titles]) => titles.length > MOST_A_WEEK);
  expect(crowded).toEqual([]);
  expect(plan.clashes).toEqual([]);
  expect(open.filter(({ day }) => day <= addDays(today, 14)).length).toBeGreaterThan(0);
});
