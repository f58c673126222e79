import { describe, expect, test } from 'vitest';
import type { ListLinks } from '../../src/digest/list-links.ts';
import { weekListHtml } from '../../src/digest/week-html.ts';
import { weekList } from '../../src/digest/week-list.ts';
import { hollowLane, planOf, type Wanted } from './example.ts';

const SUNDAY = '2027-04-18';
const NASTY = `<b>&"'`;

const sowing: Wanted = {
  key: 'sow/north',
  title: 'Sow oats in North bed',
  window: ['2027-04-19', '2027-04-21', '2027-04-25'],
  supplies: [{ what: 'oat seed', amount: { value: 120, unit: 'g' } }],
  cautions: ['Seed dust: wear a mask.'],
  effortMinutes: 35,
};

const LINKS: ListLinks = {
  answer: (key, answer) => `https://garden.example/answer/${key.replaceAll('/', '-')}?as=${answer}&x=1`,
  stop: 'https://garden.example/stop/abc',
};

function mailOf(wanted: readonly Wanted[], links?: ListLinks, garden = hollowLane): string {
  return weekListHtml(weekList(planOf(SUNDAY, wanted, undefined, garden), garden, '2027-04-19'), 'metric', links);
}

/** The words of a document, as a reader without any styles meets them. */
function wordsOf(html: string): string {
  return html
    .replace(/<head>.*<\/head>/s, '')
    .replace(/<[^>]+>/g, '')
    .replace(/\s+/g, ' ')
    .trim();
}

test('the words of a small week read so', () => {
  expect(wordsOf(mailOf([sowing]))).toBe(
    'Hollow Lane Week of 19 to 25 April 2027 35 min to do, of the 2 h a week kept for the garden. ' +
      'Wednesday 21 April Cover crops, 35 min Sow oats in North bed Last day 25 April. Take care. Seed dust: wear a mask. ' +
      'To have at hand oat seed 120 g',
  );
});

test('the document names its language, its title and both colour schemes, and fetches nothing', () => {
  const html = mailOf([sowing], LINKS);
  expect(html).toMatch(/^<!DOCTYPE html>\n<html lang="en">/);
  expect(html).toContain('<title>Hollow Lane: week of 19 to 25 April 2027</title>');
  expect(html).toContain('<meta name="color-scheme" content="light dark">');
  expect(html).not.toMatch(/<(script|img|link|iframe|style|form|object)\b|src=|url\(|@import/i);
});

test('names and titles cannot become markup', () => {
  const garden = { ...hollowLane, name: NASTY };
  const html = mailOf([{ ...sowing, title: NASTY, cautions: [NASTY], supplies: [{ what: NASTY }] }], LINKS, garden);
  expect(html).not.toContain('<b>');
  expect(html.match(/&lt;b&gt;&amp;&quot;&#39;/g)?.length).toBeGreaterThanOrEqual(5);
});

describe('answers', () => {
  test('stand under each open entry where there are links, and the end of the mail at its foot', () => {
    const html = mailOf([sowing], LINKS);
    const hrefs = [...html.matchAll(/href="([^"]+)"/g)].map(([, href]) => href);
    expect(hrefs).toEqual([
      'https://garden.example/answer/sow-north?as=done&amp;x=1',
      'https://garden.example/answer/sow-north?as=not-yet&amp;x=1',
      'https://garden.example/answer/sow-north?as=skip&amp;x=1',
      'https://garden.example/stop/abc',
    ]);
    expect(wordsOf(html)).toContain('Done Not yet Skip');
  });

  test('are left out without links', () => {
    expect(mailOf([sowing])).not.toContain('href=');
  });

  test('are not asked of what is past mending', () => {
    const lapsed: Wanted = { ...sowing, window: ['2027-04-12', '2027-04-14', '2027-04-17'] };
    const plan = planOf(SUNDAY, [lapsed]);
    const html = weekListHtml(weekList(plan, hollowLane, SUNDAY), 'metric', LINKS);
    expect(html).toContain('Sow oats in North bed');
    expect(html).not.toContain('/answer/');
  });
});
