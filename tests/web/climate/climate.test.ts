/**
 * The climate page, for every kind of climate a garden may have.
 */
import { describe, expect, it, test } from 'vitest';
import { monthsWorking } from '../../../src/digest/climate-working.ts';
import { demoClimate } from '../../demo-data/demo-season.ts';
import { plain } from '../plain-text.ts';
import { GARDEN, sampleApp, sampleFile } from '../sample-garden.ts';

const PAGE = `${GARDEN}/climate`;
const highC = [-2, 0, 6, 13, 20, 25, 27, 26, 22, 15, 7, 0];
const lowC = [-10, -9, -4, 2, 8, 13, 16, 15, 10, 4, -2, -8];
const monthlyNormals = highC.map((high, i) => ({ highC: high, lowC: lowC[i], precipMm: 60 }));

async function climateOf(change: Record<string, unknown> = {}) {
  const { get } = await sampleApp(sampleFile(change));
  const answer = await get(PAGE);
  const html = await answer.text();
  return { status: answer.status, html, text: plain(html) };
}

describe.each([
  ['two freeze dates', { climate: { frostDates: { lastSpring: '05-06', firstAutumn: '10-04' } } }],
  ['monthly means', { climate: { monthlyNormals } }],
  ['a station', { climate: { station: 'USW00014839' } }],
  ['the nearest stations', { climate: { nearest: true } }],
])('the climate by %s', (_, change) => {
  it('tells each figure with its working and where that comes from', async () => {
    const { status, html, text } = await climateOf(change);
    expect(status).toBe(200);
    for (const section of ['freezes', 'freeze-free', 'soil', 'months', 'heat', 'light', 'zone'])
      expect(html).toMatch(new RegExp(`<section id="${section}">.*?href="/(?:handbook/sources#|gardens/)[^"]+"`, 's'));
    expect(text).toMatch(/At or below Early Middle Late 32 °F [A-Z][a-z]+ \d+/);
    expect(text).toMatch(/\d+ days in the middle year/);
    expect(html).not.toMatch(/⟦|undefined|NaN/);
  });

  it('draws freezes and the usual year, each with its table beside', async () => {
    const { html } = await climateOf(change);
    expect(html.match(/<svg [^>]*role="img" aria-label="[^"]+/g)?.length).toBeGreaterThanOrEqual(2);
    expect(html).toContain('<caption>Last freeze of spring, as it usually comes</caption>');
    expect(html).toContain('<caption>By month</caption>');
  });
});

test('own dates come back as they were given, and the rest is said to be assumed', async () => {
  const { text } = await climateOf();
  expect(text).toMatch(/32 °F [A-Z][a-z]+ \d+ May 6 [A-Z][a-z]+ \d+/);
  expect(text).toContain('The middle date is the one you gave');
  expect(text).toContain('Assumed: a smooth year laid through your two dates');
  expect(text).toContain('150 days in the middle year');
});

test('stations are told with how far and how high they lie and what they count', async () => {
  const at = { ...sampleFile().garden, elevationM: 260 };
  const { text } = await climateOf({ garden: at, climate: { nearest: true } });
  expect(text).toContain('The stations');
  expect(text.match(/, WI \d+ mi \d[\d,]* ft (above|below) the garden \d+ %/g)).toHaveLength(6);
  const shares = [...text.matchAll(/the garden (\d+) %/g)].map(([, share]) => Number(share));
  expect(shares.reduce((a, b) => a + b, 0)).toBeGreaterThan(96);
  expect(shares).toEqual([...shares].sort((a, b) => b - a));
});

test('a place where no freeze date is known says so and invents none', async () => {
  const warm = highC.map(() => ({ highC: 30, lowC: 20, precipMm: 90 }));
  const { text } = await climateOf({ climate: { monthlyNormals: warm } });
  expect(text).toContain('No date is known: a freeze may come in any month, or never.');
  expect(text).toContain('It is not known: no date of a freeze is.');
  expect(text).not.toContain('days in the middle year');
});

test('south of the equator spring comes in September, and the season turns with it', async () => {
  const garden = {
    ...sampleFile().garden,
    latitude: -43.5,
    longitude: 172.6,
    timeZone: 'Pacific/Auckland',
    units: 'metric',
  };
  const { text } = await climateOf({
    garden,
    climate: { frostDates: { lastSpring: '10-06', firstAutumn: '04-20' } },
    plantings: [],
    coverStands: [],
  });
  expect(text).toMatch(/0 °C \d+ [A-Z][a-z]+ 6 October \d+ [A-Z][a-z]+/);
  expect(text).toMatch(/Month High, °C .* July -?−?\d/);
  expect(text).toMatch(/The longest is 2\d December/);
});

test('the page of a task, and the foot of every page, lead there', async () => {
  const { get } = await sampleApp();
  const week = await (await get(GARDEN)).text();
  expect(week).toContain(`href="${PAGE}"`);
  const [, task = ''] = /<p class="entry-title"><a href="([^"]+)"/.exec(week) ?? [];
  expect(await (await get(task)).text()).toMatch(/id="why".*href="\/gardens\/mill-row\/climate">The climate, figure/s);
});

test('what is counted in a record says so, and depths and steps are in the units of the reader', async () => {
  const steps = {
    us: ['At a depth of 4 in', 'in steps of 5 °F'],
    metric: ['At a depth of 10 cm', 'in steps of 2.8 °C'],
  };
  for (const units of ['us', 'metric'] as const) {
    const { text } = await climateOf({ garden: { ...sampleFile().garden, units } });
    for (const words of steps[units]) expect(text).toContain(words);
  }
  const record = demoClimate;
  expect(monthsWorking(record)).toEqual({
    how: `Each figure is the mean of its days in the ${record.seasons.length} seasons of the daily record behind this climate.`,
    source: "the garden's climate",
  });
});

test('the kinds that bear no cold are told apart from the chance the household takes, here and on The garden', async () => {
  const change = { climate: { nearest: true } };
  const apart = /The tenderest kinds \(.*tomato.*\) wait until no more than 10 of 100 years still have one\./;
  expect((await climateOf(change)).text).toMatch(apart);
  const { get } = await sampleApp(sampleFile(change));
  expect(plain(await (await get(`${GARDEN}/garden`)).text())).toMatch(apart);
});
