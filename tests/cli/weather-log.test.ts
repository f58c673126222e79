import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { openedIn } from './household.ts';
import { withGarden } from './loamtide.ts';

async function withFile(...lines: string[]) {
  const { folder, loamtide } = await withGarden();
  const write = (...text: string[]) => writeFileSync(join(folder, 'days.csv'), `${text.join('\n')}\n`);
  write(...lines);
  const log = () => openedIn(folder, async ({ steward }) => (await steward.view('hollow-lane')).garden.weather);
  const entries = () => openedIn(folder, async ({ steward }) => (await steward.view('hollow-lane')).ledger.length);
  return { loamtide, write, log, entries };
}

const HEADER = 'date,tmin_c,prcp_mm,watering_mm';

describe('weather log', () => {
  test('brings days in as one entry: a cell is empty where nothing was measured, a row of nothing is passed over', async () => {
    const { loamtide, log, entries } = await withFile(
      HEADER,
      '2027-04-16,-2.2,,',
      '2027-04-17,,4.6,8',
      '2027-04-18,,,',
    );
    const { code, out } = await loamtide('weather', 'log', 'days.csv');
    expect(code).toBe(0);
    expect(out).toContain('2 days logged from days.csv, 2027-04-16 to 2027-04-17.');
    expect(await log()).toEqual([
      { day: '2027-04-16', kind: 'observed', tminC: -2.2 },
      { day: '2027-04-17', kind: 'observed', rainMm: 4.6, wateringMm: 8 },
    ]);
    expect(await entries()).toBe(2);
  });

  test('says what gave way in the file, and what stood in the log before', async () => {
    const { loamtide, log, write } = await withFile(HEADER, '2027-04-16,-2.2,1,');
    await loamtide('weather', 'log', 'days.csv');
    write(HEADER, '2027-04-16,-5,,', '2027-04-16,-4,,');
    const { out } = await loamtide('weather', 'log', 'days.csv');
    expect(out).toContain('1 row gave way to a later row of the same date.');
    expect(out).toContain('1 day had been logged before: what the file says of it replaces that.');
    expect(await log()).toEqual([{ day: '2027-04-16', kind: 'observed', tminC: -4, rainMm: 1 }]);
  });

  test('refuses the whole file for a bad row, with its line, and keeps the good ones only when asked', async () => {
    const { loamtide, log } = await withFile(
      'date,tmin_c,tmax_c,snow_mm',
      '2027-04-16,5,1,',
      '2027-04-17,,,3000',
      '2027-04-18,1,9,',
    );
    const { code, err } = await loamtide('weather', 'log', 'days.csv');
    expect(code).toBe(2);
    expect(err).toContain("days.csv, line 2: The day's highest, 1 °C, is below its lowest, 5 °C.");
    expect(err).toContain('days.csv, line 3: snow_mm is "3000".');
    expect(await log()).toEqual([]);
    const kept = await loamtide('weather', 'log', 'days.csv', '--keep-good');
    expect(kept.out).toContain('Left out:\n  days.csv, line 2');
    expect(await log()).toEqual([{ day: '2027-04-18', kind: 'observed', tminC: 1, tmaxC: 9 }]);
  });

  test('tells days to come from days seen: a forecast is brought in with --expected', async () => {
    const { loamtide, log } = await withFile(HEADER, '2027-04-18,1,,', '2027-04-20,-1,,');
    const { code, err } = await loamtide('weather', 'log', 'days.csv');
    expect([code, err]).toEqual([
      2,
      expect.stringContaining('2027-04-20: 1 day after 2027-04-18 cannot be logged. A forecast'),
    ]);
    expect((await loamtide('weather', 'log', 'days.csv', '--expected')).code).toBe(0);
    expect((await log()).map(({ day, kind }) => [day, kind])).toEqual([
      ['2027-04-18', 'expected'],
      ['2027-04-20', 'expected'],
    ]);
  });

  test('takes a station file of GHCN-Daily, its old days left for the record', async () => {
    const ghcn = (date: string, element: string, value: number, quality = '') =>
      `USW00014839,${date},${element},${value},,${quality},W,2400`;
    const { loamtide, log } = await withFile(
      ghcn('20180415', 'TMIN', -17),
      ghcn('20270417', 'TMIN', -6),
      ghcn('20270417', 'TMAX', 94, 'I'),
      ghcn('20270418', 'SNWD', 51),
    );
    const refused = await loamtide('weather', 'log', 'days.csv');
    expect(refused.err).toContain('older ones go into the record: weather import.');
    const { out } = await loamtide('weather', 'log', 'days.csv', '--keep-good');
    expect(out).toContain('1 value left out: the record itself marks it as doubtful.');
    expect(await log()).toEqual([
      { day: '2027-04-17', kind: 'observed', tminC: -0.6 },
      { day: '2027-04-18', kind: 'observed', snowDepthMm: 51 },
    ]);
  });

  test('refuses a file that measures nothing', async () => {
    const { loamtide } = await withFile(HEADER, '2027-04-16,,,');
    const { code, err } = await loamtide('weather', 'log', 'days.csv');
    expect([code, err]).toEqual([2, expect.stringContaining('measures nothing.')]);
  });
});
