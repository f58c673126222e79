import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { ListLinks } from '../../src/digest/list-links.ts';
import { weekListHtml } from '../../src/digest/week-html.ts';
import { isToDo, type WeekList, weekList } from '../../src/digest/week-list.ts';
import { readableIn } from '../../src/measures/quantity.ts';
import { demoView } from '../demo-data/demo-plan.ts';
import { openBrowser } from './browser.ts';

/** As long as signed addresses are. */
const LINKS: ListLinks = {
  answer: (key, answer) => `https://garden.example/answer/${encodeURIComponent(key)}${'q'.repeat(120)}?as=${answer}`,
  stop: 'https://garden.example/stop/qqq',
};

let browser: Browser;
let list: WeekList;
let html: string;
beforeAll(async () => {
  const [opened, { garden, plan }] = await Promise.all([openBrowser(), demoView('2027-09-06')]);
  browser = opened;
  list = weekList(plan, garden, '2027-09-06');
  html = weekListHtml(list, garden.place.units, LINKS);
}, 60_000);
afterAll(() => browser.close());

const UNSTYLED = () => html.replace(/ style="[^"]*"/g, '');

test('the mail is no wider than its reader, asks for nothing, and has answers a thumb can press', async () => {
  for (const width of [320, 390, 600, 1200]) {
    const page = await browser.newPage({ viewport: { width, height: 800 }, javaScriptEnabled: false });
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await page.setContent(html);
    expect(await page.locator('body').evaluate((body) => body.scrollWidth)).toBeLessThanOrEqual(width);
    // Apple's guidelines and WCAG 2.2 (2.5.5, enhanced) ask for 44 px, from memory.
    expect(
      (
        await page
          .getByRole('link', { name: /^Not yet/ })
          .first()
          .boundingBox()
      )?.height,
    ).toBeGreaterThanOrEqual(44);
    expect(asked).toEqual([]);
    await page.close();
  }
});

test('with every style stripped it still has its days as headings, its entries in order and each answer by name', async () => {
  const toDo = list.days.flatMap(({ entries }) => entries.filter(isToDo));
  expect(toDo.length).toBeGreaterThan(3);
  const page = await browser.newPage({ viewport: { width: 390, height: 800 } });
  await page.setContent(UNSTYLED());
  const titles = toDo.map(({ entry }) => readableIn('us', entry.title));
  expect(await page.locator('strong').allInnerTexts()).toEqual(titles);
  for (const title of titles) {
    expect(await page.getByRole('link', { name: `Done: ${title}`, exact: true }).count()).toBe(1);
  }
  expect(await page.getByRole('heading', { level: 2 }).first().textContent()).toMatch(/^Wednesday, September 8 \(/);
  expect(await page.getByRole('link').count()).toBe(3 * toDo.length + 1);
  await page.close();
});
