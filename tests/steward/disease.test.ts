import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/schedule/plan.ts';
import type { Report } from '../../src/steward/doings/steward.ts';
import { NORTH_TODAY, northernFile, SOUTH_TODAY, southernFile } from './gardens.ts';
import { household, later, told } from './household.ts';

const clubroot: Report = {
  kind: 'disease-found',
  bedId: 'wall',
  cropId: 'cabbage',
  disease: 'clubroot',
  on: NORTH_TODAY,
};

/** Cabbage standing in the wall bed, mustard and kale to come after it. */
const file = northernFile({
  plantings: [
    { id: 'cabbages', bed: 'wall', crop: 'cabbage', setOut: '2027-04-10', lastHarvest: '2027-07-10' },
    { id: 'kale', bed: 'wall', crop: 'kale', setOut: '2028-05-10' },
    { id: 'tomatoes', bed: 'middle', crop: 'tomato', setOut: '2027-05-29' },
  ],
  coverStands: [{ id: 'mustard', bed: 'wall', cover: 'mustard', sow: '2027-08-05' }],
});

const keys = ({ tasks }: Plan) => tasks.map(({ key }) => key);

describe('a disease found', () => {
  it('brings its tasks, drops the cover and reopens the plan, all from one entry', async () => {
    const { steward, garden } = await household(file);
    const before = (await steward.view(garden)).plan;
    expect(keys(before).some((key) => key.includes('stand:mustard'))).toBe(true);
    const after = await steward.report(garden, clubroot, 'ada');
    expect(keys(after)).toEqual(
      expect.arrayContaining([
        'disease-remains/planting:cabbages',
        'plan-again/bed:wall/2027',
        'plan-again/bed:wall/2028',
        'pile-disease/pile:spring-pile/planting:cabbages',
      ]),
    );
    expect(keys(after).some((key) => key.includes('stand:mustard'))).toBe(false);
    expect((await steward.view(garden)).ledger).toHaveLength(2);
  });

  it('is taken back as one: every day, text, reason and state is as it was', async () => {
    const { steward, garden, clock } = await household(file);
    const before = (await steward.view(garden)).plan;
    later(clock);
    await steward.report(garden, clubroot, 'ada');
    later(clock);
    expect(told(await steward.undo(garden, undefined, 'ada'))).toEqual(told(before));
  });

  it('leaves what was done about it in the ledger when it is taken back', async () => {
    const { steward, garden } = await household(file);
    await steward.report(garden, clubroot, 'ada');
    await steward.markDone(garden, ['disease-remains/planting:cabbages'], NORTH_TODAY, 'ada');
    const preview = await steward.previewUndo(garden, 2);
    expect(preview?.leaning.map(({ entry }) => entry)).toEqual([3]);
    const after = await steward.undo(garden, 2, 'ada');
    expect(after.tasks.filter(({ key }) => key.startsWith('disease-remains')).map(({ state }) => state)).toEqual([
      'done',
    ]);
    expect(keys(after).some((key) => key.includes('stand:mustard'))).toBe(true);
  });

  it('works the same in the south, where the year turns in June', async () => {
    const { steward, garden } = await household(southernFile(), `${SOUTH_TODAY}T02:00:00.000Z`);
    const before = (await steward.view(garden)).plan;
    const report: Report = { ...clubroot, bedId: 'upper', cropId: 'snap-bean', disease: 'root rot', on: SOUTH_TODAY };
    const after = await steward.report(garden, report, 'ada');
    expect(keys(after)).toContain('plan-again/bed:upper/2027');
    expect(told(await steward.undo(garden, undefined, 'ada'))).toEqual(told(before));
  });
});
