/**
 * Every page of the app opened in a real browser, and what axe-core finds on each.
 */
import type { Browser, Page, Response } from 'playwright-core';
import { serveApp } from '../../src/web/server.ts';
import { openBrowser } from './browser.ts';
import { colourFaultsOf, faultsOf, pageForLooking } from './looked-over.ts';
import { pagesWalked, type WalkedPage } from './pages-walked.ts';
import { freePort } from './served-garden.ts';
import { type WalkedApp, walkedApp } from './walked-gardens.ts';

/** Each width is looked over whole in one light, and may be for its colours in the other. */
const SCREENS = [
  { name: 'phone', width: 390, whole: 'light', colours: 'dark' },
  { name: 'desk', width: 1200, whole: 'dark', colours: 'light' },
] as const;

/** The app served, its pages, and a browser to open them in. */
export interface AxeWalk {
  browser: Browser;
  walked: WalkedApp;
  pages: WalkedPage[];
  origin: string;
  close: () => Promise<void>;
}

/** Serves the gardens that are walked, and finds all their pages. */
export async function openWalk(): Promise<AxeWalk> {
  const port = await freePort();
  const [browser, walked] = await Promise.all([openBrowser(), walkedApp(port)]);
  const server = await serveApp(walked, { hostname: '127.0.0.1', port });
  const close = async () => {
    server.close();
    await walked.close();
    await browser.close();
  };
  return { browser, walked, pages: await pagesWalked(walked), origin: `http://127.0.0.1:${port}`, close };
}

/** How much of a page is looked at: all but its colours on the phone, all on the phone, on each width in its own light, or in both. */
export type Looked = 'phone, no colours' | 'phone' | 'each width' | 'each width, both lights';

/** What is wrong on some pages. */
export async function faultsOnPages(
  { browser, origin }: AxeWalk,
  pages: readonly WalkedPage[],
  lookedAt: (page: WalkedPage) => Looked,
): Promise<string[]> {
  const screens = await Promise.all(
    SCREENS.map(async (screen) => ({ ...screen, page: await pageForLooking(browser, screen.width, screen.whole) })),
  );
  const faults: string[] = [];
  for (const walk of pages) {
    const looked = lookedAt(walk);
    const looks = screens
      .filter(({ name }) => name === 'phone' || looked.startsWith('each width'))
      .map(async ({ page, name, whole, colours }) => {
        const at = `${walk.form === undefined ? '' : 'sent '}${walk.path} (${name}): `;
        const status = (await shown(page, origin, walk))?.status();
        if (status !== walk.status) faults.push(`${at}answered ${status}, not ${walk.status}`);
        const found = await faultsOf(page, { colours: looked !== 'phone, no colours' });
        if (looked === 'each width, both lights') {
          await page.emulateMedia({ colorScheme: colours });
          found.push(...(await colourFaultsOf(page)));
          await page.emulateMedia({ colorScheme: whole });
        }
        faults.push(...found.map((fault) => at + fault));
      });
    await Promise.all(looks);
  }
  return faults;
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
