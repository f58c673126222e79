import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/measures/days.ts';
import type { Plan } from '../../src/schedule/plan.ts';
import { NORTH_TODAY } from './gardens.ts';
import { type Household, household, later, openTask, told } from './household.ts';

const DAY_MINUTES = 24 * 60;

/** A household whose plan of the eve is published, on the next morning. */
async function nextMorning(): Promise<Household & { morning: Plan }> {
  const house = await household();
  await house.steward.view(house.garden);
  later(house.clock, DAY_MINUTES);
  return { ...house, morning: (await house.steward.view(house.garden)).plan };
}

const heldKeys = ({ held = [], today }: Plan) =>
  held.filter(({ left, since }) => left === undefined && since < today).map(({ key }) => key);

describe('days held to', () => {
  it('are those the eve published, all that is still to do', async () => {
    const { morning } = await nextMorning();
    expect(morning.today).toBe(addDays(NORTH_TODAY, 1));
    const toDo = morning.tasks.filter(({ state, pinned }) => state === 'open' && !pinned);
    expect(toDo.length).toBeGreaterThan(20);
    expect(heldKeys(morning).sort()).toEqual(toDo.map(({ key }) => key).sort());
  });

  it('are the same when a mark made today is taken back today', async () => {
    const { steward, garden, clock, morning } = await nextMorning();
    await steward.markDone(garden, [openTask(morning, 'clear-bed').key], morning.today, 'ada');
    later(clock);
    const preview = await steward.previewUndo(garden);
    const after = await steward.undo(garden, undefined, 'ada');
    expect(told(after)).toEqual(told(morning));
    expect(after.held).toEqual(morning.held);
    expect(preview?.moves.length).toBeGreaterThan(0);
  });

  it('come back when a pin of the day before is taken back, and go again with the pin', async () => {
    const { steward, garden, clock, morning } = await nextMorning();
    const inThreeDays = addDays(morning.today, 3);
    const { key = '' } = morning.held?.find(({ day }) => day >= inThreeDays) ?? {};
    const dayOf = ({ tasks }: Plan) => tasks.find((task) => task.key === key)?.day;
    expect(dayOf(morning)).toBeDefined();
    const pinned = await steward.pin(garden, key, addDays(dayOf(morning) ?? '', 2), 'ada');
    later(clock, DAY_MINUTES);
    const next = (await steward.view(garden)).plan;
    expect(dayOf(next)).toBe(dayOf(pinned));
    const preview = await steward.previewUndo(garden);
    const undone = await steward.undo(garden, undefined, 'ada');
    expect(dayOf(undone)).toBe(dayOf(morning));
    expect(preview?.moves.find((move) => move.key === key)).toMatchObject({ from: dayOf(next), to: dayOf(morning) });
    later(clock);
    expect(dayOf(await steward.undo(garden, 3, 'ada'))).toBe(dayOf(pinned));
  });
});
