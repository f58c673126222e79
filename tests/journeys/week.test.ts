import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { openBrowser } from './browser.ts';
import { servedElsewhere, servedGarden } from './served-garden.ts';

const PHONE = { width: 390, height: 844 };
const DESK = { width: 1200, height: 900 };

const PATHS = [
  '/',
  '/gardens/mill-row?week=2027-05-31',
  '/gardens/mill-row/tasks/cover-cut/stand:rye-north',
  '/gardens/mill-row/tasks/pile-turn/pile:spring-pile/turn:2',
  '/gardens/mill-row/feeds',
  '/gardens/mill-row/history',
  '/gardens/mill-row/undo',
  '/gardens/mill-row/report/away',
  '/gardens/mill-row/report/away?from=2027-04-22&to=2027-05-16',
  '/gardens/mill-row/away-sheet',
  '/nowhere',
];

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** A page with nothing remembered, closed when the test has ended. */
async function freshPage(options: BrowserContextOptions = {}): Promise<Page> {
  const page = await browser.newPage(options);
  onTestFinished(() => page.close());
  return page;
}

test('a gardener opens the week, marks a task done, sees it done and takes it back, without any script', async () => {
  const { origin } = await servedGarden();
  const page = await freshPage({ viewport: PHONE, javaScriptEnabled: false });

  await page.goto(origin);
  const title = 'Clear the spinach from Wall bed, leave the roots';
  await page.locator('.entry-title').getByRole('link', { name: title }).click();
  expect(await page.locator('h1').textContent()).toBe(title);

  await page.getByLabel('Done on').fill('2027-04-19');
  await page.getByRole('button', { name: 'Mark done' }).click();
  expect(await page.locator('.settled').textContent()).toContain('It is done.');

  await page.getByRole('link', { name: 'This week' }).click();
  expect(await page.locator('.entry.done').textContent()).toContain(title);

  await page.getByRole('link', { name: title }).click();
  await page.getByRole('link', { name: 'Take that back' }).click();
  expect(await page.locator('.about').textContent()).toContain(`Done on April 19: ${title}`);
  await page.getByRole('button', { name: 'Take it back' }).click();
  expect(await page.locator('.ledger').textContent()).toContain('Took back entry 2');

  await page.getByRole('link', { name: 'This week' }).click();
  expect(await page.locator('.entry.done').count()).toBe(0);
  expect(await page.locator('.entry.open').getByRole('link', { name: title }).count()).toBe(1);
});

test('a gardener pins a day, skips a bed, and makes and revokes a feed', async () => {
  const { origin, steward } = await servedGarden();
  const page = await freshPage({ viewport: DESK });

  await page.goto(`${origin}/gardens/mill-row/tasks/cover-cut/stand:rye-north`);
  await page.getByLabel('Pin to').fill('2027-04-29');
  await page.getByRole('button', { name: 'Pin' }).click();
  expect(await page.locator('.task-date').textContent()).toContain('April 29');
  await page.getByRole('button', { name: 'Let it move again' }).click();
  await page.getByRole('button', { name: 'Skip it' }).click();
  expect(await page.locator('.settled').textContent()).toContain('It was skipped');

  await page.getByRole('link', { name: 'Feeds' }).click();
  await page.getByLabel('Whose').fill('kitchen tablet');
  await page.getByRole('button', { name: 'Make a feed' }).click();
  const address = (await page.locator('.address').textContent()) ?? '';
  const feed = await fetch(address);
  expect([feed.status, feed.headers.get('content-type')]).toEqual([200, 'text/calendar; charset=utf-8']);
  await page.getByRole('link', { name: 'Revoke' }).click();
  await page.getByRole('button', { name: 'Revoke it' }).click();
  const closed = await fetch(address);
  expect([closed.status, (await closed.text()).match(/BEGIN:VEVENT/g)?.length]).toEqual([200, 1]);
  expect((await steward.view('mill-row')).ledger.map(({ fact }) => fact.kind)).toEqual([
    'garden-imported',
    'day-pinned',
    'day-unpinned',
    'tasks-skipped',
  ]);
});

test('every page fits a phone and a desk, loads nothing from elsewhere and breaks no rule of its own', async () => {
  const { origin } = await servedGarden();
  for (const viewport of [PHONE, DESK]) {
    const page = await freshPage({ viewport });
    const complaints = complaintsOf(page);
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    for (const path of PATHS) {
      await page.goto(`${origin}${path}`);
      const widths = await page.evaluate('[document.documentElement.scrollWidth, innerWidth]');
      expect([path, widths]).toEqual([path, [viewport.width, viewport.width]]);
    }
    expect(asked.filter((url) => !url.startsWith(origin) && !url.startsWith('data:'))).toEqual([]);
    expect(complaints).toEqual([]);
  }
});

test('the week prints on one sheet', async () => {
  const { origin } = await servedGarden();
  const page = await freshPage({ viewport: DESK });
  await page.goto(origin);
  for (const format of ['A4', 'Letter']) {
    const sheets = (await page.pdf({ format })).toString('latin1').match(/\/Type\s*\/Page\b/g);
    expect([format, sheets?.length]).toEqual([format, 1]);
  }
});

test('another site cannot mark anything, even one on this computer', async () => {
  const { origin, steward } = await servedGarden();
  const target = `${origin}/gardens/mill-row/tasks/cover-cut/stand:rye-north`;
  const elsewhere = await servedElsewhere(
    `<form method="post" action="${target}"><input name="do" value="skip"><button>Look</button></form>`,
  );
  const page = await freshPage();
  await page.goto(elsewhere);
  await page.getByRole('button', { name: 'Look' }).click();
  expect(await page.locator('h1').textContent()).toBe('Nothing was changed');
  expect((await steward.view('mill-row')).ledger).toHaveLength(1);
});

/** What the browser holds against a page: forbidden styles or scripts, and faults. A 404 asked for is none. */
function complaintsOf(page: Page): string[] {
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error' && !message.text().includes('404')) complaints.push(message.text());
  });
  return complaints;
}
