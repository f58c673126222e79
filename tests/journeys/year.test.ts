import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { openBrowser } from './browser.ts';
import { servedGarden } from './served-garden.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

async function yearOn(width: number) {
  const { origin } = await servedGarden();
  const page = await browser.newPage({ viewport: { width, height: 844 }, javaScriptEnabled: false });
  onTestFinished(() => page.close());
  await page.goto(`${origin}/gardens/mill-row/year`);
  return page;
}

test('on a phone the year slides in its frame while the names of the beds stay, and a season opens close up', async () => {
  const page = await yearOn(390);
  expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(390);
  const name = page.locator('.year-chart').getByRole('link', { name: 'Wall bed' });
  const strip = page.locator('svg[aria-labelledby^="strip-wall"]');
  const [nameAt, stripAt] = [await name.boundingBox(), await strip.boundingBox()];
  await page.evaluate('document.querySelector(".year-frame").scrollLeft = 400');
  expect((await name.boundingBox())?.x).toBeCloseTo(nameAt?.x ?? -1);
  expect((await strip.boundingBox())?.x).toBeLessThan((stripAt?.x ?? 0) - 300);

  await page.getByRole('link', { name: 'Summer 2027' }).click();
  expect(await page.locator('.year-chart caption').textContent()).toBe('Summer 2027');
  expect(await page.getByText('sow snap bean', { exact: true }).count()).toBe(1);
  expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(390);
});

test('printed it takes one sheet laid across, with letters of seven points or more and no tables', async () => {
  const page = await yearOn(1200);
  for (const format of ['A4', 'Letter']) {
    const pdf = (await page.pdf({ format, landscape: true })).toString('latin1');
    expect(pdf.match(/\/Type \/Page\b/g)).toHaveLength(1);
  }
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('.year-tables').isVisible()).toBe(false);
  const zoomed = 'getComputedStyle(document.querySelector(".year-chart")).zoom';
  // Ten pixels are seven and a half points.
  expect(7.5 * Number(await page.evaluate(zoomed))).toBeGreaterThanOrEqual(7);
});
