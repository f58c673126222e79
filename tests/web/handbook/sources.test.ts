import { expect, test } from 'vitest';
import { sources } from '../../../src/handbook/sources.ts';
import { OTHER_SOURCES, SOURCE_PARTS, sourceHref } from '../../../src/web/handbook/docs/source-kinds.ts';
import { sampleApp } from '../sample-garden.ts';

async function bibliography(): Promise<string> {
  const { get } = await sampleApp(null);
  return await (await get('/handbook/sources')).text();
}

test('every entry of the bibliography has its anchor, once', async () => {
  const text = await bibliography();
  const anchors = [...text.matchAll(/<div id="([^"]+)"/g)].map(([, id]) => id);
  const others = Object.values(OTHER_SOURCES).map(({ anchor }) => anchor);
  expect([...anchors].sort()).toEqual([...others, ...sources.map(({ id }) => id)].sort());
});

test('every table of books has its part', () => {
  const prefixes = new Set(sources.map(({ id }) => id.split(':')[0]));
  expect([...prefixes].sort()).toEqual(SOURCE_PARTS.map(({ prefix }) => prefix as string).sort());
});

test('what rests on no book says what it rests on', async () => {
  const text = await bibliography();
  expect(text).toMatch(/<div id="from-memory"><dt>from memory<\/dt><dd>Recalled and not looked up/);
  expect(text).toMatch(/<div id="house-default"><dt>house default<\/dt><dd>Chosen here/);
});

test('how much of a book was read stands with it', async () => {
  const text = await bibliography();
  expect(text).toMatch(/id="compost:S2".*?Table 3 of an agricultural composting factsheet.*?Published; read in part/);
});

test('a reason that rests on the climate leads to the climate of its garden', () => {
  expect(sourceHref("the garden's climate", 'mill-row')).toBe('/gardens/mill-row/climate');
  expect(sourceHref('veg:V12', 'mill-row')).toBe('/handbook/sources#veg:V12');
  expect(sourceHref('house default', 'mill-row')).toBe('/handbook/sources#house-default');
});

test('what leans on a book stands with it: its rules, and the rows of the tables', async () => {
  const text = await bibliography();
  const entry = (id: string) => text.slice(text.indexOf(`<div id="${id}">`)).split('</div>')[0] ?? '';
  // The rotation page writes the return intervals beside veg:V36; the handbook's oats were written from cover:S4c.
  expect(entry('veg:V36')).toMatch(/Rules: .*href="\/handbook\/[a-z-]+#[a-z.-]+"/);
  expect(entry('cover:S4c')).toMatch(/Cover crops: .*oats/i);
});
