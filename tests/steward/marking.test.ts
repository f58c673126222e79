import { describe, expect, it } from 'vitest';
import { NORTH_TODAY, northernFile } from './gardens.ts';
import { household, openTask } from './household.ts';

const POOR = { on: '2026-10-01', bed: 'south', phosphorusPpm: 4, ph: 6.4 };

describe('an amount really used', () => {
  it('is kept in place of the planned one: litres of compost spread, grams of bone meal strewn', async () => {
    const { steward, garden } = await household(northernFile({ soilTests: [POOR] }));
    const { plan } = await steward.view(garden);
    const [meal, spread] = [openTask(plan, 'bone-meal'), openTask(plan, 'topdress')];
    await steward.markDone(garden, [meal.key, spread.key], NORTH_TODAY, 'ada', {
      [meal.key]: { grams: 90 },
      [spread.key]: { litres: 31 },
    });
    const held = (await steward.view(garden)).garden;
    expect(held.fed).toEqual([{ bedId: 'south', on: NORTH_TODAY, fertiliserId: 'bone_meal', grams: 90 }]);
    expect(held.topdressed.at(-1)?.litres).toBe(31);
  });

  it('is as planned where nobody says otherwise', async () => {
    const { steward, garden } = await household(northernFile({ soilTests: [POOR] }));
    const { key, supplies } = openTask((await steward.view(garden)).plan, 'bone-meal');
    await steward.markDone(garden, [key], NORTH_TODAY, 'ada');
    expect((await steward.view(garden)).garden.fed[0]?.grams).toBe(supplies[0]?.amount?.value);
  });

  it('is refused where it cannot be, every one with its task, and nothing is kept', async () => {
    const { steward, garden } = await household(northernFile({ soilTests: [POOR] }));
    const { plan } = await steward.view(garden);
    const [meal, spread] = [openTask(plan, 'bone-meal'), openTask(plan, 'topdress')];
    const used = { [meal.key]: { grams: -1 }, [spread.key]: { litres: Number.NaN } };
    await expect(steward.markDone(garden, [meal.key, spread.key], NORTH_TODAY, 'ada', used)).rejects.toThrow(
      /-1 grams cannot have been used[\s\S]*NaN litres cannot have been used/,
    );
    expect((await steward.view(garden)).ledger).toHaveLength(1);
  });

  it('goes into the garden file and comes back with it', async () => {
    const { steward, garden } = await household(northernFile({ soilTests: [POOR] }));
    const { key } = openTask((await steward.view(garden)).plan, 'bone-meal');
    await steward.markDone(garden, [key], NORTH_TODAY, 'ada', { [key]: { grams: 90 } });
    const before = (await steward.view(garden)).garden;
    const file = northernFile({
      soilTests: [POOR],
      fed: [{ bed: 'south', on: NORTH_TODAY, fertiliser: 'Bone meal', grams: 90 }],
    });
    await steward.importGarden({ file, prefer: 'reported' }, 'ada');
    expect((await steward.view(garden)).garden.fed).toEqual(before.fed);
  });
});
