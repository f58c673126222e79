import { describe, expect, it } from 'vitest';
import type { Store } from '../../src/store/store.ts';
import { NORTH_TODAY, northernFile } from './gardens.ts';
import { emptyHousehold, household, later, openTask } from './household.ts';

/** All that a store holds of a garden. */
async function held(store: Store, gardenId: string) {
  const gardens = await store.gardenIds();
  if (!gardens.includes(gardenId)) return { gardens };
  return {
    gardens,
    version: await store.factsVersion(gardenId),
    ledger: await store.ledger(gardenId),
    plan: await store.plan(gardenId),
    record: await store.weatherRecord(gardenId),
  };
}

describe('a garden file that no plan can be made from', () => {
  it.each([
    ['a record that was not brought along', { dailyRecord: 'weather.csv' }, '"weather.csv" has not been brought in.'],
    ['a station that is not in the table', { station: 'XX000000000' }, '"XX000000000" is not in the built-in table.'],
    ['frost dates in the wrong half of the year', { frostDates: { lastSpring: '10-10', firstAutumn: '05-02' } }, ''],
  ])('is refused whole: %s', async (_, climate, words) => {
    const { steward, store } = await emptyHousehold();
    const bring = steward.importGarden({ file: northernFile({ climate }), prefer: 'reported' }, 'ada');
    await expect(bring).rejects.toMatchObject({ name: 'InputRefused', message: expect.stringContaining(words) });
    expect(await held(store, 'hollow-lane')).toEqual({ gardens: [] });
  });

  it('leaves a garden that is there just as it was', async () => {
    const { steward, store, garden } = await household();
    const before = await held(store, garden);
    const file = northernFile({ climate: { dailyRecord: 'weather.csv' } });
    const short = { origin: 'Too short.', leftOut: [], days: [{ day: '2026-01-01', tminC: -5, tmaxC: 2 }] };
    await expect(steward.importGarden({ file, prefer: 'reported' }, 'ada')).rejects.toThrow('weather.csv');
    await expect(steward.importGarden({ file, prefer: 'reported', record: short }, 'ada')).rejects.toThrow('too short');
    expect(await held(store, garden)).toEqual(before);
  });
});

describe('a new file of a garden that is there', () => {
  it('keeps what was reported, unless the file is to win', async () => {
    const { steward, garden, clock } = await household();
    const { key } = openTask((await steward.view(garden)).plan, 'clear-bed');
    await steward.markDone(garden, [key], NORTH_TODAY, 'ada');
    later(clock);
    const kept = await steward.importGarden({ file: northernFile(), prefer: 'reported' }, 'ada');
    expect(kept.tasks.find((task) => task.key === key)?.state).toBe('done');
    later(clock);
    const anew = await steward.importGarden({ file: northernFile(), prefer: 'file' }, 'ada');
    expect(anew.tasks.find((task) => task.key === key)?.state).toBe('open');
  });

  it('is the file that is handed out again', async () => {
    const { steward, garden } = await household();
    const file = northernFile({ plantings: [] });
    await steward.importGarden({ file, prefer: 'reported' }, 'ada');
    expect(await steward.importedFile(garden)).toEqual(file);
    await steward.undo(garden, 2, 'ada');
    expect(await steward.importedFile(garden)).toEqual(northernFile());
  });

  it('gives the same plan whatever the order of its beds and plantings', async () => {
    const { steward, garden } = await household();
    const { entries, tasks } = (await steward.view(garden)).plan;
    const plain = northernFile();
    const turned = {
      ...plain,
      beds: [...plain.beds].reverse(),
      plantings: [...plain.plantings].reverse(),
      coverStands: [...plain.coverStands].reverse(),
      piles: [...plain.piles].reverse(),
    };
    const plan = await steward.importGarden({ file: turned, prefer: 'reported' }, 'ada');
    expect(JSON.stringify([plan.entries, plan.tasks])).toBe(JSON.stringify([entries, tasks]));
    expect(plan.changes).toEqual([]);
  });

  it('moves to the day of another zone with it', async () => {
    const { steward, clock } = await household();
    clock.moment = '2027-04-21T03:00:00.000Z';
    const { garden } = northernFile();
    const file = northernFile({ garden: { ...garden, timeZone: 'Europe/Helsinki' } });
    expect((await steward.importGarden({ file, prefer: 'reported' }, 'ada')).today).toBe('2027-04-21');
  });
});

describe('a new garden that is brought in twice at once', () => {
  it('is brought in once, and the other is told so', async () => {
    const { steward } = await emptyHousehold();
    const bring = () => steward.importGarden({ file: northernFile(), prefer: 'reported' }, 'ada');
    const ended = await Promise.allSettled([bring(), bring()]);
    expect(ended.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    const refused = ended.find((each) => each.status === 'rejected');
    expect(refused?.reason).toMatchObject({
      name: 'InputRefused',
      message: expect.stringContaining('at the same time'),
    });
  });
});
