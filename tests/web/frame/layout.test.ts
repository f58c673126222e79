import { describe, expect, test } from 'vitest';
import { GARDEN, sampleApp } from '../sample-garden.ts';

/** The words of the links inside a part of a page, in order. */
function linksIn(html: string, part: RegExp): string[] {
  const inside = part.exec(html)?.[1] ?? '';
  return [...inside.matchAll(/<a [^>]*>([^<]*)<\/a>/g)].map(([, words = '']) => words.trim());
}

const PAGES = /<nav aria-label="Pages"[^>]*>([\s\S]*?)<\/nav>/;
const TOLD = /<nav aria-label="Told"[^>]*>([\s\S]*?)<\/nav>/;
const FOOT = /<footer class="page-foot">([\s\S]*?)<\/footer>/;

describe('the head of a page', () => {
  test('leads to the eight pages of the year first, and to Report and History quietly', async () => {
    const { get } = await sampleApp();
    const html = await (await get(GARDEN)).text();
    expect(linksIn(html, PAGES)).toEqual([
      ...['This week', 'The year', 'Beds', 'Compost yard'],
      ...['Weather log', 'Season end', 'Feeds', 'Household'],
    ]);
    expect(linksIn(html, TOLD)).toEqual(['Report', 'History', 'The garden']);
  });

  test.each([
    ['', 'This week'],
    ['/year', 'The year'],
    ['/beds', 'Beds'],
    ['/beds/north', 'Beds'],
    ['/compost/mix', 'Compost yard'],
    ['/weather', 'Weather log'],
    ['/season-end', 'Season end'],
    ['/feeds', 'Feeds'],
    ['/household', 'Household'],
    ['/report/pile', 'Report'],
    ['/record', 'History'],
  ])('says on %s that this is %s, and on no other', async (path, name) => {
    const { get } = await sampleApp();
    const html = await (await get(`${GARDEN}${path}`)).text();
    const head = /<header[\s\S]*?<\/header>/.exec(html)?.[0] ?? '';
    const here = [...head.matchAll(/<a [^>]*aria-current="page"[^>]*>([^<]*)<\/a>/g)].map(([, words]) => words);
    expect(here).toEqual([name]);
  });

  test('can be passed over with the keyboard: the first link of all leads to what the page is about', async () => {
    const { get } = await sampleApp();
    const html = await (await get(GARDEN)).text();
    const [, first = ''] = /<body>\s*<a [^>]*href="#([^"]*)"/.exec(html) ?? [];
    expect(html).toContain(`<main id="${first}" tabindex="-1"`);
  });
});

describe('the foot of a page', () => {
  test('says in which units and order it is read, and offers the other', async () => {
    const { get } = await sampleApp();
    const foot = FOOT.exec(await (await get(GARDEN)).text())?.[1] ?? '';
    expect(foot).toContain('Read in inches and pounds, month first.');
    expect(foot).toMatch(/<button [^>]*value="metric"[^>]*>Read in metres and litres, day first<\/button>/);
    expect(foot).not.toContain('value="us"');
  });

  test('says so of the reader’s own choice, not of the garden’s units', async () => {
    const { get } = await sampleApp();
    const foot = FOOT.exec(await (await get(GARDEN, { Cookie: 'reading=metric' })).text())?.[1] ?? '';
    expect(foot).toContain('Read in metres and litres, day first.');
    expect(foot).toContain('value="us"');
  });

  test('leads back to the very page it was pressed on, with what was asked of it', async () => {
    const { get, send } = await sampleApp();
    const html = await (await get(`${GARDEN}?week=2027-05-12`)).text();
    const [, back = ''] = /name="back" value="([^"]*)"/.exec(html) ?? [];
    expect(back).toBe(`${GARDEN}?week=2027-05-12`);
    const answer = await send('/reading', { units: 'metric', back });
    expect(answer.headers.get('Location')).toBe(back);
  });

  test('offers both where a page is about no garden and nothing was chosen', async () => {
    const { get } = await sampleApp();
    const foot = FOOT.exec(await (await get('/gardens/nowhere')).text())?.[1] ?? '';
    expect(foot).toContain('value="us"');
    expect(foot).toContain('value="metric"');
    expect(foot).not.toContain('Read in inches and pounds, month first.');
  });

  test('has no switch under a form that came back, for what was typed there would be lost', async () => {
    const { send } = await sampleApp();
    const answer = await send(`${GARDEN}/household`, { name: '' });
    const html = await answer.text();
    expect(answer.status).toBe(422);
    expect(html).toContain('class="page-foot"');
    expect(html).not.toContain('action="/reading"');
  });

  test('has no switch on a page whose address holds a secret: no page repeats one', async () => {
    const { get } = await sampleApp();
    const secret = 'w'.repeat(43);
    const html = await (await get(`/feed/${secret}`)).text();
    expect(html).not.toContain(secret);
    expect(html).not.toContain('action="/reading"');
  });

  test('tells how a page is printed, on the page itself and not on paper', async () => {
    const { get } = await sampleApp();
    expect(FOOT.exec(await (await get(`${GARDEN}/year`)).text())?.[1]).toContain('Prints in black');
  });
});

test('a page opened from the mail leads nowhere else: no other pages, no switch', async () => {
  const { get } = await sampleApp();
  const html = await (await get('/answer/no-such-link')).text();
  expect(html).not.toContain('<nav');
  expect(html).not.toContain('<footer');
  expect(html).not.toContain('action="/reading"');
});
