import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DailyWeather } from '../../src/garden/weather.ts';
import { weatherCsv } from '../../src/garden/weather-csv-text.ts';
import { readWeatherFile, weatherFilePieces } from '../../src/garden/weather-file.ts';
import { withoutAbsent } from '../../src/garden/without-absent.ts';
import { addDays, daysBetween } from '../../src/measures/days.ts';

const HEADER = 'date,tmin_c,tmax_c,prcp_mm,snow_mm,snwd_mm';
const file = (...lines: string[]): string => [HEADER, ...lines].join('\n');
const whatOf = (text: string): string[] => readWeatherFile(text).problems.map(({ where, what }) => `${where}: ${what}`);

describe('a weather file', () => {
  it('reads a row with every figure', () => {
    expect(readWeatherFile(file('2018-04-15,-1.7,0.6,17.3,81,51'))).toEqual({
      rows: [{ day: '2018-04-15', tminC: -1.7, tmaxC: 0.6, rainMm: 17.3, newSnowMm: 81, snowDepthMm: 51 }],
      duplicates: 0,
      doubted: 0,
      problems: [],
    });
  });

  it('keeps an empty cell apart from a nought', () => {
    expect(readWeatherFile(file('2018-04-15,,0,0.0,,')).rows).toEqual([{ day: '2018-04-15', tmaxC: 0, rainMm: 0 }]);
  });

  it('takes columns in any order, and leaves out those that are not there', () => {
    const { rows, problems } = readWeatherFile('tmax_c,date,tmin_c\n0.6,2018-04-15,-1.7\n');
    expect(problems).toEqual([]);
    expect(rows).toEqual([{ day: '2018-04-15', tminC: -1.7, tmaxC: 0.6 }]);
  });

  it('takes what was watered, where that is a column', () => {
    const { rows, problems } = readWeatherFile('date,tmin_c,tmax_c,watering_mm\n2018-06-15,12,27,9.5\n');
    expect([rows, problems]).toEqual([[{ day: '2018-06-15', tminC: 12, tmaxC: 27, wateringMm: 9.5 }], []]);
  });

  it('may hold a single column beside the date where it is read for a log', () => {
    const text = 'date,snwd_mm\n2018-04-18,120\n2018-04-19,\n';
    expect(readWeatherFile(text, 'log')).toMatchObject({
      rows: [{ day: '2018-04-18', snowDepthMm: 120 }, { day: '2018-04-19' }],
      problems: [],
    });
    expect(readWeatherFile(text, 'record').problems).toHaveLength(2);
  });

  it('takes capitals, spaces, blank lines, a byte order mark and the line ends of any system', () => {
    const { rows, problems } = readWeatherFile('\ufeffDate, Tmin_C, Tmax_C\r\n\r\n2018-04-15, -1.7, 0.6\r\n');
    expect(problems).toEqual([]);
    expect(rows).toEqual([{ day: '2018-04-15', tminC: -1.7, tmaxC: 0.6 }]);
  });

  it('puts the days in order', () => {
    const { rows } = readWeatherFile(file('2018-04-16,1,2,,,', '2018-04-15,1,2,,,'));
    expect(rows.map(({ day }) => day)).toEqual(['2018-04-15', '2018-04-16']);
  });

  it('lets the later row of a date win, whole, and counts the one that gave way', () => {
    const { rows, duplicates } = readWeatherFile(file('2018-04-15,-1.7,0.6,17.3,81,51', '2018-04-15,-2,1,,,'));
    expect(rows).toEqual([{ day: '2018-04-15', tminC: -2, tmaxC: 1 }]);
    expect(duplicates).toBe(1);
  });

  it('keeps the earlier row of a date when the later one is impossible', () => {
    const { rows, duplicates, problems } = readWeatherFile(file('2018-04-15,-2,1,,,', '2018-04-15,5,1,,,'));
    expect(rows).toEqual([{ day: '2018-04-15', tminC: -2, tmaxC: 1 }]);
    expect([duplicates, problems.length]).toEqual([0, 1]);
  });

  it('takes the leap day in leap years only', () => {
    const { rows, problems } = readWeatherFile(file('2016-02-29,1,2,,,', '2018-02-29,1,2,,,'));
    expect(rows.map(({ day }) => day)).toEqual(['2016-02-29']);
    expect(problems.map(({ where }) => where)).toEqual(['line 3']);
  });
});

describe('an impossible row', () => {
  it.each([
    ['2018-04-15,5.0,4.9,,,', "line 2: The day's highest, 4.9 °C, is below its lowest, 5 °C."],
    ['2018-04-15,-90.1,0,,,', 'line 2: tmin_c is "-90.1".'],
    ['2018-04-15,50,68,,,', 'line 2: tmax_c is "68".'],
    ['2018-04-15,1,2,-0.1,,', 'line 2: prcp_mm is "-0.1".'],
    ['2018-04-15,1,2,,3000,', 'line 2: snow_mm is "3000".'],
    ['2018-04-15,1,2,,,-1', 'line 2: snwd_mm is "-1".'],
    ['2018-04-15,M,2,,,', 'line 2: tmin_c is "M".'],
    ['2018-04-15,1e1,20,,,', 'line 2: tmin_c is "1e1".'],
    ['2018-04-31,1,2,,,', 'line 2: "2018-04-31" is not a real date.'],
    ['15.4.2018,1,2,,,', 'line 2: "15.4.2018" is not a real date.'],
    ['2018-04-15,1,2', 'line 2: 3 cells stand under 6 columns.'],
    ['2018-04-15,1,2,,,"0', 'line 2: The quotes on this line do not match.'],
  ])('%s is reported and left out', (row, problem) => {
    expect(whatOf(file(row))).toEqual([problem]);
    expect(readWeatherFile(file(row)).rows).toEqual([]);
  });

  it('is reported with everything wrong in it, beside every other', () => {
    expect(whatOf(file('2018-13-01,99,2,,,', '', '2018-04-15,1,2,,,', '2018-04-16,1,2,-3,,'))).toEqual([
      'line 2: "2018-13-01" is not a real date.',
      'line 2: tmin_c is "99".',
      'line 5: prcp_mm is "-3".',
    ]);
  });

  it('lets equal extremes pass', () => {
    expect(whatOf(file('2018-04-15,3.3,3.3,,,'))).toEqual([]);
  });
});

describe('a header', () => {
  it('must be there', () => {
    expect(whatOf('2018-04-15,-1.7,0.6,17.3,81,51\n')).toEqual(['line 1: There is no header.']);
    expect(whatOf('')).toEqual(['line 1: There is no header.']);
  });

  it('has the nearest column suggested for one it does not know', () => {
    const [problem] = readWeatherFile('date,tmin_c,tmax_c,precip_mm\n').problems;
    expect(problem).toEqual({
      where: 'line 1',
      what: '"precip_mm" is not a column this file knows.',
      mend: expect.stringContaining('prcp_mm'),
    });
  });

  it('is told of every column it lacks or names twice', () => {
    expect(whatOf('date,tmin_c,tmin_c\n')).toEqual([
      'line 1: The column tmin_c stands twice.',
      'line 1: The column tmax_c is missing.',
    ]);
  });
});

describe('whole records', () => {
  it('reads back what was written, whatever the order and the gaps', () => {
    const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10);
    const weather = fc.record(
      {
        day: fc.integer({ min: 0, max: 4000 }).map((n) => addDays('2015-01-01', n)),
        tminC: tenths(-60, 0),
        tmaxC: tenths(0, 50),
        rainMm: tenths(0, 300),
        newSnowMm: fc.nat(900),
        snowDepthMm: fc.nat(3000),
      },
      { requiredKeys: ['day'] },
    );
    fc.assert(
      fc.property(fc.uniqueArray(weather, { selector: ({ day }) => day }), (days) => {
        const { rows, duplicates, problems } = readWeatherFile(file(...days.map(lineOf)));
        expect([duplicates, problems]).toEqual([0, []]);
        expect(rows).toEqual([...days].sort((a, b) => (a.day < b.day ? -1 : 1)));
      }),
    );
  });

  it('takes the record behind the demo garden without a word', () => {
    const path = new URL('../../demo-data/weather/milwaukee-1989-2021.csv.gz', import.meta.url);
    const { rows, duplicates, problems } = readWeatherFile(gunzipSync(readFileSync(path)).toString('utf8'));
    expect([duplicates, problems]).toEqual([0, []]);
    const [first, last] = [rows[0]?.day ?? '', rows.at(-1)?.day ?? ''];
    expect([first, last]).toEqual(['1988-07-01', '2021-12-31']);
    expect(rows).toHaveLength(daysBetween(first, last) + 1);
  });
});

function lineOf({ day, tminC, tmaxC, rainMm, newSnowMm, snowDepthMm }: DailyWeather): string {
  return [day, tminC, tmaxC, rainMm, newSnowMm, snowDepthMm].join(',');
}

describe('a long file', () => {
  const days = (count: number): string[] =>
    Array.from({ length: count }, (_, at) => `${addDays('1990-01-01', at)},${(at % 30) - 5},${(at % 30) + 5},0,0,0`);
  const dly = (count: number): string => {
    const line = (at: number) =>
      `USC00000001${1900 + (Math.floor(at / 12) % 300)}${String((at % 12) + 1).padStart(2, '0')}TMIN`;
    return Array.from({ length: count }, (_, at) => `${line(at)}${'   12   '.repeat(28)}`).join('\n');
  };

  it.each([
    ['CSV', file(...days(8999))],
    ['GHCN-Daily', dly(9000)],
  ])('of %s is read some lines at a time, which come to what is read at once', (_, text) => {
    const pieces = weatherFilePieces(text, 'record');
    const told: number[] = [];
    for (;;) {
      const piece = pieces.next();
      if (piece.done === true) {
        expect(piece.value).toEqual(readWeatherFile(text));
        break;
      }
      told.push(piece.value.lines);
      expect(piece.value.of).toBe(9000);
    }
    expect(told).toEqual([0, 4000, 8000]);
  });
});

describe('a record written as a file', () => {
  it('is the same record when it is read again, whatever was measured', () => {
    const tenths = (min: number, max: number) =>
      fc.option(
        fc.integer({ min: min * 10, max: max * 10 }).map((value) => value / 10),
        { nil: undefined },
      );
    const row = fc.record({
      at: fc.nat(20_000),
      tminC: tenths(-40, 0),
      tmaxC: tenths(0, 40),
      rainMm: tenths(0, 200),
      newSnowMm: tenths(0, 500),
      snowDepthMm: tenths(0, 1000),
    });
    fc.assert(
      fc.property(fc.uniqueArray(row, { selector: ({ at }) => at, minLength: 1, maxLength: 40 }), (rows) => {
        const record = [...rows]
          .sort((a, b) => a.at - b.at)
          .map(({ at, ...measured }) => withoutAbsent({ day: addDays('1950-01-01', at), ...measured }) as DailyWeather);
        expect(readWeatherFile(weatherCsv(record))).toEqual({ rows: record, duplicates: 0, doubted: 0, problems: [] });
      }),
    );
  });

  it('has no column that nobody measured, but those a record needs', () => {
    expect(weatherCsv([{ day: '2026-01-01', tmaxC: 2, snowDepthMm: 0 }])).toBe(
      'date,tmin_c,tmax_c,snwd_mm\n2026-01-01,,2,0\n',
    );
  });
});
