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

test('a gardener wishes, has a plan proposed, takes it, changes a bed and takes it all back, on a phone, without script', async () => {
  const { origin, steward } = await servedGarden({
    plantings: [
      { id: 'kale', bed: 'north', crop: 'kale', setOut: '2026-05-01', lastHarvest: '2026-10-01' },
      { id: 'tomatoes', bed: 'middle', crop: 'tomato', setOut: '2027-05-28' },
    ],
    coverStands: [],
  });
  const before = told((await steward.view('mill-row')).plan);
  const page = await browser.newPage({ viewport: { width: 390, height: 844 }, javaScriptEnabled: false });
  onTestFinished(() => page.close());
  const width = async () => page.evaluate('document.documentElement.scrollWidth');

  await page.goto(`${origin}/gardens/mill-row`);
  await page.getByRole('link', { name: 'Beds', exact: true }).click();
  expect(await width()).toBeLessThanOrEqual(390);
  const open = page.locator('.season-table td', { hasText: '2028' }).last();
  const place = await open.boundingBox();
  expect((place?.x ?? 999) + (place?.width ?? 999)).toBeLessThanOrEqual(390);
  expect(await open.textContent()).toMatch(/^2028\s*open\s*change$/);

  await page.selectOption('select[name=crop]', 'snap-bean');
  await page.fill('input[name=amount]', '1');
  await page.selectOption('select[name=in]', 'beds');
  await page.getByRole('button', { name: 'Wish for it' }).click();
  await page.getByRole('button', { name: 'Propose a plan' }).click();
  expect(await page.locator('.crop-proposed').textContent()).toContain('Snap bean');
  await page.getByRole('link', { name: 'See what taking this plan would do' }).click();
  await page.getByRole('button', { name: 'Take this plan' }).click();
  await page.waitForURL(/\/beds(?:\?kept=\d+)?$/);
  expect(await page.locator('.crop-planned').allTextContents()).toHaveLength(2);

  await page.getByRole('link', { name: 'Change Wall bed, 2027' }).click();
  expect(await width()).toBeLessThanOrEqual(390);
  await page.getByRole('link', { name: 'Garden pea', exact: true }).click();
  await page.fill('input[name=share]', '100');
  await page.getByRole('button', { name: 'Show it so' }).click();
  expect(await page.getByRole('alert').textContent()).toContain('100 sq ft is more than Wall bed has: 39 sq ft.');
  await page.fill('input[name=share]', '20');
  await page.getByRole('button', { name: 'Show it so' }).click();
  await page.getByRole('button', { name: 'Plan it' }).click();
  expect(await page.locator('main').textContent()).toContain('planned; on 20 sq ft');

  for (const _ of ['the peas', 'the plan', 'the wish']) {
    await page.getByRole('link', { name: 'History' }).click();
    await page.getByRole('link', { name: 'Take back', exact: true }).first().click();
    await page.getByRole('button', { name: 'Take it back' }).click();
  }
  expect(told((await steward.view('mill-row')).plan)).toEqual(before);
  expect((await steward.view('mill-row')).garden.wishes).toEqual([]);
}, 60_000);
