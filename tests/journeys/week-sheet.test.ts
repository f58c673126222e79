import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { sheetLines } from '../../src/digest/sheet-room.ts';
import { type WeekList, weekList } from '../../src/digest/week-list.ts';
import { type WeekSheet, weekSheet } from '../../src/digest/week-sheet.ts';
import type { Garden } from '../../src/garden/garden.ts';
import { addDays } from '../../src/measures/days.ts';
import { stylesheet } from '../../src/web/styles/stylesheet.ts';
import { weekSheetPage } from '../../src/web/week/week-sheet.tsx';
import { demoView } from '../demo-data/demo-plan.ts';
import { hollowLane, planOf, type Wanted } from '../digest/example.ts';
import { runs } from '../runs.ts';
import { openBrowser } from './browser.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
}, 60_000);
afterAll(() => browser.close());

/** Sheets of paper that a week takes, by format. */
async function printed(garden: Garden, list: WeekList): Promise<{ sheet: WeekSheet; pages: (number | undefined)[] }> {
  const sheet = weekSheet(list, garden.place.units);
  const html = String(await weekSheetPage({ garden, list, sheet }));
  const page = await browser.newPage();
  await page.setContent(html.replace(/<link rel="stylesheet"[^>]*>/, () => `<style>${stylesheet}</style>`));
  const pages: (number | undefined)[] = [];
  for (const format of ['A4', 'Letter']) {
    pages.push((await page.pdf({ format })).toString('latin1').match(/\/Type\s*\/Page\b/g)?.length);
  }
  await page.close();
  return { sheet, pages };
}

describe('one sheet a week, on A4 and on US Letter', () => {
  test('the fullest weeks of the demo garden’s year', async () => {
    const { garden, plan } = await demoView('2027-04-18');
    const weeks = Array.from({ length: 53 }, (_, index) => weekList(plan, garden, addDays('2027-04-12', 7 * index)));
    const fullest = weeks.sort((a, b) => lines(b, garden) - lines(a, garden));
    expect(fullest[0]?.days.flatMap(({ entries }) => entries).length).toBeGreaterThanOrEqual(4);
    for (const list of fullest.slice(0, runs(4, 12))) {
      expect([list.monday, (await printed(garden, list)).pages]).toEqual([list.monday, [1, 1]]);
    }
  }, 120_000);

  test.each([4, 7])('a made-up week of %i entries, each as long as texts get', async (entries) => {
    const { sheet, pages } = await printed(roomyLane, fullWeek(entries));
    expect(pages).toEqual([1, 1]);
    expect(sheet.days.flatMap((day) => day.entries)).toHaveLength(entries);
  });
});

test('what no sheet could hold goes on to a second one, with every task and everything that can hurt', async () => {
  const { sheet, pages } = await printed(roomyLane, fullWeek(12));
  expect(pages).toEqual([2, 2]);
  const notes = sheet.days.flatMap((day) => day.entries.flatMap((entry) => entry.notes));
  expect(notes.filter(({ kind }) => kind === 'caution')).toHaveLength(12);
});

function lines(list: WeekList, garden: Garden): number {
  return sheetLines({ ...weekSheet(list, garden.place.units), size: 'large' });
}

/** A garden with hours enough for any week, so that none is told to be too full. */
const roomyLane: Garden = { ...hollowLane, place: { ...hollowLane.place, hoursPerWeek: 40 } };

/** So many entries, each with all that can stand under one, and as long as texts get. */
function fullWeek(entries: number): WeekList {
  const wanted = Array.from({ length: entries }, (_, index): Wanted => {
    const day = `2027-04-${20 + (index % 4)}`;
    return {
      key: `job${index}/north`,
      title: `Cut the winter rye with hairy vetch in bed number ${index} before it flowers, and leave it lying`,
      window: [day, day, day],
      needs: ['dry-day', 'above-freezing'],
      cautions: [
        `Blades and bent backs, ${index}: gloves and stout shoes, small bites, rest between beds.`,
        `Mouldy or dusty straw, ${index}: wet it, wear a mask, and leave it to others if your lungs or immunity are weak.`,
      ],
      supplies: [{ what: `a thing to have at hand, number ${index}` }],
      reasons: [{ rule: 'changeover.last-harvest', saw: { crop: 'garlic', day }, source: "the garden's own plan" }],
      makes: [{ makes: 'bed-topdressed', bedId: 'north', litres: 40 + index }],
    };
  });
  return weekList(planOf('2027-04-18', wanted, undefined, roomyLane), roomyLane, '2027-04-19');
}
