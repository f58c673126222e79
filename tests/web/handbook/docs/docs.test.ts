/**
 * The docs as the program serves them.
 */
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { PRACTICE_NAMES } from '../../../../src/garden/practice-names.ts';
import { practices } from '../../../../src/practices/catalogue.ts';
import { PRACTICE_DOCS } from '../../../../src/web/frame/practice-docs.ts';
import { handbookParts } from '../../../../src/web/handbook/docs/contents.ts';
import { docs } from '../../../../src/web/handbook/docs/docs.ts';
import { GARDEN, sampleApp } from '../../sample-garden.ts';

const files = readdirSync(new URL('../../../../docs', import.meta.url)).filter((file) => file.endsWith('.md'));
const names = files.map((file) => file.slice(0, -3));

describe('the handbook', () => {
  it('has every page of the docs in its contents, once', () => {
    expect(
      handbookParts(names)
        .flatMap(({ pages }) => pages)
        .sort(),
    ).toEqual([...names].sort());
    expect(
      handbookParts([...names, 'a-new-page'])
        .at(-1)
        ?.pages.at(-1),
    ).toBe('a-new-page');
  });

  it('tells what each page is about, in whole sentences without marks', () => {
    const abouts = [...docs().pages.values()].map(({ about }) => about);
    expect(abouts.filter((about) => !/^[A-Z][^`*[\]]+[.:]$/.test(about))).toEqual([]);
  });

  it('begins with what is done in the garden', async () => {
    const { get } = await sampleApp(null);
    const text = await (await get('/handbook')).text();
    expect(text.indexOf('href="/handbook/planting"')).toBeLessThan(text.indexOf('href="/handbook/climate"'));
    expect(text.indexOf('href="/handbook/climate"')).toBeLessThan(text.indexOf('href="/handbook/commands"'));
  });

  it.each(names)('shows %s whole: its heading, its tables, its code', async (name) => {
    const { get } = await sampleApp(null);
    const answer = await get(`/handbook/${name}`);
    const text = await answer.text();
    expect(answer.status).toBe(200);
    expect(text.match(/<h1/g)).toHaveLength(1);
    expect(text).toContain('<nav aria-label="Handbook">');
    expect(text).not.toMatch(/^\|.*\|$/m);
    expect(text).not.toMatch(/\]\([a-z#]/);
    expect(text).not.toContain('.md"');
  });

  it('has a page for each practice, and on it each of its rules to point at', () => {
    expect(Object.keys(PRACTICE_DOCS).sort()).toEqual([...PRACTICE_NAMES].sort());
    for (const { name, sentences } of practices) {
      const html = docs().pages.get(PRACTICE_DOCS[name])?.html ?? '';
      expect(Object.keys(sentences).filter((rule) => !html.includes(`<tr id="${rule}">`))).toEqual([]);
    }
  });

  it('says what there is where a page is asked for that is not there', async () => {
    const { get } = await sampleApp(null);
    const answer = await get('/handbook/orchids');
    const text = await answer.text();
    expect(answer.status).toBe(404);
    expect(text).toContain('no page “orchids”');
    expect(text).toContain('href="/handbook/mulching"');
  });

  it.each(['/handbook/..%2F..%2Fpackage', '/handbook/images/..%2Fpages.md', '/handbook/%2e%2e%2fREADME'])(
    'gives nothing away that is not in the folder: %s',
    async (path) => {
      const { get } = await sampleApp(null);
      const answer = await get(path);
      expect(answer.status).toBe(404);
      expect(await answer.text()).not.toContain('devDependencies');
    },
  );

  it('serves its pictures as such', async () => {
    const { get } = await sampleApp(null);
    for (const file of docs().images.keys()) {
      const answer = await get(`/handbook/images/${file}`);
      expect(answer.headers.get('content-type')).toBe('image/png');
      expect((await answer.arrayBuffer()).byteLength).toBeGreaterThan(1000);
    }
  });

  it('is one click from the work itself: its practice, in the week and on its page', async () => {
    const { get } = await sampleApp();
    const week = await (await get(GARDEN)).text();
    expect(week).toContain('<a href="/handbook/cover-cropping">');
    const [, task] = /<p class="entry-title"><a href="([^"]+)"/.exec(week) ?? [];
    expect(await (await get(task ?? '')).text()).toMatch(/class="practice [^>]+>.*?<a href="\/handbook\/[a-z-]+">/);
  });
});

describe('a reader who comes from a garden', () => {
  const HOST = 'http://127.0.0.1:8137';

  it('keeps its head and its links through the handbook, and finds the way back', async () => {
    const { get } = await sampleApp();
    const led = await get('/handbook/planting', { Referer: `${HOST}${GARDEN}/beds` });
    expect(led.status).toBe(302);
    expect(led.headers.get('location')).toBe('/handbook/planting?garden=mill-row');
    const text = await (await get('/handbook/planting?garden=mill-row')).text();
    expect(text).toContain(`<a class="garden-name" href="${GARDEN}">Mill Row</a>`);
    expect(text).toContain('<nav aria-label="Pages" class="page-links">');
    const within = [...text.matchAll(/<a [^>]*href="(\/handbook[^"]*)"/g)].map(([, href = '']) => href);
    expect(within.length).toBeGreaterThan(10);
    expect(within.filter((href) => !/^\/handbook(?:\/[a-z-]+)?\?garden=mill-row(?:#|$)/.test(href))).toEqual([]);
  });

  it.each(['/handbook/planting?garden=nobodys', '/handbook/sources?garden=../x'])(
    'from no garden that is kept here reads it all the same: %s',
    async (path) => {
      const { get } = await sampleApp();
      const answer = await get(path);
      expect(answer.status).toBe(200);
      expect(await answer.text()).toContain('<a class="garden-name" href="/">Loamtide</a>');
    },
  );

  it('is not led on by a page of another site', async () => {
    const { get } = await sampleApp();
    const answer = await get('/handbook/planting', { Referer: `https://elsewhere.example${GARDEN}` });
    expect(answer.status).toBe(200);
  });
});

describe('what a gardener reads', () => {
  const gardeners = handbookParts(names)
    .slice(0, 2)
    .flatMap(({ pages }) => pages)
    .concat('how-a-day-is-chosen');

  it.each(gardeners)('%s keeps commands, files and settings to its part for contributors, at the end', (name) => {
    const [read = ''] = (docs().pages.get(name)?.html ?? '').split('<details class="for-contributors">');
    expect(read.match(/<code>(?:loamtide|npm|src\/|LOAMTIDE_|\/|[?&])[^<]*/g) ?? []).toEqual([]);
    expect(read).not.toMatch(/src\/[a-z]+\//);
  });

  it('meets no name of a rule and no key of a task in the tables of a practice', () => {
    const shown = practices.flatMap(({ name, sentences }) => {
      const [read = ''] = (docs().pages.get(PRACTICE_DOCS[name])?.html ?? '').split(
        '<details class="for-contributors">',
      );
      return Object.keys(sentences).filter((rule) => read.includes(`<td><code>${rule}</code>`));
    });
    expect(shown).toEqual([]);
  });
});
