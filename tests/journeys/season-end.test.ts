import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { told } from '../steward/household.ts';
import { openBrowser } from './browser.ts';
import { servedGarden } from './served-garden.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

test('a gardener chooses a cover on a phone, finds it in the year, and takes it back, without any script', async () => {
  const { origin, steward } = await servedGarden({
    plantings: [
      { id: 'beans', bed: 'wall', crop: 'snap-bean', sow: '2027-05-25', lastHarvest: '2027-08-28' },
      { id: 'tomatoes', bed: 'wall', crop: 'tomato', setOut: '2028-05-28' },
    ],
    coverStands: [],
  });
  const before = told((await steward.view('mill-row')).plan);
  const page = await browser.newPage({ viewport: { width: 390, height: 844 }, javaScriptEnabled: false });
  onTestFinished(() => page.close());
  const width = async () => page.evaluate('document.documentElement.scrollWidth');

  await page.goto(`${origin}/gardens/mill-row`);
  await page.getByRole('link', { name: 'Season end' }).click();
  expect(await width()).toBeLessThanOrEqual(390);
  await page.getByRole('heading').getByRole('link', { name: 'Wall bed', exact: true }).click();
  const gap = page.locator('section.gap', { hasText: 'until tomato goes in' });
  await gap.getByText(/more that can be had/).click();
  await gap.locator('details.fit summary', { hasText: /^Winter wheat/ }).click();
  await gap.getByRole('link', { name: 'See what choosing winter wheat would do' }).click();
  expect(await page.locator('main').textContent()).toContain('Sow winter wheat in Wall bed');
  await page.getByRole('button', { name: 'Choose it' }).click();
  expect(await page.locator('main').textContent()).toContain('Planned: winter wheat');
  expect(await page.locator('.kept').textContent()).toMatch(/^Kept\. .*Take it back$/);

  const { plan } = await steward.view('mill-row');
  const sow = plan.tasks.find(
    ({ kind, subject }) => kind === 'sow-cover' && 'bedId' in subject && subject.bedId === 'wall',
  );
  expect(sow?.title).toBe('Sow winter wheat in Wall bed');
  await page.getByRole('link', { name: 'The year' }).click();
  expect(await page.locator('#strip-wall-words').textContent()).toContain('winter wheat');
  expect(await width()).toBeLessThanOrEqual(390);

  await page.getByRole('link', { name: 'History' }).first().click();
  await page.getByRole('link', { name: 'Take back' }).first().click();
  await page.getByRole('button', { name: 'Take it back' }).click();
  expect(told((await steward.view('mill-row')).plan)).toEqual(before);
});
