import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { serveApp } from '../../src/web/server.ts';
import { mailed } from '../web/mail/mailed.ts';
import { openBrowser } from './browser.ts';
import { freePort } from './served-garden.ts';

const PHONE = { width: 390, height: 844 };
const TURN = 'pile-turn/pile:spring-pile/turn:2';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** A reader's phone without script, and the garden behind a real server under a public name of its own. */
async function reader(name: string) {
  const port = await freePort();
  const opened = await mailed({ settings: { port, hostNames: [], publicUrl: new URL(`http://${name}:${port}`) } });
  const server = await serveApp(opened.app, { hostname: '127.0.0.1', port });
  const phone = await browser.newContext({ viewport: PHONE, javaScriptEnabled: false });
  onTestFinished(async () => {
    await phone.close();
    server.close();
  });
  const page = await phone.newPage();
  const asked: { url: string; referer: string | undefined; origin: string | undefined }[] = [];
  page.on('request', async (request) => {
    const { referer, origin } = await request.allHeaders();
    asked.push({ url: request.url(), referer, origin });
  });
  return { ...opened, page, asked, origin: `http://${name}:${port}` };
}

const fits = (page: Page) => page.evaluate('document.documentElement.scrollWidth <= window.innerWidth');

describe('a reader of the mail', () => {
  test('opens a link, changes nothing, presses, sees what moved and takes it back, without any script', async () => {
    const { page, origin, answer, view, taskOf } = await reader('127.0.0.1');
    await page.goto(origin + answer(TURN));
    expect(await page.locator('h1').textContent()).toContain('Turn the pile');
    expect((await view()).ledger).toHaveLength(1);

    await page.getByLabel('Done on').fill('2027-04-19');
    await page.getByRole('button', { name: 'Done' }).click();
    expect(await page.getByRole('status').textContent()).toBe('Thank you, it is written down.');
    expect(await page.locator('.about').textContent()).toContain('Done on April 19: Turn the pile');
    expect((await taskOf(TURN)).state).toBe('done');

    await page.reload();
    expect((await view()).ledger).toHaveLength(2);
    await page.getByRole('button', { name: 'Take that back' }).click();
    expect(await page.getByRole('status').textContent()).toBe('It is taken back.');
    expect((await taskOf(TURN)).state).toBe('open');

    await page.getByRole('button', { name: 'Not yet' }).click();
    expect(await page.locator('.about').textContent()).toContain('Put off past');
  });

  // Over plain http and under another name than this computer's own, browsers send no Sec-Fetch-Site: Origin alone says
  // where the form comes from (Fetch Metadata, 2: only to potentially trustworthy addresses).
  test('does so over plain http in the household’s own network too, and no request tells the link to another', async () => {
    const { page, origin, answer, asked, taskOf } = await reader('garden.localtest');
    await page.goto(origin + answer(TURN, 'skip'));
    await page.getByRole('button', { name: 'Skip' }).click();
    expect(await page.getByRole('status').textContent()).toBe('Thank you, it is written down.');
    expect((await taskOf(TURN)).state).toBe('skipped');
    const style = asked.find(({ url }) => url.includes('/style.css'));
    expect(style).toBeDefined();
    for (const { referer } of asked) expect([undefined, `${origin}/`]).toContain(referer);
    expect(asked.some((request) => request.origin === origin)).toBe(true);
  });

  test('stops the mail with one button, and every such page fits a phone', async () => {
    const { page, origin, answer, stop, view } = await reader('127.0.0.1');
    for (const path of [answer(TURN), answer('cover-cut/stand:rye-north', 'not-yet'), '/answer/nothing', stop()]) {
      await page.goto(origin + path);
      expect([path.slice(0, 8), await fits(page)]).toEqual([path.slice(0, 8), true]);
    }
    await page.getByRole('button', { name: 'Stop the mail' }).click();
    expect(await page.locator('h1').textContent()).toBe('The mail has stopped');
    expect((await view()).garden.household?.members?.map(({ mail }) => mail?.to)).toEqual([
      undefined,
      'bo@example.org',
    ]);
  });
});
