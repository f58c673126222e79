import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { openBrowser } from './browser.ts';
import { servedGarden } from './served-garden.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

test('a gardener gives an address for the weekly list and sees the next one as it would go out, without any script', async () => {
  const { origin } = await servedGarden({ household: { members: [{ name: 'Ada' }] } });
  const page = await browser.newPage({ viewport: { width: 390, height: 844 }, javaScriptEnabled: false });
  onTestFinished(() => page.close());
  await page.goto(`${origin}/gardens/mill-row`);
  await page.getByRole('link', { name: 'Household' }).click();
  await page.getByRole('link', { name: 'Change' }).first().click();
  await page.getByLabel('Weekly list by mail to').fill('ada@example.org');
  await page.getByLabel('Sent on').selectOption('Saturday');
  await page.getByRole('button', { name: 'Keep it so' }).click();
  await page.getByRole('link', { name: 'The next list as mail' }).click();
  const text = (await page.locator('pre.letter').textContent()) ?? '';
  expect(await page.locator('.message-head').textContent()).toContain('ada@example.org');
  expect(text).toContain('Clear the spinach from Wall bed, leave the roots');
  await page.getByRole('link', { name: 'the same as HTML' }).click();
  expect(await page.locator('body').textContent()).toContain('Clear the spinach from Wall bed, leave the roots');
  expect(await page.locator('html').evaluate((html) => html.scrollWidth)).toBeLessThanOrEqual(390);
});
