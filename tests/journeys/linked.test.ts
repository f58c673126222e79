/**
 * Every link of every page leads somewhere, to the place on the page it names; and every date of a task can be asked why.
 */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { addDays } from '../../src/measures/days.ts';
import {
  bedPath,
  compostPath,
  handbookPath,
  reportPath,
  seasonEndPath,
  weekPath,
  yearPath,
} from '../../src/web/addresses.ts';
import { followedLinks, routeOf } from './followed-links.ts';
import { NO_PAGE } from './pages-walked.ts';
import { type WalkedApp, type WalkedGarden, walkedApp } from './walked-gardens.ts';

let walked: WalkedApp;
beforeAll(async () => {
  walked = await walkedApp();
}, 60_000);
afterAll(() => walked.close());

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
async function askedOn(path: string): Promise<Set<string>> {
  const { html } = await shown(path);
  const hrefs = html.matchAll(/href="[^"]*?\/tasks\/([^"#]+)#why"/g);
  return new Set([...hrefs].map(([, key = '']) => decodeURIComponent(key)));
}

test('every date of a task can be asked why: of a week, of the year, of a bed, of a pile', async () => {
  const { id, view } = walked.gardens.demo;
  const { tasks, entries, today } = view.plan;
  const open = tasks.filter(({ state }) => state === 'open');
  for (const monday of ['2027-05-03', '2027-05-17']) {
    const asked = await askedOn(`${weekPath(id)}?week=${monday}`);
    const inWeek = entries.filter(({ day, state }) => state !== 'done' && day >= monday && day <= addDays(monday, 6));
    expect(inWeek.length).toBeGreaterThan(0);
    expect(inWeek.filter(({ keys }) => !keys.some((key) => asked.has(key)))).toEqual([]);
  }
  const year = await askedOn(yearPath(id));
  const drawn = open.filter(({ kind }) => ['sow-cover', 'cut-cover', 'topdress', 'fill-bed', 'set-out'].includes(kind));
  expect(drawn.length).toBeGreaterThan(5);
  expect(drawn.filter(({ key }) => !year.has(key)).map(({ key }) => key)).toEqual([]);
  let coversAsked = 0;
  for (const bed of view.garden.beds) {
    const asked = await askedOn(bedPath(id, bed.id));
    const covers = open.filter(({ subject }) => subject.type === 'stand' && subject.bedId === bed.id);
    expect(covers.filter(({ key }) => !asked.has(key)).map(({ key }) => key)).toEqual([]);
    coversAsked += covers.length;
  }
  expect(coversAsked).toBeGreaterThan(5);
  const yard = await askedOn(compostPath(id));
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

const MONTH = '(?:January|February|March|April|May|June|July|August|September|October|November|December)';
const DATE = new RegExp(`${MONTH} \\d{1,2}(?!\\d)(?:, \\d{4})?|\\d{1,2} ${MONTH}(?: \\d{4})?`, 'g');
/** Where a date is asked why: at a task, at a rule's row, at what was told, at the climate. */
const WAY = /href="[^"]*(?:#why|\/handbook\/[a-z-]+#|\/edit\/|\/history|\/undo|#told|\/climate|\/delete)/;

/** The dates a page prints that lead nowhere: in no link, and in no line of a list that has the way to its own source. */
function unasked(html: string): string[] {
  const main = /<main[\s\S]*<\/main>/.exec(html)?.[0] ?? '';
  const printed = main
    .replace(/<svg[\s\S]*?<\/svg>|<form[\s\S]*?<\/form>/g, '')
    // The stretch a drawing shows is chosen by nobody's rule.
    .replace(/<caption>[\s\S]*?<\/caption>|aria-label="[^"]*"/g, '')
    .replace(/<li>(?:(?!<li>)[\s\S])*?<\/li>/g, (line) => (WAY.test(line) ? '' : line));
  const asked = new Set(
    [...printed.matchAll(/<a [^>]*>([\s\S]*?)<\/a>/g)].flatMap(([, words = '']) => words.match(DATE) ?? []),
  );
  // A fold's title says again what stands in it: there it has its way.
  const without = printed.replace(/<a [^>]*>[\s\S]*?<\/a>/g, '').replace(/<summary>[\s\S]*?<\/summary>/g, (title) => {
    return (title.match(DATE) ?? []).filter((day) => !asked.has(day)).join(' ');
  });
  return [...without.matchAll(DATE)].map((found) =>
    without.slice(Math.max(0, found.index - 60), found.index + found[0].length).replace(/<[^>]+>|\s+/g, ' '),
  );
}

test('every date of Season end, The year, the beds and the previews of the demo garden has a way to why', async () => {
  const { id, view } = walked.gardens.demo;
  const ends = await shown(seasonEndPath(id));
  const choose = /href="([^"]*\/choose\?[^"]+)"/.exec(ends.html)?.[1]?.replaceAll('&amp;', '&') ?? '';
  const [planting] = view.garden.plantings;
  const disease = new URLSearchParams({
    bed: planting?.bedId ?? '',
    crop: planting?.cropId ?? '',
    disease: 'clubroot',
    on: view.plan.today,
  });
  const paths = [
    seasonEndPath(id),
    yearPath(id),
    ...view.garden.beds.slice(0, 4).map((bed) => bedPath(id, bed.id)),
    choose,
    `${reportPath(id, 'disease')}?${disease}`,
  ];
  for (const path of paths) {
    const { status, html } = await shown(path);
    expect([path, status]).toEqual([path, 200]);
    expect([path, html.match(/class="why-date"/g)?.length ?? 0]).not.toEqual([path, 0]);
    expect([path, unasked(html)]).toEqual([path, []]);
  }
}, 60_000);
