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

test('a gardener reports a late snow on a phone, sees what it moves, takes it in and takes it back, without any script', async () => {
  const { origin, steward } = await servedGarden({
    plantings: [{ bed: 'middle', crop: 'tomato', setOut: '2027-04-12' }],
  });
  const before = told((await steward.view('mill-row')).plan);
  const page = await browser.newPage({ viewport: { width: 390, height: 844 }, javaScriptEnabled: false });
  onTestFinished(() => page.close());

  await page.goto(`${origin}/gardens/mill-row`);
  await page.getByRole('link', { name: 'Weather log' }).click();
  await page.getByLabel('Snow lying, in').fill('6');
  await page.getByRole('button', { name: 'Show what it would move' }).click();
  expect(await page.locator('article').textContent()).toContain('Snow tonight: shelter tomato');
  expect((await steward.view('mill-row')).ledger).toHaveLength(1);

  await page.getByRole('button', { name: 'Take it in' }).click();
  expect(await page.locator('.weather-log').first().textContent()).toContain('April 20');
  const { ledger, plan } = await steward.view('mill-row');
  expect(ledger).toHaveLength(2);
  expect(plan.tasks.some(({ title }) => title.startsWith('Snow tonight'))).toBe(true);
  const width = await page.evaluate('document.documentElement.scrollWidth');
  expect(width).toBeLessThanOrEqual(390);

  await page.getByRole('link', { name: 'History' }).first().click();
  await page.getByRole('link', { name: 'Take back' }).first().click();
  await page.getByRole('button', { name: 'Take it back' }).click();
  expect(told((await steward.view('mill-row')).plan)).toEqual(before);
});
