import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { openBrowser } from './browser.ts';
import { servedGarden } from './served-garden.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

async function freshPage(options: BrowserContextOptions = {}): Promise<Page> {
  const page = await browser.newPage(options);
  onTestFinished(() => page.close());
  return page;
}

test('a gardener looks at a time away, tells it, prints the sheet and takes it back, without any script', async () => {
  const { origin, steward } = await servedGarden();
  const before = (await steward.view('mill-row')).plan.tasks.map(({ key, day, state }) => [key, day, state]);
  const page = await freshPage({ viewport: { width: 390, height: 844 }, javaScriptEnabled: false });

  await page.goto(`${origin}/gardens/mill-row/report/away`);
  await page.getByLabel('Away from').fill('2027-04-20');
  await page.getByLabel('Away to').fill('2027-06-20');
  await page.getByRole('button', { name: 'Show what it would do' }).click();
  expect(await page.locator('.preview').textContent()).toContain('If nobody does it: ');
  expect((await steward.view('mill-row')).ledger).toHaveLength(1);

  await page.getByRole('button', { name: 'We are away then' }).click();
  await page.getByRole('link', { name: 'Sheet for whoever minds the garden' }).click();
  expect(await page.locator('.asks').textContent()).toContain('Cut the winter rye in North bed off at the ground');

  await page.getByRole('link', { name: 'History' }).click();
  await page.getByRole('link', { name: 'Take back' }).first().click();
  await page.getByRole('button', { name: 'Take it back' }).click();
  const after = (await steward.view('mill-row')).plan.tasks.map(({ key, day, state }) => [key, day, state]);
  expect(after).toEqual(before);
});

test('the sheet of a dozen beds prints on one page, with work on it and without', async () => {
  const beds = Array.from({ length: 12 }, (_, index) => `bed-${index + 1}`);
  const { origin, steward } = await servedGarden({
    beds: beds.map((id) => ({ id, name: `Bed number ${id.slice(4)}`, lengthM: 3, widthM: 1.2 })),
    plantings: [{ bed: 'bed-12', crop: 'spinach', sow: '2027-04-10' }],
    coverStands: beds.slice(0, 6).map((bed, index) => ({
      id: bed,
      bed,
      sow: '2026-09-10',
      ...(index % 2 === 0 ? { cover: 'cereal_rye' } : { mix: 'rye-vetch' }),
    })),
  });
  await steward.report('mill-row', { kind: 'away-told', from: '2027-04-20', to: '2027-06-20' }, 'test');
  await steward.report('mill-row', { kind: 'away-told', from: '2028-01-10', to: '2028-01-20' }, 'test');
  const page = await freshPage({ viewport: { width: 1200, height: 900 } });
  const asked: number[] = [];
  for (const query of ['', '?day=2028-01-10']) {
    await page.goto(`${origin}/gardens/mill-row/away-sheet${query}`);
    asked.push(await page.locator('.asks li').count());
    for (const format of ['A4', 'Letter']) {
      const sheets = (await page.pdf({ format })).toString('latin1').match(/\/Type\s*\/Page\b/g);
      expect([query, format, sheets?.length]).toEqual([query, format, 1]);
    }
  }
  // Six covers to cut, and young spinach to keep damp.
  expect(asked).toEqual([7, 0]);
});
