/**
 * Every date and every amount of every page can be asked why; one page of each route: tests/journeys/linked.test.ts.
 */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { amountsOn } from '../journeys/amounts-asked.ts';
import { AMOUNTS_EXCEPTED, AMOUNTS_ON } from '../journeys/amounts-excepted.ts';
import { askedOn, pagesAsked } from '../journeys/asked-walked.ts';
import { datesOn } from '../journeys/dates-asked.ts';
import { DATES_EXCEPTED } from '../journeys/dates-excepted.ts';
import { type WalkedApp, walkedApp } from '../journeys/walked-gardens.ts';

let walked: WalkedApp;
beforeAll(async () => {
  walked = await walkedApp();
}, 120_000);
afterAll(() => walked.close());

async function shown(path: string): Promise<string> {
  const answer = await walked.get(path);
  const leadsOn = answer.headers.get('location');
  if (leadsOn !== null) return shown(leadsOn);
  return (answer.headers.get('content-type') ?? '').startsWith('text/html') ? answer.text() : '';
}

test('every date on every page is asked why where it stands, and no exception is idle', async () => {
  const pages = await pagesAsked(walked);
  expect(pages.length).toBeGreaterThan(200);
  const { counts, unasked, met } = await askedOn(pages, { on: datesOn, excepted: DATES_EXCEPTED }, shown);
  console.log(`dates on ${pages.length} pages:`, Object.fromEntries(counts));
  expect(unasked).toEqual([]);
  expect(counts.get('link')).toBeGreaterThan(1500);
  expect(DATES_EXCEPTED.filter((each) => !met.has(each)).map(({ because }) => because)).toEqual([]);
}, 300_000);

test('every amount of tasks, beds, yard, fertility and season end is asked for where it stands', async () => {
  const pages = (await pagesAsked(walked)).filter(({ route }) => AMOUNTS_ON.test(route));
  expect(pages.length).toBeGreaterThan(60);
  const { counts, unasked, met } = await askedOn(pages, { on: amountsOn, excepted: AMOUNTS_EXCEPTED }, shown);
  console.log(`amounts on ${pages.length} pages:`, Object.fromEntries(counts));
  expect(unasked).toEqual([]);
  expect(counts.get('beside')).toBeGreaterThan(500);
  expect(AMOUNTS_EXCEPTED.filter((each) => !met.has(each)).map(({ because }) => because)).toEqual([]);
}, 300_000);
