/**
 * Every page of the app in a real browser, on a phone and on a desk, light and dark.
 */
import type { Browser, Page, Response } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { brokenOffPage, underWayPage } from '../../src/web/pages/under-way.tsx';
import { serveApp } from '../../src/web/server.ts';
import { stylesheet } from '../../src/web/stylesheet.ts';
import { Trouble } from '../../src/web/trouble.ts';
import { openBrowser } from './browser.ts';
import { colourFaultsOf, faultsOf, pageForLooking } from './looked-over.ts';
import { NO_PAGE, pagesWalked, type WalkedPage } from './pages-walked.ts';
import { freePort } from './served-garden.ts';
import { emptyApp, type WalkedApp, walkedApp } from './walked-gardens.ts';

/** Each width is looked over whole in one light, and for its colours in the other. */
const SCREENS = [
  { name: 'phone', width: 390, whole: 'light', colours: 'dark' },
  { name: 'desk', width: 1200, whole: 'dark', colours: 'light' },
] as const;

let browser: Browser;
let walked: WalkedApp;
let pages: WalkedPage[];
let origin: string;
const closed: (() => unknown)[] = [];
beforeAll(async () => {
  const port = await freePort();
  [browser, walked] = await Promise.all([openBrowser(), walkedApp(port)]);
  origin = `http://127.0.0.1:${port}`;
  const server = await serveApp(walked, { hostname: '127.0.0.1', port });
  closed.push(
    () => server.close(),
    walked.close,
    () => browser.close(),
  );
  pages = await pagesWalked(walked);
}, 300_000);
afterAll(async () => {
  for (const close of closed) await close();
});

test('every route of the app is walked, or shows no page for a reason that is told', () => {
  const reached = new Set(pages.flatMap(({ route, leadsTo }) => [route, leadsTo]));
  expect(walked.routes.filter((route) => !reached.has(route) && NO_PAGE[route] === undefined)).toEqual([]);
  expect(Object.keys(NO_PAGE).filter((route) => !walked.routes.includes(route))).toEqual([]);
});

test('no page has a fault that axe-core finds, a script, or a drawing without name and table', async () => {
  const screens = await Promise.all(
    SCREENS.map(async (screen) => ({
      ...screen,
      page: await pageForLooking(browser, screen.width, screen.whole),
    })),
  );
  const faults: string[] = [];
  for (const walk of pages) {
    const looks = screens
      .filter(({ name }) => name === 'phone' || !isLikeOthers(walk))
      .map(async ({ page, name, whole, colours }) => {
        const at = `${walk.form === undefined ? '' : 'sent '}${walk.path} (${name}): `;
        const status = (await shown(page, origin, walk))?.status();
        if (status !== walk.status) faults.push(`${at}answered ${status}, not ${walk.status}`);
        const found = await faultsOf(page);
        await page.emulateMedia({ colorScheme: colours });
        found.push(...(await colourFaultsOf(page)));
        await page.emulateMedia({ colorScheme: whole });
        faults.push(...found.map((fault) => at + fault));
      });
    await Promise.all(looks);
  }
  expect(faults).toEqual([]);
}, 600_000);

test('nor has the page that stands where no garden is kept yet', async () => {
  const { app, close } = await emptyApp();
  closed.push(close);
  const answer = await app.request('/', { headers: { Host: '127.0.0.1:8137' } });
  expect(await faultsWhereSet(await answer.text())).toEqual([]);
});

test('nor have the pages of a work that goes on, and of one that came to nothing', async () => {
  const asked = { title: 'Reading the record', work: async () => '/', failed: '/form' };
  const trouble = new Trouble(422, 'That cannot be done', [
    { where: 'line 3', what: 'It is empty.', mend: 'Fill it.' },
  ]);
  const going = underWayPage({ asked, words: 'Reading 2,000 of 8,000 lines', share: 0.25 }, '/under-way/work');
  for (const html of [going, brokenOffPage(asked, trouble)])
    expect(await faultsWhereSet(String(await html))).toEqual([]);
});

/** One screen does for texts of the handbook, a form that came back, and what a garden with nothing in it has to show. */
function isLikeOthers({ route, path, form }: WalkedPage): boolean {
  return route === 'GET /handbook/:page' || form !== undefined || path.startsWith('/gardens/lone-bed/');
}

/** The faults of a page that no address leads to, in either light. */
async function faultsWhereSet(html: string): Promise<string[]> {
  const page = await pageForLooking(browser, 390, 'light');
  await page.goto('about:blank');
  await page.setContent(html.replace(/<link rel="stylesheet"[^>]*>/, () => `<style>${stylesheet}</style>`));
  const faults = await faultsOf(page);
  await page.emulateMedia({ colorScheme: 'dark' });
  return [...faults, ...(await colourFaultsOf(page))];
}

/** Opens a page, or sends a form to it from the page that is open; waits for what takes a while. */
async function shown(page: Page, home: string, { path, form }: WalkedPage): Promise<Response | null> {
  const answer = form === undefined ? await page.goto(home + path) : await sentFrom(page, path, form);
  if (!page.url().includes('/under-way/')) return answer;
  await page.waitForURL((url) => !url.pathname.startsWith('/under-way/'), { timeout: 120_000 });
  return page.reload();
}

async function sentFrom(page: Page, path: string, form: Readonly<Record<string, string>>) {
  const answer = page.waitForNavigation();
  await page.evaluate(`(() => {
    const form = document.body.appendChild(document.createElement('form'));
    Object.assign(form, { method: 'post', action: ${JSON.stringify(path)} });
    for (const [name, value] of Object.entries(${JSON.stringify(form)}))
      Object.assign(form.appendChild(document.createElement('input')), { type: 'hidden', name, value });
    form.submit();
  })()`);
  return answer;
}
