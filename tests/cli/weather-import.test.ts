import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { openedIn } from './household.ts';
import { inventedRecord } from './invented-record.ts';
import { SMALL_GARDEN, withGarden, withGardenFile } from './loamtide.ts';

const HEADER = 'date,tmin_c,tmax_c,prcp_mm,snow_mm,snwd_mm';

/** A garden planned by a record of 2005 to 2025, and a file of new days beside it. */
async function withNewDays(...rows: string[]) {
  const { folder, loamtide } = withGardenFile(SMALL_GARDEN.replace(/frostDates: .*/, 'dailyRecord: weather.csv'));
  writeFileSync(join(folder, 'weather.csv'), inventedRecord('2005-01-01', '2025-12-31'));
  expect((await loamtide('garden', 'import', 'garden.yaml')).code).toBe(0);
  writeFileSync(join(folder, 'new.csv'), `${[HEADER, ...rows].join('\n')}\n`);
  const record = () => openedIn(folder, ({ store }) => store.weatherRecord('hollow-lane'));
  return { folder, loamtide, record };
}

const GOOD = ['2025-12-31,-9.0,1.0,0,0,0', '2026-01-01,-8.0,2.0,0,0,0', '2026-01-01,-7.0,3.0,0,0,0'];
const BAD = '2026-01-02,cold,3.0,0,0,0';

describe('weather import', () => {
  test('adds days to the record, reports what gave way and what was replaced', async () => {
    const { loamtide, record } = await withNewDays(...GOOD);
    const { code, out } = await loamtide('weather', 'import', 'new.csv');
    expect(code).toBe(0);
    expect(out.trimEnd().split('\n')).toEqual([
      '2 days brought in from new.csv.',
      '1 row gave way to a later row of the same date.',
      '1 day of the record replaced.',
      'The record now holds 7671 days, 2005-01-01 to 2026-01-01.',
    ]);
    const held = await record();
    expect(held?.days.slice(-2)).toMatchObject([
      { day: '2025-12-31', tminC: -9 },
      { day: '2026-01-01', tminC: -7 },
    ]);
    expect(held?.origin).toContain('Daily record weather.csv');
    expect(held?.origin).toContain('Daily record new.csv');
  });

  test('a row that measures nothing takes nothing away from the record', async () => {
    const { loamtide, record } = await withNewDays('2025-12-31,,,,,');
    const before = await record();
    const { code, out } = await loamtide('weather', 'import', 'new.csv');
    expect([code, out]).toEqual([0, expect.not.stringContaining('replaced')]);
    expect((await record())?.days).toEqual(before?.days);
  });

  test('with one bad row writes nothing and names the line', async () => {
    const { loamtide, record } = await withNewDays(...GOOD, BAD);
    const before = await record();
    const { code, out, err } = await loamtide('weather', 'import', 'new.csv');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('new.csv, line 5: tmin_c is "cold". Give degrees Celsius between -90 and 60, such as -3.3.');
    expect(await record()).toEqual(before);
  });

  test('with --keep-good brings the good rows in and says which it left out', async () => {
    const { loamtide, record } = await withNewDays(...GOOD, BAD);
    const { code, out } = await loamtide('weather', 'import', 'new.csv', '--keep-good');
    expect(code).toBe(0);
    expect(out).toContain('Left out:\n  new.csv, line 5: tmin_c is "cold".');
    expect((await record())?.days.at(-1)?.day).toBe('2026-01-01');
  });

  test('with no good row left is refused, --keep-good or not', async () => {
    const { loamtide } = await withNewDays(BAD);
    expect((await loamtide('weather', 'import', 'new.csv', '--keep-good')).code).toBe(2);
    const { folder, loamtide: other } = await withNewDays();
    const { code, err } = await other('weather', 'import', join(folder, 'new.csv'));
    expect(code).toBe(2);
    expect(err).toContain('holds no day.');
  });

  test('of very many bad rows tells the first fifty and how many more', async () => {
    const { loamtide } = await withNewDays(...Array.from({ length: 60 }, () => BAD));
    const { err } = await loamtide('weather', 'import', 'new.csv');
    expect(err.trimEnd().split('\n')).toHaveLength(52);
    expect(err).toContain('60 problems');
    expect(err).toContain('new.csv: has 10 more problems.');
  });

  test('with --replace puts the file in place of the record, unless it is too short to plan by', async () => {
    const { folder, loamtide, record } = await withNewDays(...GOOD);
    const short = await loamtide('weather', 'import', 'new.csv', '--replace');
    expect(short).toMatchObject({ code: 2 });
    expect((await record())?.days).toHaveLength(7670);
    writeFileSync(join(folder, 'other.csv'), inventedRecord('2010-01-01', '2026-12-31'));
    expect((await loamtide('weather', 'import', 'other.csv', '--replace')).code).toBe(0);
    expect((await record())?.days[0]?.day).toBe('2010-01-01');
  });

  test('keeps out of the odds the seasons that were kept out before', async () => {
    const { folder, loamtide, record } = await withNewDays(...GOOD);
    await openedIn(folder, async ({ store }) => {
      const held = await store.weatherRecord('hollow-lane');
      if (held) await store.replaceWeatherRecord('hollow-lane', { ...held, leftOut: [2012] });
    });
    await loamtide('weather', 'import', 'new.csv');
    expect((await record())?.leftOut).toEqual([2012]);
  });

  test('for a garden that plans by something else is kept, and said to be unused', async () => {
    const { folder, loamtide } = await withGarden();
    writeFileSync(join(folder, 'new.csv'), `${[HEADER, ...GOOD].join('\n')}\n`);
    const { code, out } = await loamtide('weather', 'import', 'new.csv');
    expect(code).toBe(0);
    expect(out).toContain('the garden file takes its climate from elsewhere');
  });
});
