/**
 * Weather files in every form that is taken, and what is wrong in each way a file can be.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { weatherCsv } from '../../src/garden/weather-csv-text.ts';
import { readWeatherFile } from '../../src/garden/weather-file.ts';
import { inventedRecord } from '../cli/invented-record.ts';
import { loamtideIn, SMALL_GARDEN, tempFolder } from '../cli/loamtide.ts';
import { sampleApp } from '../web/sample-garden.ts';
import { amissIn } from './amiss.ts';
import { ODD_TEXTS } from './odd-values.ts';
import { csv, day, dly, HEADER, REFUSED } from './refused-weather-files.ts';

test.each(Object.entries(REFUSED))('of a file with %s nothing is used, and it is said why', (name, [text, says]) => {
  const { rows, problems } = readWeatherFile(text);
  if (name === 'days of a station that do not exist') expect(rows.every((row) => row.day <= '2027-01-31')).toBe(true);
  else expect(rows).toEqual([]);
  const told = problems.map(({ where, what, mend }) => `${where}: ${what} ${mend}`).join('\n');
  if (problems.length > 0) expect(told).toMatch(says);
  expect(problems.length > 0 || ['a header alone', 'a station without a day'].includes(name)).toBe(true);
});

test('duplicates, leap days and missing marks of a good file are taken as they are meant', () => {
  const twice = readWeatherFile(csv('2024-02-29,1,2,0,0,0', '2024-02-29,3,4,0,0,0'));
  expect(twice).toMatchObject({ rows: [{ day: '2024-02-29', tminC: 3 }], duplicates: 1, problems: [] });
  const marked = readWeatherFile(dly('TMIN', day('-9999') + day('10') + day('10', ' X ')));
  expect(marked).toMatchObject({ rows: [{ day: '2027-01-02', tminC: 1 }], doubted: 1, problems: [] });
});

test('more days than any place has are refused, and of very many problems the first are kept', () => {
  const many = Array.from({ length: 5000 }, (_, at) => `2027-13-${at},1,2,0,0,0`);
  const { problems, moreProblems } = readWeatherFile(csv(...many));
  expect([problems.length, moreProblems]).toEqual([1000, 4000]);
  const years = Array.from({ length: 5000 }, (_, year) => String(year).padStart(4, '0'));
  const days = ['01', '02', '03', '04', '05', '06', '07', '08', '09', '10', '11', '12'].flatMap((month) =>
    ['01', '07', '14'].flatMap((on) => years.map((year) => `${year}-${month}-${on},1,2,0,0,0`)),
  );
  const long = readWeatherFile([HEADER, ...days].join('\n'));
  expect(long.rows).toEqual([]);
  expect(long.problems[0]?.what).toBe('More than 146400 days stand up to here.');
}, 120_000);

test('a good file with something odd in it is read line by line, never more', () => {
  const rows = inventedRecord('2026-01-01', '2026-02-10').split('\n');
  const change = fc.record({ at: fc.nat(rows.length - 1), cell: fc.nat(5), odd: fc.constantFrom(...ODD_TEXTS) });
  fc.assert(
    fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), fc.constantFrom('record', 'log'), (changes, use) => {
      const now = [...rows];
      for (const { at, cell, odd } of changes)
        now[at] = (now[at] ?? '')
          .split(',')
          .map((held, place) => (place === cell ? odd : held))
          .join(',');
      const { rows: days, problems } = readWeatherFile(now.join('\n'), use as 'record' | 'log');
      // What was read can be written and read again.
      expect(readWeatherFile(weatherCsv(days), 'record').rows).toEqual(days);
      return problems.every(({ where, what, mend }) => where !== '' && what !== '' && mend !== '');
    }),
    { seed: 20270420, numRuns: 200 },
  );
});

test('the program refuses each with an exit code and a message, packed too', async () => {
  const folder = tempFolder();
  const loamtide = loamtideIn(folder);
  writeFileSync(join(folder, 'garden.yaml'), SMALL_GARDEN);
  expect((await loamtide('garden', 'import', 'garden.yaml')).code).toBe(0);
  const files: [string, Uint8Array, string?][] = Object.entries(REFUSED)
    .filter(([name]) => name !== 'days of a station that do not exist')
    .map(([name, [text]], at) => [
      `${name.replaceAll(' ', '-')}.csv`,
      at % 2 ? gzipSync(text) : Buffer.from(text),
      text,
    ]);
  files.push(['bomb.gz', gzipSync(Buffer.alloc(300 * 1024 * 1024))]);
  files.push(['cut-off.gz', gzipSync(csv('2027-01-01,1,2,0,0,0'.repeat(500))).subarray(0, 40)]);
  files.push(['noise.gz', Buffer.from([0x1f, 0x8b, 8, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9])]);
  files.push(['utf16.csv', Buffer.from(csv('2027-01-01,1,2,0,0,0'), 'utf16le')]);
  files.push(['year.csv', Buffer.from(inventedRecord('2026-01-01', '2026-06-30'))]);
  for (const [name, bytes, said = ''] of files) {
    writeFileSync(join(folder, name), bytes);
    const { code, err } = await loamtide('weather', 'import', name, ...(name === 'year.csv' ? ['--keep-good'] : []));
    // A record kept beside frost dates may be as short as it is.
    expect([name, code]).toEqual([name, name === 'year.csv' ? 0 : 2]);
    if (code === 0) continue;
    const seen = { status: 422, body: err, isPage: false, location: undefined };
    expect([name, ...amissIn(seen, said)]).toEqual([name]);
  }
  for (const name of ['nowhere.csv', '.', '\u0000', 'x'.repeat(400), 'year.csv/inside']) {
    const { code, err } = await loamtide('weather', 'import', name);
    expect([name, code, err.length > 20]).toEqual([name, 2, true]);
  }
}, 60_000);

test('the pages refuse them as well, with a form to send another', async () => {
  const { sendFile, reported, steward } = await sampleApp();
  const before = (await steward.view('mill-row')).ledger.length;
  for (const [name, [text]] of Object.entries(REFUSED)) {
    if (name === 'days of a station that do not exist') continue;
    for (const path of ['/gardens/mill-row/weather/record', '/gardens/mill-row/weather/days']) {
      const answer = await sendFile(path, { name: 'weather.csv', content: text });
      const body = await answer.text();
      expect([name, path, answer.status]).toEqual([name, path, 422]);
      expect([name, ...amissIn({ status: 422, body, isPage: true, location: undefined }, text)]).toEqual([name]);
    }
  }
  const packed = new Uint8Array(gzipSync(Buffer.alloc(100 * 1024 * 1024)));
  const bomb = await sendFile('/gardens/mill-row/weather/record', { name: 'bomb.gz', content: packed });
  expect([bomb.status, (await bomb.text()).includes('longer than 64 MiB unpacked')]).toEqual([422, true]);
  expect((await steward.view('mill-row')).ledger.length).toBe(before);
  expect(reported).toEqual([]);
}, 60_000);
