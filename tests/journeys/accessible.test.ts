/**
 * One page of every route of the app in a real browser. Colours are looked at on the main pages, on a phone by day and a desk by
 * night, and on one page of each other make; every page whole, at every width and in either light: tests/long/accessible.test.ts.
 */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { Trouble } from '../../src/web/requests/trouble.ts';
import { stylesheet } from '../../src/web/styles/stylesheet.ts';
import { brokenOffPage, underWayPage } from '../../src/web/under-way/under-way-page.tsx';
import { type AxeWalk, faultsOnPages, type Looked, openWalk } from './axe-walk.ts';
import { colourFaultsOf, faultsOf, pageForLooking } from './looked-over.ts';
import { NO_PAGE, type WalkedPage } from './pages-walked.ts';
import { emptyApp } from './walked-gardens.ts';

let walk: AxeWalk;
const closed: (() => unknown)[] = [];
beforeAll(async () => {
  walk = await openWalk();
  closed.push(walk.close);
}, 300_000);
afterAll(async () => {
  for (const close of closed) await close();
});

test('every route of the app is walked, or shows no page for a reason that is told', () => {
  const reached = new Set(walk.pages.flatMap(({ route, leadsTo }) => [route, leadsTo]));
  expect(walk.walked.routes.filter((route) => !reached.has(route) && NO_PAGE[route] === undefined)).toEqual([]);
  expect(Object.keys(NO_PAGE).filter((route) => !walk.walked.routes.includes(route))).toEqual([]);
});

test('no page has a fault that axe-core finds, a script, or a drawing without name and table', async () => {
  const pages = oneOfEachRoute(walk.pages);
  expect(pages.length).toBeGreaterThan(60);
  expect(await faultsOnPages(walk, pages, lookedAt(pages))).toEqual([]);
}, 300_000);

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

/** The pages named in the head of every page: looked at on the desk too. */
const MAIN_PAGE =
  /^\/gardens\/quillet-lane(?:\/(?:year|beds|compost|weather|season-end|feeds|household|climate|garden))?$/;

/** Pages of another make than the main ones, the first of each: a task, a change, a form refused, a step, a text, and none. */
const OTHER_MAKES: readonly ((page: WalkedPage) => boolean)[] = [
  ({ route }) => route.startsWith('GET /gardens/:gardenId/tasks/'),
  ({ route }) => route.startsWith('GET /gardens/:gardenId/edit/'),
  ({ route, status }) => route.startsWith('POST') && status === 422,
  ({ route, status }) => route.startsWith('GET /set-up/') && status === 200,
  ({ route }) => /^GET \/handbook\/:/.test(route),
  ({ status }) => status === 404,
];

function lookedAt(pages: readonly WalkedPage[]): (page: WalkedPage) => Looked {
  const makes = OTHER_MAKES.map((isOfMake) => pages.find(isOfMake));
  expect(makes).not.toContain(undefined);
  return (page) => {
    if (page.form === undefined && MAIN_PAGE.test(page.path)) return 'each width';
    return makes.includes(page) ? 'phone' : 'phone, no colours';
  };
}

/** The first page of each route, by the way it answers; what is sent needs the page before it open, and so stays whole. */
function oneOfEachRoute(pages: readonly WalkedPage[]): WalkedPage[] {
  const seen = new Set<string>();
  return pages.filter(({ route, status, form }) => {
    const name = `${route} ${status} ${form === undefined ? '' : 'sent'}`;
    const isNew = !seen.has(name);
    seen.add(name);
    return isNew;
  });
}

/** The faults of a page that no address leads to, in either light. */
async function faultsWhereSet(html: string): Promise<string[]> {
  const page = await pageForLooking(walk.browser, 390, 'light');
  await page.goto('about:blank');
  await page.setContent(html.replace(/<link rel="stylesheet"[^>]*>/, () => `<style>${stylesheet}</style>`));
  const faults = await faultsOf(page);
  await page.emulateMedia({ colorScheme: 'dark' });
  return [...faults, ...(await colourFaultsOf(page))];
}
