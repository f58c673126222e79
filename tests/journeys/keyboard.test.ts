/**
 * The four journeys with a keyboard alone, on a desk, without script and without a mouse.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { told } from '../steward/household.ts';
import { openBrowser } from './browser.ts';
import { follow, tabTo } from './keys.ts';
import { servedGarden } from './served-garden.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

async function desk(address: string): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1200, height: 900 }, javaScriptEnabled: false });
  onTestFinished(() => page.close());
  await page.goto(address);
  return page;
}

const mainText = (page: Page) => page.locator('main').textContent();

test('the skip link passes the head by, and the way back is the same', async () => {
  const { origin } = await servedGarden();
  const page = await desk(`${origin}/gardens/mill-row`);
  expect(await tabTo(page, /./)).toBe('Skip to the page');
  await page.keyboard.press('Enter');
  const first = await tabTo(page, /./);
  expect(await page.locator('main a').first().textContent()).toContain(first);
  const order: string[] = [];
  for (let count = 0; count < 3; count += 1) order.push(await tabTo(page, /./));
  expect([await tabTo(page, /./, 'Shift+Tab'), await tabTo(page, /./, 'Shift+Tab')]).toEqual([order[1], order[0]]);
});

test('subscribe: a feed for one person’s phone is made, and its address reached', async () => {
  const { origin } = await servedGarden();
  const page = await desk(origin);
  await follow(page, 'Feeds');
  await tabTo(page, 'Whose, or where it is read');
  await page.keyboard.type('Ada’s phone');
  await tabTo(page, 'What it shows, how far, and how');
  await page.keyboard.press('Space');
  await tabTo(page, 'calendar entries, which every app shows');
  await page.keyboard.press('ArrowDown');
  await follow(page, 'Make a feed');
  await tabTo(page, 'Copy it with the keyboard');
  await page.keyboard.press('Space');
  await tabTo(page, 'The address, all of it marked when you come to it');
  const address = await page.evaluate<string>('String(getSelection())');
  expect(await (await fetch(address)).text()).toContain('BEGIN:VTODO');
});

test('the weekly list: an entry is opened, marked done, and taken back', async () => {
  const { origin, steward } = await servedGarden();
  const page = await desk(origin);
  const title = 'Clear the spinach from Wall bed, leave the roots';
  await follow(page, title);
  await tabTo(page, 'Done on');
  await page.keyboard.type('04192027');
  await follow(page, 'Mark done');
  expect(await mainText(page)).toContain('It is done.');
  await follow(page, 'Take that back');
  expect(await page.locator('.about').textContent()).toContain(`Done on April 19: ${title}`);
  await follow(page, 'Take it back');
  expect((await steward.view('mill-row')).ledger.map(({ fact }) => fact.kind).slice(1)).toEqual([
    'tasks-done',
    'entry-undone',
  ]);
});

test('late snow: told, looked at, taken in, and taken back', async () => {
  const { origin, steward } = await servedGarden({
    plantings: [{ bed: 'middle', crop: 'tomato', setOut: '2027-04-12' }],
  });
  const before = told((await steward.view('mill-row')).plan);
  const page = await desk(origin);
  await follow(page, 'Weather log');
  await tabTo(page, 'Snow lying, in');
  await page.keyboard.type('6');
  await follow(page, 'Show what it would move');
  expect(await mainText(page)).toContain('Snow tonight: shelter tomato');
  await follow(page, 'Take it in');
  expect(told((await steward.view('mill-row')).plan)).not.toEqual(before);
  await follow(page, 'History');
  await follow(page, 'Take back');
  await follow(page, 'Take it back');
  expect(told((await steward.view('mill-row')).plan)).toEqual(before);
});

test('season end: covers for three beds are chosen, each with its cut', async () => {
  const beds = ['North', 'Middle', 'South'];
  const { origin, steward } = await servedGarden({
    plantings: beds.flatMap((bed) => [
      { bed: bed.toLowerCase(), crop: 'pea', sow: '2027-04-25', lastHarvest: '2027-06-25' },
      { bed: bed.toLowerCase(), crop: 'garlic', setOut: '2027-10-08' },
    ]),
    coverStands: [],
  });
  const page = await desk(origin);
  for (const bed of beds) {
    await follow(page, 'Season end');
    await tabTo(page, `${bed} bed`);
    await page.keyboard.press('Enter');
    await tabTo(page, /^Buckwheat/);
    await page.keyboard.press('Space');
    await follow(page, 'See what choosing buckwheat would do');
    await follow(page, 'Choose it');
    await follow(page, `Cut the buckwheat in ${bed} bed before it seeds`);
    expect(await mainText(page)).toContain('Any day from July 23 to July 29, 2027 will do.');
  }
  const planned = (await steward.view('mill-row')).garden.stands.filter(({ coverId }) => coverId === 'buckwheat');
  expect(planned.map(({ bedId }) => bedId)).toEqual(['north', 'middle', 'south']);
}, 60_000);
