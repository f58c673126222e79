import { describe, expect, it } from 'vitest';
import { readWeatherFile } from '../../src/garden/weather-file.ts';

const STATION = 'USW00014839';

/** A `.dly` line of April 2018: the days given, each its value with its three flags, every other day missing. */
function dly(element: string, values: Readonly<Record<number, string>>): string {
  const days = Array.from({ length: 31 }, (_, at) => (values[at + 1] ?? '-9999').padStart(5).padEnd(8));
  return `${STATION}201804${element}${days.join('')}`;
}

/** One value with its flags as the fixed columns hold it. */
const flagged = (value: number, flags: string): string => `${String(value).padStart(5)}${flags}`;

/** What the record of Milwaukee says of 15 April 2018 (milwaukee-1960-2020.csv), in the units of GHCN-Daily. */
const MONTH = [
  dly('TMAX', { 15: '6', 16: '17' }),
  dly('TMIN', { 15: '-17', 16: '-33' }),
  dly('PRCP', { 15: '173', 16: '0' }),
  dly('SNOW', { 15: '81' }),
  dly('SNWD', { 15: '51' }),
  dly('AWND', { 15: '112' }),
];

const DAY = { day: '2018-04-15', tminC: -1.7, tmaxC: 0.6, rainMm: 17.3, newSnowMm: 81, snowDepthMm: 51 };
const NEXT = { day: '2018-04-16', tminC: -3.3, tmaxC: 1.7, rainMm: 0 };

describe('a .dly file of GHCN-Daily', () => {
  it('is read in its own units, and elements nobody needs are passed over', () => {
    expect(readWeatherFile(MONTH.join('\n'))).toEqual({ rows: [DAY, NEXT], duplicates: 0, doubted: 0, problems: [] });
  });

  it('may have lost the blanks at the ends of its lines', () => {
    const trimmed = MONTH.map((line) => `${line.trimEnd()}\r`).join('\n');
    expect(readWeatherFile(`\uFEFF${trimmed}`).rows).toEqual([DAY, NEXT]);
  });

  it('loses the values that failed a check or were presumed to be nought, and says how many', () => {
    const text = [
      dly('TMAX', { 15: flagged(6, '   ') }),
      dly('TMIN', { 15: flagged(-17, ' I ') }),
      dly('PRCP', { 15: flagged(0, 'P 0'), 16: flagged(0, 'T 0') }),
    ].join('\n');
    expect(readWeatherFile(text)).toEqual({
      rows: [
        { day: '2018-04-15', tmaxC: 0.6 },
        { day: '2018-04-16', rainMm: 0 },
      ],
      duplicates: 0,
      doubted: 2,
      problems: [],
    });
  });

  it('never fills a missing day: 31 April is only missing, not wrong', () => {
    expect(readWeatherFile(dly('TMAX', {}))).toEqual({ rows: [], duplicates: 0, doubted: 0, problems: [] });
  });

  it.each([
    [dly('SNOW', { 15: '3000' }), 'line 1: SNOW of 2018-04-15 is "3000".'],
    [dly('PRCP', { 15: '-5' }), 'line 1: PRCP of 2018-04-15 is "-5".'],
    [dly('TMAX', { 31: '60' }), 'line 1: "2018-04-31" is not a real date.'],
    [`${dly('TMAX', { 15: '6' })}\nwind from the lake`, 'line 2: "wind from the lake" is no line of GHCN-Daily.'],
    [
      `${dly('TMAX', { 15: '6' })}\n${dly('TMIN', { 15: '17' })}`,
      "line 2, 2018-04-15: The day's highest, 0.6 °C, is below its lowest, 1.7 °C.",
    ],
  ])('reports what is impossible with its line: %#', (text, problem) => {
    expect(readWeatherFile(text).problems.map(({ where, what }) => `${where}: ${what}`)).toEqual([problem]);
  });

  it('of two stations is refused whole', () => {
    const other = dly('TMAX', { 15: '6' }).replace(STATION, 'USC00241044');
    const { rows, problems } = readWeatherFile([...MONTH, other].join('\n'));
    expect(rows).toEqual([]);
    expect(problems).toMatchObject([{ where: 'line 7', what: expect.stringContaining('USC00241044') }]);
  });
});

describe('a by-station CSV of GHCN-Daily', () => {
  const CSV = [
    `${STATION},20180415,TMAX,6,,,W,2400`,
    `${STATION},20180415,TMIN,-17,,,W,2400`,
    `${STATION},20180415,PRCP,173,,,W,2400`,
    `${STATION},20180415,SNOW,81,,,W,2400`,
    `${STATION},20180415,SNWD,51,,,W,`,
    `${STATION},20180415,AWND,112,,,W,`,
    `${STATION},20180416,TMAX,17,,,W,2400`,
    `${STATION},20180416,TMIN,-33,,,W,2400`,
    `${STATION},20180416,PRCP,0,,,W,2400`,
  ];

  it('is read like the other form', () => {
    expect(readWeatherFile(CSV.join('\n'))).toEqual(readWeatherFile(MONTH.join('\n')));
  });

  it('may begin with a header, and may put its cells in quotes', () => {
    const quoted = CSV.map((line) => line.replace(/[^,]+/g, '"$&"'));
    const header = 'ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME';
    expect(readWeatherFile([header, ...quoted].join('\n'))).toEqual(readWeatherFile(MONTH.join('\n')));
  });

  it('loses what failed a check, and lets the later of two values win', () => {
    const text = [
      `${STATION},20180415,TMAX,6,,G,W,2400`,
      `${STATION},20180415,TMIN,-17,,,W,`,
      `${STATION},20180415,TMIN,-20,,,W,`,
      `${STATION},20180416,TMAX,-9999,,,W,`,
    ].join('\n');
    expect(readWeatherFile(text)).toEqual({
      rows: [{ day: '2018-04-15', tminC: -2 }],
      duplicates: 1,
      doubted: 1,
      problems: [],
    });
  });

  it('reports a line that is none, and a date that is none', () => {
    const { rows, problems } = readWeatherFile(`${CSV[0]}\n${STATION},April,TMAX,6\n${STATION},20180231,TMAX,6,,,W,`);
    expect(rows).toEqual([{ day: '2018-04-15', tmaxC: 0.6 }]);
    expect(problems.map(({ where }) => where)).toEqual(['line 2', 'line 3']);
  });
});
