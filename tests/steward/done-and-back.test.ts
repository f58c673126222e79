import { expect, it } from 'vitest';
import type { Plan } from '../../src/schedule/plan.ts';
import { NORTH_TODAY } from './gardens.ts';
import { household } from './household.ts';

/** Kinds marked and taken back: of a crop, a cover, a pile, compost and an order. */
const KINDS = ['clear-bed', 'cut-cover', 'turn-pile', 'topdress', 'start-indoors', 'squeeze-soil'];

/** What a gardener sees of each task: its day, its window, its state and its amounts. */
const seen = ({ tasks }: Plan) =>
  tasks.map(({ key, day, window, state, supplies, steps }) => ({ key, day, window, state, supplies, steps }));

it('marked done and taken back, work of every kind leaves the plan as it was', async () => {
  const { steward, garden } = await household();
  const { plan: before, garden: held } = await steward.view(garden);
  let tried = 0;
  for (const kind of KINDS) {
    const task = before.tasks.find((each) => each.kind === kind && each.state === 'open');
    if (task === undefined) continue;
    tried += 1;
    await steward.markDone(garden, [task.key], NORTH_TODAY, 'ada');
    await steward.undo(garden, undefined, 'ada');
    const after = await steward.view(garden);
    expect(seen(after.plan), kind).toEqual(seen(before));
    expect(after.garden, kind).toEqual(held);
  }
  expect(tried).toBeGreaterThan(3);
}, 60_000);
