import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { seenByIcalJs } from '../calendar/read-feed.ts';
import { openBrowser } from './browser.ts';
import { servedHome } from './served-garden.ts';

const PHONE = { width: 390, height: 844 };

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

async function phone(): Promise<Page> {
  const page = await browser.newPage({ viewport: PHONE, javaScriptEnabled: false });
  onTestFinished(() => page.close());
  return page;
}

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).first().click();

test('a gardener goes from nothing to This week with a calendar that another program reads, without any script', async () => {
  const { origin, steward } = await servedHome();
  const page = await phone();
  await page.goto(origin);
  await press(page, 'Set up a garden');

  await page.getByLabel('Town or airport').fill('madison');
  await page.getByLabel('State').selectOption('WI');
  await press(page, 'Look for it');
  await press(page, 'Madison Dane Regional Airport, Wisconsin');

  expect(await page.getByRole('radio').count()).toBe(5);
  await page.getByRole('radio').first().check();
  await press(page, 'Go on');

  await page.getByLabel('What is the garden called?').fill('Hollow Lane');
  await press(page, 'Go on');

  await page.getByLabel('How many of this kind').fill('12');
  await press(page, 'Add to the list');
  expect(await page.locator('.told-list li').count()).toBe(12);
  await press(page, 'Go on');

  await press(page, 'Go on');
  await page.locator('select[name="past:bed-1:2026:0"]').selectOption({ label: 'Tomato' });
  await press(page, 'Go on');

  await page.locator('select[name=what]').selectOption({ label: 'Carrot' });
  await page.getByLabel('Bed 1', { exact: true }).check();
  await page.locator('select[name=rough]').selectOption({ label: 'early May 2027' });
  await press(page, 'Add to the list');
  await press(page, 'Go on');

  expect(await page.locator('.looked-over').textContent()).toContain('Bed 1 to Bed 12, 12 beds: 8 ft by 4 ft');
  await press(page, 'Make the garden');
  await page.waitForURL(/\/gardens\/hollow-lane/, { timeout: 20_000 });

  expect(await page.locator('h1').textContent()).toContain('This week');
  const address = (await page.locator('.address').first().textContent()) ?? '';
  const feed = await fetch(address);
  expect(feed.status).toBe(200);
  const titles = seenByIcalJs(await feed.text()).map(({ title }) => title);
  expect(titles.some((title) => title.includes('carrot'))).toBe(true);
  expect(await steward.gardenIds()).toEqual(['hollow-lane']);
}, 60_000);

test('a set-up is left and come back to; wrong words stay in their fields, each with what is wrong', async () => {
  const { origin } = await servedHome();
  const page = await phone();
  await page.goto(`${origin}/set-up`);
  await press(page, 'Begin');
  await page.getByLabel('Latitude').fill('somewhere north');
  await press(page, 'Go on');
  expect(await page.locator('.problems').textContent()).toContain('"somewhere north" is not a latitude.');
  expect(await page.getByLabel('Latitude').inputValue()).toBe('somewhere north');
  await page.getByLabel('Latitude').fill("43° 31.5' S, 172° 38.25' E");
  await press(page, 'Go on');
  expect(await page.locator('.step').textContent()).toContain('your own dates are better');

  await page.goto(origin);
  await page.getByRole('link', { name: /^Go on with a garden at 43.5\d° S, 172.64° E$/ }).click();
  expect(await page.locator('h1').textContent()).toBe('When does it freeze there?');
  await press(page, 'Back');
  expect(await page.getByLabel('Latitude').inputValue()).toBe('-43.525');
});

test('every page of the set-up fits a phone', async () => {
  const { origin, steward } = await servedHome();
  const page = await phone();
  const { id } = await steward.beginDraft();
  await steward.changeDraft(id, (draft) => ({
    ...draft,
    place: { latitude: 43.1, longitude: -89.4 },
    climate: { nearest: true },
    beds: [
      {
        id: 'a',
        name: 'The bed beside the long wall of the neighbour',
        lengthM: 4,
        widthM: 1.2,
        raised: true,
        watered: true,
      },
    ],
    bins: [{ id: 'b', name: 'Left bay', volumeL: 760 }],
  }));
  for (const step of ['where?words=madison', 'climate', 'garden', 'beds', 'look-over']) {
    await page.goto(`${origin}/set-up/${id}/${step}`);
    const width = await page.evaluate('document.documentElement.scrollWidth');
    expect([step, width]).toEqual([step, PHONE.width]);
  }
});
