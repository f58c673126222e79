/**
 * How the pages lie on small screens and on paper, in a real browser.
 */
import { expect, onTestFinished, test } from 'vitest';
import { openBrowser } from './browser.ts';
import { layoutFaultsOf } from './laid-out.ts';
import { servedGarden } from './served-garden.ts';

/** The pages of the year, and one of each kind behind them. */
const PAGES = [
  ...['', '?week=2027-05-24', '/week-sheet', '/year', '/beds', '/beds/north', '/compost', '/compost/mix', '/weather'],
  ...['/season-end', '/feeds', '/household', '/report', '/report/pile', '/report/away', '/history', '/record'],
  ...[
    '/fertility',
    '/garden',
    '/climate',
    '/edit/plantings/new',
    '/edit/beds/north',
    '/edit/piles/spring-pile',
    '/edit/place',
    '/beds/north/season?season=2028',
    '/nowhere',
  ],
];

test('no page slides sideways at 320 or 390 pixels, has too small a thing to press, or prints its ways elsewhere', async () => {
  const { origin, steward } = await servedGarden();
  const browser = await openBrowser();
  onTestFinished(() => browser.close());
  const page = await browser.newPage({ viewport: { width: 390, height: 900 }, javaScriptEnabled: true });
  const { plan } = await steward.view('mill-row');
  const task = plan.tasks.find(({ state }) => state === 'open')?.key ?? '';
  const faults: string[] = [];
  const { id: draft } = await steward.beginDraft();
  const within = [...PAGES, `/tasks/${task}`].map((path) => `/gardens/mill-row${path}`);
  for (const path of [...within, '/set-up', `/set-up/${draft}/where?words=madison&state=WI`]) {
    await page.goto(`${origin}${path}`);
    await page.evaluate("for (const folded of document.querySelectorAll('details')) folded.open = true");
    faults.push(...(await layoutFaultsOf(page)).map((fault) => `${path}: ${fault}`));
  }
  expect(faults).toEqual([]);
}, 120_000);
