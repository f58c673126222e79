import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { openBrowser } from './browser.ts';
import { servedGarden } from './served-garden.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

test.each([390, 1200])(
  'a gardener reports a disease, sees what comes of it, and takes it back, without any script, at %i px',
  async (width) => {
    const { origin, steward } = await servedGarden();
    const page = await browser.newPage({ viewport: { width, height: 844 }, javaScriptEnabled: false });
    onTestFinished(() => page.close());

    const fits = async () => expect(await page.locator('html').evaluate((html) => html.scrollWidth)).toBe(width);
    await page.goto(`${origin}/gardens/mill-row/report`);
    await page.getByRole('link', { name: 'A disease found' }).click();
    await fits();
    await page.getByRole('link', { name: 'Spinach' }).click();
    await fits();
    await page.getByLabel('What it is called').fill('leaf spot');
    await page.getByRole('button', { name: 'Show what would come of it' }).click();
    await fits();
    expect(await page.locator('main').textContent()).toContain('What the bed is closed to');
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
    await page.getByRole('button', { name: 'Take it in' }).click();
    expect(await page.locator('.ledger').textContent()).toContain('Found leaf spot on the Spinach');
    await page.getByRole('link', { name: 'Take back' }).click();
    await page.getByRole('button', { name: 'Take it back' }).click();
    expect((await steward.view('mill-row')).garden.diseases).toEqual([]);
  },
);
