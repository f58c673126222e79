import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { openBrowser } from './browser.ts';
import { CountedHands } from './hand-count.ts';
import { servedHome } from './served-garden.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** From the first page, with nothing told, to twelve beds alike in the list. */
async function toldAsFarAsBeds(page: Page, hands: CountedHands): Promise<void> {
  const { origin } = await servedHome();
  await page.goto(origin);
  await hands.read();
  await hands.press('Set up a garden');
  await hands.type('Town or airport', 'madison');
  await hands.choose(page.getByLabel('State'), 'Wisconsin');
  await hands.press('Look for it');
  await hands.press('Madison Dane Regional Airport, Wisconsin');
  await hands.tick(page.getByRole('radio').first());
  await hands.press('Go on');
  await hands.type('What is the garden called?', 'Hollow Lane');
  await hands.press('Go on');
  await hands.type('How many of this kind', '12');
  await hands.press('Add to the list');
}

/** Makes the garden, and reads as far as the address of its calendar. */
async function madeWithAddress(page: Page, hands: CountedHands): Promise<void> {
  await hands.press('Make the garden', { reads: false });
  await page.waitForURL(/\/gardens\/hollow-lane/, { timeout: 20_000 });
  await hands.read('.address');
  expect(await page.locator('.address').first().textContent()).toContain('/feed/');
}

async function atADesk(): Promise<{ page: Page; hands: CountedHands }> {
  const page = await browser.newPage({ javaScriptEnabled: false });
  onTestFinished(() => page.close());
  return { page, hands: new CountedHands(page) };
}

test('from nothing to the address of a calendar takes less than five minutes, with every word on the way read', async () => {
  const { page, hands } = await atADesk();
  await toldAsFarAsBeds(page, hands);
  await hands.press('The rest later');
  await madeWithAddress(page, hands);
  expect(hands.minutes).toBeLessThan(5);
  expect(hands.handsS).toBeLessThan(60);
  // No word was passed over: a set-up of a page or two would not be this one.
  expect(hands.readingS).toBeGreaterThan(150);
}, 60_000);

test('reading all eight pages and leaving four of them empty takes between five and seven minutes', async () => {
  const { page, hands } = await atADesk();
  await toldAsFarAsBeds(page, hands);
  for (const _page of ['beds', 'bins', 'last year', 'growing']) await hands.press('Go on');
  await madeWithAddress(page, hands);
  expect(hands.minutes).toBeGreaterThan(5);
  expect(hands.minutes).toBeLessThan(7);
}, 60_000);
