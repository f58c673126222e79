import { describe, expect, test } from 'vitest';
import { withWeather } from '../../../src/climate/logged.ts';
import type { ModelledDay, TemperatureDay } from '../../../src/climate/season-course.ts';
import { addDays, eachDay } from '../../../src/measures/days.ts';
import { FitDrawing } from '../../../src/web/charts/fit-drawing.tsx';
import { SnowDrawing } from '../../../src/web/charts/snow-drawing.tsx';
import { SoilWaterDrawing } from '../../../src/web/charts/soil-water-drawing.tsx';
import { TemperatureDrawing } from '../../../src/web/charts/temperature-drawing.tsx';
import { meanOfKnown, weeksOf } from '../../../src/web/charts/weekly-table.tsx';
import { SeasonDrawings } from '../../../src/web/weather/season-drawings.tsx';
import { withoutSeasons } from '../../climate/real-data.ts';
import { demoClimate, demoGarden } from '../../demo-data/demo-season.ts';
import { GARDEN, sampleApp } from '../sample-garden.ts';

const TODAY = '2027-05-06';
/** Eleven days, today in their middle: 33 units of paper each. */
const DAYS = eachDay('2027-05-01', '2027-05-11');

describe('temperatures drawn', () => {
  const days = DAYS.map(
    (day): TemperatureDay => ({
      day,
      normalC: 10,
      usual: { low: 1, median: 10, high: 19 },
      ...(day <= TODAY ? { seenC: 10 } : day === '2027-05-07' ? { expectedC: 1 } : {}),
    }),
  );

  test('the lines lie where the figures are: 0 to 20 °C over 140 units of paper', () => {
    const text = String(<TemperatureDrawing which="tmaxC" days={days} today={TODAY} units="metric" />);
    expect(text).toMatch(/class="usual-line" d="M30 82L63 82.*L360 82"/);
    expect(text).toMatch(/class="now-line" d="M30 82.*L195 82"/);
    expect(text).toMatch(/class="ahead-line" d="M228 145h1"/);
    expect(text).toMatch(/class="band" d="M30 19.*L360 19L360 145.*L30 145Z"/);
    expect(text).toContain('class="today-line" d="M195 12V152"');
    expect(text).toContain('usual is 10 °C.');
  });

  test('are in the gardener’s units, by weeks', () => {
    const text = String(<TemperatureDrawing which="tminC" days={days} today={TODAY} units="us" />);
    expect(text).toContain('This season, °F');
    expect(text).toContain('<th scope="row">May 1</th><td>48</td><td>50</td><td>34 to 66</td>');
    expect(text).toContain('<th scope="row">May 8</th><td>–</td><td>50</td>');
  });

  test('freezing is marked among the lowest where it lies on the paper', () => {
    const cold = days.map((row) => ({ ...row, usual: { low: -9, median: 0, high: 9 } }));
    const drawn = (which: 'tminC' | 'tmaxC') =>
      String(<TemperatureDrawing which={which} days={cold} today={TODAY} units="metric" />);
    // From −10 to 11 °C.
    expect(drawn('tminC')).toContain('class="limit-line" d="M30 85.3H360"');
    expect(drawn('tmaxC')).not.toContain('limit-line');
  });

  test('show a mean and no band where there is no record', () => {
    const bare = DAYS.map((day) => ({ day, normalC: 10 }));
    const text = String(<TemperatureDrawing which="tminC" days={bare} today={TODAY} units="metric" />);
    expect(text).toContain('mean of the years');
    expect(text).toContain('class="band" d=""');
    expect(text).toContain('None was logged.');
  });
});

describe('the ground drawn', () => {
  const spread = (amount: number) => ({ low: 0, median: amount / 2, high: amount });
  const days = DAYS.map((day): ModelledDay => ({ day, usual: spread(10), now: spread(20) }));

  test('snow stands on the foot of the drawing', () => {
    const text = String(<SnowDrawing days={days} today={TODAY} units="metric" />);
    // 10 cm of 11 drawn: 152 - 140 × 10 / 11.
    expect(text).toMatch(/class="now-line" d="M30 24.7.*L195 24.7"/);
    expect(text).toMatch(/class="ahead-line" d="M195 24.7.*L360 24.7"/);
    expect(text).toContain('<td>10</td><td>5</td><td>0 to 10</td>');
  });

  test('no snow is a sentence', () => {
    const none = DAYS.map((day): ModelledDay => ({ day, usual: spread(0) }));
    const text = String(<SnowDrawing days={none} today={TODAY} units="us" />);
    expect(text).toContain('None from May 1 to May 11, neither this season nor in nine past years of ten.');
    expect(text).not.toContain('<svg');
  });

  test('dry soil lies below the line from which it is fit to work, wet soil above it', () => {
    const text = String(<SoilWaterDrawing days={days} fitMm={5} soil="loam" today={TODAY} units="metric" />);
    const limit = Number(/class="limit-line" d="M30 ([\d.]+)/.exec(text)?.[1]);
    const now = Number(/class="now-line" d="M30 ([\d.]+)/.exec(text)?.[1]);
    expect(limit).toBe(82);
    expect(now).toBeGreaterThan(limit);
    expect(text).toContain('10 mm; 5 mm must be gone before it is fit to work.');
  });

  test('fit days are added up from their shares', () => {
    const shares = DAYS.map((day) => ({ day, now: day <= TODAY ? 1 : 0.5, usual: 0.25 }));
    const text = String(<FitDrawing days={shares} today={TODAY} units="metric" />);
    expect(text).toContain(
      'Of the 6 days up to today about 6 (about 2 in past years) were fit; of the 5 to come about 3 (about 1 in past years).',
    );
    expect(text).toMatch(/class="usual-line" d="M30 117.*L360 117"/);
    expect(text).toContain('<td>6.5</td><td>1.8</td>');
  });
});

test('days are cut into weeks, and means leave out what is not known', () => {
  expect(weeksOf([1, 2, 3, 4, 5, 6, 7, 8])).toEqual([[1, 2, 3, 4, 5, 6, 7], [8]]);
  expect(meanOfKnown([1, undefined, 2])).toBe(1.5);
  expect(meanOfKnown([undefined])).toBeUndefined();
});

describe('the season', () => {
  const today = '2028-02-29';
  const drawn = (climate: typeof demoClimate) =>
    String(<SeasonDrawings climate={climate} garden={demoGarden(today)} today={today} />);

  test('has five drawings, told in words each, with a table beneath', () => {
    const seen = [{ kind: 'observed' as const, day: addDays(today, -1), tminC: -3, tmaxC: 4, rainMm: 0 }];
    const text = drawn(withWeather(demoClimate, seen, today));
    expect(text.match(/<svg [^>]*role="img" aria-label="[A-Z]/g)).toHaveLength(5);
    expect(text.match(/<table/g)).toHaveLength(5);
    expect(text).not.toContain('NaN');
    expect(text).not.toContain('past years.</p>');
  });

  test('says when nothing was logged of it', () => {
    expect(drawn(demoClimate)).toContain('Nothing was logged of these days');
  });

  test('says what a climate without a record does not know', () => {
    const text = drawn(withoutSeasons(demoClimate));
    expect(text.match(/<svg/g)).toHaveLength(2);
    expect(text).toContain('This climate has no daily record.');
  });

  test('says what a record without rain does not know', () => {
    const seasons = demoClimate.seasons.map((season) => ({ ...season, rainMm: Array(365).fill(undefined) }));
    expect(drawn({ ...demoClimate, seasons })).toContain('The daily record holds no rain');
  });

  test('stands on the weather log, below its form and its days, and has no page of its own', async () => {
    const { get } = await sampleApp();
    const text = await (await get(`${GARDEN}/weather`)).text();
    const places = ['<form', 'Nothing has been logged', 'id="season"', '<svg'].map((mark) => text.indexOf(mark));
    expect(places).not.toContain(-1);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect((await get(`${GARDEN}/season`)).status).toBe(404);
  });

  test('is still drawn when a form comes back with what was wrong', async () => {
    const { get } = await sampleApp();
    const answer = await get(`${GARDEN}/weather?day=Tuesday&kind=observed`);
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('id="season"');
  });
});
