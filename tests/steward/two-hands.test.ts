import { describe, expect, it } from 'vitest';
import { createSteward } from '../../src/steward/create-steward.ts';
import type { Steward } from '../../src/steward/doings/steward.ts';
import type { Store } from '../../src/store/store.ts';
import { NORTH_TODAY } from './gardens.ts';
import { household, later, openTask } from './household.ts';

/** A steward over the same store before whose every write, up to a number of times, somebody else writes first. */
function slowHand({ store, clock, garden }: Awaited<ReturnType<typeof household>>, times: number): Steward {
  const quick = createSteward({ store, clock });
  let left = times;
  const slow: Store = {
    ...store,
    transaction: async (work) => {
      if (left > 0) {
        left -= 1;
        await quick.readPile(garden, { pileId: 'spring-pile', on: NORTH_TODAY, tempC: 40 + left }, 'ben');
      }
      return store.transaction(work);
    },
  };
  return createSteward({ store: slow, clock });
}

describe('two people at once', () => {
  it('both are heard: a fact overtaken by another is offered again', async () => {
    const house = await household();
    const slow = slowHand(house, 2);
    const { key } = openTask((await slow.view(house.garden)).plan, 'clear-bed');
    const plan = await slow.markDone(house.garden, [key], NORTH_TODAY, 'ada');
    expect(plan.tasks.find((task) => task.key === key)?.state).toBe('done');
    expect((await slow.view(house.garden)).ledger.map(({ by, fact }) => [by, fact.kind])).toEqual([
      ['ada', 'garden-imported'],
      ['ben', 'pile-read'],
      ['ben', 'pile-read'],
      ['ada', 'tasks-done'],
    ]);
  });

  it('says so and writes nothing when the garden will not stand still', async () => {
    const house = await household();
    const slow = slowHand(house, 99);
    const { key } = openTask((await slow.view(house.garden)).plan, 'clear-bed');
    await expect(slow.skip(house.garden, [key], 'ada')).rejects.toThrow('kept changing. Nothing was written.');
    expect((await house.store.ledger(house.garden)).map(({ fact }) => fact.kind)).not.toContain('tasks-skipped');
  });

  it('what the other did first decides: a task done meanwhile cannot be skipped', async () => {
    const { steward, store, clock, garden } = await household();
    const other = createSteward({ store, clock });
    const { key } = openTask((await other.view(garden)).plan, 'clear-bed');
    await steward.markDone(garden, [key], NORTH_TODAY, 'ada');
    later(clock);
    await expect(other.skip(garden, [key], 'ben')).rejects.toThrow('is done already.');
    expect((await other.view(garden)).plan).toEqual((await steward.view(garden)).plan);
  });
});
