/**
 * Behind a password, in a real browser: the way in on a phone, a change, and the way out on every device.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { openBrowser } from './browser.ts';
import { follow, tabTo } from './keys.ts';
import { colourFaultsOf, faultsOf, pageForLooking } from './looked-over.ts';
import { servedElsewhere, servedGarden } from './served-garden.ts';

const PASSWORD = 'beet row under the old pear';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** A device of its own, without script. */
async function device(width: number): Promise<Page> {
  const context = await browser.newContext({ viewport: { width, height: 800 }, javaScriptEnabled: false });
  onTestFinished(() => context.close());
  return context.newPage();
}

async function signIn(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.getByLabel('The household’s password').fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
}

test('a phone signs in, marks work done, and signing out everywhere signs the desk out too', async () => {
  const { origin, steward } = await servedGarden();
  await steward.setPassword(PASSWORD);
  const [phone, desk] = [await device(390), await device(1200)];
  await signIn(desk, origin);
  const wanted = `${origin}/gardens/mill-row/weather?day=2027-04-18`;
  await signIn(phone, wanted);
  expect(phone.url()).toBe(wanted);
  await phone.goto(origin);
  await phone.getByRole('link', { name: 'Clear the spinach from Wall bed, leave the roots' }).first().click();
  await phone.getByRole('button', { name: 'Mark done' }).click();
  expect(await phone.locator('main').textContent()).toContain('It is done.');
  await phone.getByRole('link', { name: 'Signed in' }).click();
  expect(await phone.locator('main').textContent()).toContain('2 devices are signed in, this one among them');
  await phone.getByRole('button', { name: 'Sign out everywhere' }).click();
  expect(phone.url()).toBe(`${origin}/sign-in`);
  await desk.reload();
  expect(desk.url()).toContain('/sign-in?to=');
  await phone.goBack();
  expect(await phone.locator('h1').textContent()).toBe('Sign in');
  expect(await steward.sessions()).toEqual([]);
}, 60_000);

test('a link from a calendar or from mail keeps one signed in; a form of another site changes nothing', async () => {
  const { origin, steward } = await servedGarden();
  await steward.setPassword(PASSWORD);
  const page = await device(1200);
  await signIn(page, origin);
  const elsewhere = await servedElsewhere(
    `<a href="${origin}/gardens/mill-row/feeds">in</a><form method="post" action="${origin}/sign-out/everywhere"><button>out</button></form>`,
  );
  await page.goto(elsewhere.replace('127.0.0.1', 'localhost'));
  await page.getByRole('link', { name: 'in' }).click();
  expect(await page.locator('h1').textContent()).toBe('Feeds');
  await page.goto(elsewhere.replace('127.0.0.1', 'localhost'));
  await page.getByRole('button', { name: 'out' }).click();
  expect(await page.locator('h1').textContent()).toBe('Nothing was changed');
  expect(await steward.sessions()).toHaveLength(1);
}, 60_000);

test('the keyboard alone gets in, and what is wrong is told', async () => {
  const { origin, steward } = await servedGarden();
  await steward.setPassword(PASSWORD);
  const page = await device(1200);
  await page.goto(`${origin}/gardens/mill-row/feeds`);
  await tabTo(page, 'The household’s password');
  await page.keyboard.type('a wrong word or five');
  await follow(page, 'Sign in');
  expect(await page.getByRole('alert').textContent()).toContain('That is not the household’s password.');
  await tabTo(page, 'The household’s password');
  await page.keyboard.type(PASSWORD);
  await follow(page, 'Sign in');
  expect(page.url()).toBe(`${origin}/gardens/mill-row/feeds`);
}, 60_000);

test.each([
  ['phone', 390, 'light', 'dark'],
  ['desk', 1200, 'dark', 'light'],
] as const)(
  'the pages of the way in and out have no fault on a %s',
  async (_, width, whole, colours) => {
    const { origin, steward } = await servedGarden();
    await steward.setPassword(PASSWORD);
    const page = await pageForLooking(browser, width, whole);
    onTestFinished(() => page.close());
    const faults: string[] = [];
    const look = async () => {
      faults.push(...(await faultsOf(page)));
      await page.emulateMedia({ colorScheme: colours });
      faults.push(...(await colourFaultsOf(page)));
      await page.emulateMedia({ colorScheme: whole });
    };
    await page.goto(`${origin}/sign-in`);
    await look();
    await page.getByLabel('The household’s password').fill('a wrong word or five');
    await page.getByRole('button', { name: 'Sign in' }).click();
    await look();
    await page.getByLabel('The household’s password').fill(PASSWORD);
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.goto(`${origin}/who-gets-in`);
    await look();
    expect(faults).toEqual([]);
  },
  60_000,
);
