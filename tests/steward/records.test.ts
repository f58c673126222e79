import { describe, expect, it } from 'vitest';
import { readWeatherFile } from '../../src/garden/weather-file.ts';
import { createSteward } from '../../src/steward/create-steward.ts';
import type { Store } from '../../src/store/store.ts';
import { inventedRecord } from '../cli/invented-record.ts';
import { household } from './household.ts';

const change = (from = '2005-01-01', to = '2026-12-31') => ({
  file: 'hill.csv',
  record: { origin: 'The hill.', leftOut: [2012], days: readWeatherFile(inventedRecord(from, to)).rows },
});

describe('a record put behind a garden that stood on frost dates', () => {
  it('does what its preview said, and says how far it is', async () => {
    const { steward, garden } = await household();
    const { before, after, climates } = await steward.previewRecord(garden, change());
    expect([climates.before.basis, climates.after.basis]).toEqual(['frost-dates', 'daily-record']);
    expect((await steward.view(garden)).plan).toEqual(before);
    const told: string[] = [];
    const plan = await steward.takeRecord(garden, change(), 'ada', async (words) => {
      told.push(words);
    });
    const days = (each: typeof plan) => each.tasks.map(({ key, day, window }) => ({ key, day, window }));
    expect(days(plan)).toEqual(days(after));
    expect(days(plan)).not.toEqual(days(before));
    expect(told).toEqual(['Working out the climate', 'Keeping 8035 days', 'Making the plan']);
    expect((await steward.fileNow(garden)).climate).toEqual({ dailyRecord: 'hill.csv' });
    expect((await steward.view(garden)).climate.seasons.map(({ season }) => season)).not.toContain(2012);
  });

  it('is kept together with its choice of climate, or neither is', async () => {
    const { store, clock, garden } = await household();
    const failing: Store = {
      ...store,
      transaction: (work) =>
        store.transaction((shelves) =>
          work({
            ...shelves,
            replaceWeatherRecord: async () => {
              throw new Error('The disk is full.');
            },
          }),
        ),
    };
    const steward = createSteward({ store: failing, clock });
    const before = await steward.view(garden);
    await expect(steward.takeRecord(garden, change(), 'ada')).rejects.toThrow('The disk is full.');
    expect((await steward.view(garden)).ledger).toEqual(before.ledger);
    expect(await store.weatherRecord(garden)).toBeUndefined();
  });

  it('is refused where it is too short to plan by, and nothing is kept', async () => {
    const { steward, garden } = await household();
    const short = change('2020-01-01', '2024-12-31');
    await expect(steward.previewRecord(garden, short)).rejects.toThrow('usable seasons; 10 are needed');
    await expect(steward.takeRecord(garden, short, 'ada')).rejects.toThrow('usable seasons; 10 are needed');
    expect(await steward.weatherRecord(garden)).toBeUndefined();
    expect((await steward.view(garden)).garden.climate.kind).toBe('frost-dates');
  });
});

describe('a record put in the place of another', () => {
  it('leaves the ledger as it is, keeps the name the file has for it, and the other as the former one', async () => {
    const { steward, garden } = await household();
    await steward.takeRecord(garden, change(), 'ada');
    const { ledger } = await steward.view(garden);
    await steward.takeRecord(garden, { ...change('2010-01-01'), file: 'other.csv' }, 'ada');
    const view = await steward.view(garden);
    expect(view.ledger).toEqual(ledger);
    expect(view.garden.climate).toEqual({ kind: 'daily-record', file: 'hill.csv' });
    expect((await steward.formerRecord(garden))?.days).toHaveLength(8035);
  });

  it('that is the very same pushes no former one out', async () => {
    const { steward, garden } = await household();
    await steward.takeRecord(garden, change(), 'ada');
    await steward.takeRecord(garden, change('2010-01-01'), 'ada');
    await steward.takeRecord(garden, change('2010-01-01'), 'ada');
    expect((await steward.formerRecord(garden))?.days).toHaveLength(8035);
  });

  it('that was brought in again as a weather record pushes none out either', async () => {
    const { steward, garden } = await household();
    await steward.takeRecord(garden, change(), 'ada');
    const { record } = change('2010-01-01');
    await steward.importWeather(garden, record);
    await steward.importWeather(garden, { ...record, days: [...record.days].reverse() });
    expect((await steward.formerRecord(garden))?.days).toHaveLength(8035);
  });

  it('is refused where it was laid over one that is not there any more', async () => {
    const { steward, garden } = await household();
    const first = { ...change(), laidOver: { held: undefined } };
    const second = { ...change('2010-01-01'), laidOver: { held: undefined } };
    await steward.takeRecord(garden, first, 'ada');
    await expect(steward.takeRecord(garden, second, 'bo')).rejects.toThrow('its new days would be lost');
    expect((await steward.weatherRecord(garden))?.days).toHaveLength(8035);
    const held = await steward.weatherRecord(garden);
    await steward.takeRecord(garden, { ...second, laidOver: { held } }, 'bo');
    expect((await steward.weatherRecord(garden))?.days).toHaveLength(second.record.days.length);
  });
});
