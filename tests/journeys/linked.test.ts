/**
 * Every link of every page leads somewhere, to the place on the page it names; and every date and every amount can be
 * asked why: it is a link to the reasons of its task, to what was told or to its rule, or one stands beside it.
 */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { addDays } from '../../src/measures/days.ts';
import {
  bedPath,
  compostPath,
  handbookPath,
  seasonEndPath,
  weekPath,
  yearPath,
} from '../../src/web/addresses/addresses.ts';
import { amountsOn } from './amounts-asked.ts';
import { AMOUNTS_EXCEPTED, AMOUNTS_ON } from './amounts-excepted.ts';
import { askedOn, pagesAsked } from './asked-walked.ts';
import { datesOn } from './dates-asked.ts';
import { DATES_EXCEPTED } from './dates-excepted.ts';
import { followedLinks, routeOf } from './followed-links.ts';
import { NO_PAGE, oneOfEachRoute } from './pages-walked.ts';
import { type WalkedApp, type WalkedGarden, walkedApp } from './walked-gardens.ts';

let walked: WalkedApp;
beforeAll(async () => {
  walked = await walkedApp();
}, 120_000);
afterAll(() => walked.close());

const DATES = { on: datesOn, excepted: DATES_EXCEPTED };
const AMOUNTS = { on: amountsOn, excepted: AMOUNTS_EXCEPTED };

const seen = new Map<string, Promise<{ status: number; html: string }>>();

/** A page, asked for once: where it leads on, the page it leads to. */
function shown(path: string): Promise<{ status: number; html: string }> {
  const known = seen.get(path) ?? opened(path);
  seen.set(path, known);
  return known;
}

async function opened(path: string): Promise<{ status: number; html: string }> {
  const answer = await walked.get(path);
  const leadsOn = answer.headers.get('location');
  if (leadsOn !== null) return shown(leadsOn);
  const isPage = (answer.headers.get('content-type') ?? '').startsWith('text/html');
  return { status: answer.status, html: isPage ? await answer.text() : '' };
}

interface Link {
  on: string;
  path: string;
  anchor: string | undefined;
}

function linksOn(on: string, html: string): Link[] {
  const hrefs = [...html.matchAll(/<(?:a|img|link)\s[^>]*?(?:href|src)="([^"]+)"/g)].map(([, href = '']) => href);
  return hrefs.flatMap((href) => {
    const url = new URL(href.replaceAll('&amp;', '&'), `http://own.invalid${on}`);
    if (url.host !== 'own.invalid' || url.protocol !== 'http:') return [];
    const anchor = url.hash === '' ? undefined : decodeURIComponent(url.hash.slice(1));
    return [{ on, path: url.pathname + url.search, anchor }];
  });
}

/** What is wrong with a link; nothing where it leads somewhere. A page that says why something cannot be is somewhere. */
async function deadOf({ on, path, anchor }: Link): Promise<string[]> {
  const { status, html } = await shown(path);
  if (status !== 200 && status !== 422) return [`${on} leads to ${path}: ${status}`];
  return anchor === undefined || html.includes(`id="${anchor}"`) ? [] : [`${on} leads to ${path}: no #${anchor} there`];
}

/** Every address that a page was shown for, and one of each kind of the others. */
async function deadAmong(links: readonly Link[]): Promise<string[]> {
  const named = new Map<string, Link>();
  for (const link of links) {
    const isShown = seen.has(link.path);
    const kind = isShown
      ? link.path
      : `${routeOf(link.path, walked.routes) ?? link.path} ${routeOf(link.on, walked.routes)}`;
    named.set(`${kind}#${link.anchor}`, link);
  }
  const dead: string[] = [];
  for (const link of named.values()) dead.push(...(await deadOf(link)));
  return dead;
}

async function pagesOf({ id }: WalkedGarden): Promise<string[]> {
  const within = new RegExp(`^/gardens/${id}(?:[/?]|$)`);
  const found = await followedLinks(walked, { from: [weekPath(id)], within });
  return found.filter(({ route }) => NO_PAGE[route] === undefined).map(({ path }) => path);
}

test('no link of the handbook or the bibliography is dead, to its last anchor', async () => {
  const { html } = await shown(handbookPath());
  const pages = [...html.matchAll(/href="(\/handbook\/[a-z-]+)"/g)].map(([, path = '']) => path);
  expect(pages.length).toBeGreaterThan(30);
  const links = await Promise.all(pages.map(async (path) => linksOn(path, (await shown(path)).html)));
  expect(await deadAmong(links.flat())).toEqual([]);
});

test.each(['demo', 'bare'] as const)(
  'no link on a page of the %s garden is dead',
  async (which) => {
    const paths = await pagesOf(walked.gardens[which]);
    expect(paths.length).toBeGreaterThan(20);
    const links = await Promise.all(paths.map(async (path) => linksOn(path, (await shown(path)).html)));
    expect(await deadAmong(links.flat())).toEqual([]);
  },
  120_000,
);

test('every task has reasons to be asked for, each with where it comes from', async () => {
  const { id, view } = walked.gardens.demo;
  const first = new Map(view.plan.tasks.map((task) => [`${task.kind} ${task.state}`, task]));
  for (const { key, reasons } of first.values()) {
    const { html } = await shown(`${weekPath(id)}/tasks/${key}`);
    const why = html.slice(html.indexOf('<section class="why" id="why">'));
    expect(html).toContain('<section class="why" id="why">');
    const sources = why.match(/<span class="under"><a href="\/(?:handbook\/sources#|gardens\/)/g) ?? [];
    expect(sources.length).toBeGreaterThanOrEqual(reasons.length);
  }
});

/** Keys of tasks that a page leads to the reasons of. */
async function tasksAskedOn(path: string): Promise<Set<string>> {
  const { html } = await shown(path);
  const hrefs = html.matchAll(/href="[^"]*?\/tasks\/([^"#]+)#why"/g);
  return new Set([...hrefs].map(([, key = '']) => decodeURIComponent(key)));
}

test('every date of a task can be asked why: of a week, of the year, of a bed, of a pile', async () => {
  const { id, view } = walked.gardens.demo;
  const { tasks, entries, today } = view.plan;
  const open = tasks.filter(({ state }) => state === 'open');
  for (const monday of ['2027-05-03', '2027-05-17']) {
    const asked = await tasksAskedOn(`${weekPath(id)}?week=${monday}`);
    const inWeek = entries.filter(({ day, state }) => state !== 'done' && day >= monday && day <= addDays(monday, 6));
    expect(inWeek.length).toBeGreaterThan(0);
    expect(inWeek.filter(({ keys }) => !keys.some((key) => asked.has(key)))).toEqual([]);
  }
  const year = await tasksAskedOn(yearPath(id));
  const drawn = open.filter(({ kind }) => ['sow-cover', 'cut-cover', 'topdress', 'fill-bed', 'set-out'].includes(kind));
  expect(drawn.length).toBeGreaterThan(5);
  expect(drawn.filter(({ key }) => !year.has(key)).map(({ key }) => key)).toEqual([]);
  let coversAsked = 0;
  for (const bed of view.garden.beds) {
    const asked = await tasksAskedOn(bedPath(id, bed.id));
    const covers = open.filter(({ subject }) => subject.type === 'stand' && subject.bedId === bed.id);
    expect(covers.filter(({ key }) => !asked.has(key)).map(({ key }) => key)).toEqual([]);
    coversAsked += covers.length;
  }
  expect(coversAsked).toBeGreaterThan(5);
  const yard = await tasksAskedOn(compostPath(id));
  const turns = open.filter(({ subject, day }) => subject.type === 'pile' && day >= today);
  expect(turns.length).toBeGreaterThan(0);
  expect(turns.some(({ key }) => yard.has(key))).toBe(true);
  const ends = (await shown(seasonEndPath(id))).html;
  expect(ends.match(/<ul class="fit-reasons">/g)?.length).toBeGreaterThan(3);
  const without = [...ends.matchAll(/<ul class="fit-reasons">(.*?)<\/ul>/gs)].filter(
    ([, rows = '']) => rows.split('<li>').length - 1 !== (rows.match(/<span class="under"><a href="/g)?.length ?? 0),
  );
  expect(without).toEqual([]);
});

test('every date on a page of each route is asked why where it stands', async () => {
  const pages = await pagesAsked(walked);
  const first = oneOfEachRoute(pages);
  expect(first.length).toBeGreaterThan(40);
  const { counts, unasked } = await askedOn(first, DATES, async (path) => (await shown(path)).html);
  console.log(`dates on ${first.length} pages:`, Object.fromEntries(counts));
  expect(unasked).toEqual([]);
  expect(counts.get('link')).toBeGreaterThan(200);
}, 120_000);

test('the page behind a link in mail tells why itself', async () => {
  const { answer = '' } = walked.gardens.demo;
  const { html } = await shown(answer);
  expect(datesOn(html).length).toBeGreaterThan(0);
  expect(html).toMatch(/<details class="whys"><summary>Why this date<\/summary><ul class="reasons"><li>/);
});

test('the walk tells a date with a way from one without', () => {
  const asked = (html: string) => datesOn(`<main>${html}</main>`).map((each) => each.asked);
  expect(asked('<p>Sown on May 4, 2027.</p>')).toEqual(['no']);
  expect(asked('<p>Sown on <a href="/gardens/g/tasks/sow/a#why">4 May 2027</a>.</p>')).toEqual(['link']);
  expect(asked('<p>Sown on <a href="/gardens/g/feeds">4 May</a>.</p>')).toEqual(['no']);
  expect(
    asked('<ul><li>Sown 4 May. <a href="/handbook/planting#plant.odds">Why</a></li><li>Cut 9 May.</li></ul>'),
  ).toEqual(['beside', 'no']);
  expect(
    asked(
      '<section><p class="whence"><a href="/gardens/g/climate">x</a></p><table><tr><td>May 4</td></tr></table></section><p>May 5</p>',
    ),
  ).toEqual(['beside', 'no']);
});

test('every amount on a page of each route is asked for where it stands', async () => {
  const pages = (await pagesAsked(walked)).filter(({ route }) => AMOUNTS_ON.test(route));
  const first = oneOfEachRoute(pages);
  expect(first.length).toBeGreaterThan(6);
  const { counts, unasked } = await askedOn(first, AMOUNTS, async (path) => (await shown(path)).html);
  console.log(`amounts on ${first.length} pages:`, Object.fromEntries(counts));
  expect(unasked).toEqual([]);
  expect(counts.get('beside')).toBeGreaterThan(50);
}, 120_000);

test('the walk tells an amount with a way from one without', () => {
  const asked = (html: string) => amountsOn(`<main>${html}</main>`).map(({ text, asked }) => [text, asked]);
  expect(asked('<p>Spread 13 mm, 8.3 cu ft in all.</p>')).toEqual([
    ['13 mm', 'no'],
    ['8.3 cu ft', 'no'],
  ]);
  expect(asked('<p>Sow 1 ¼ in deep at 41 °F. <a href="/handbook/planting#up.expected">Why</a></p>')).toEqual([
    ['1 ¼ in', 'beside'],
    ['41 °F', 'beside'],
  ]);
  expect(asked('<p>In 3 of 5 beds, 2 loads, on 4 May.</p>')).toEqual([]);
});
