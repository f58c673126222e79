import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { openBrowser } from './browser.ts';
import { servedGarden } from './served-garden.ts';

const TURN = 'pile-turn/pile:spring-pile/turn:2';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

test('a gardener logs a pile that is too hot, sees its turn come sooner, and takes the reading back, without any script', async () => {
  const { origin, steward } = await servedGarden();
  const turn = async () => (await steward.view('mill-row')).plan.tasks.find(({ key }) => key === TURN)?.day;
  expect(await turn()).toBe('2027-05-01');
  const page = await browser.newPage({ viewport: { width: 390, height: 844 }, javaScriptEnabled: false });
  onTestFinished(() => page.close());
  await page.goto(`${origin}/gardens/mill-row`);
  await page.getByRole('link', { name: 'Compost yard' }).click();
  expect(await page.locator('main').textContent()).toContain('Next: Turn the pile in Left bay, May 1.');

  await page.getByRole('link', { name: 'Tell of a look at it' }).click();
  await page.getByLabel('In the middle, °F').fill('155');
  await page.getByRole('button', { name: 'Keep it' }).click();
  expect(await page.locator('main').textContent()).toContain('155 °F');
  await page.getByRole('link', { name: 'Compost yard' }).click();
  expect(await page.locator('main').textContent()).toContain(
    'Next: Turn the pile in Left bay: it is running too hot, April 20.',
  );
  // The sample's thermometer read 136 °F and is over 140 °F now: the reading stands in the drawing and in its table.
  await page.getByText('Its log in figures').click();
  expect(await page.getByRole('row', { name: 'April 20 155' }).count()).toBe(1);

  await page.getByRole('link', { name: 'History' }).first().click();
  await page.getByRole('link', { name: 'Take back' }).first().click();
  await page.getByRole('button', { name: 'Take it back' }).click();
  expect(await turn()).toBe('2027-05-01');
});
