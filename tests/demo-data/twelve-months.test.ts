import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Entry } from '../../src/schedule/plan.ts';
import { byMonth, entriesOfTheYear, weekCounts, yearInMonths } from './year-in-months.ts';

let entries: Entry[] = [];
beforeAll(async () => {
  entries = await entriesOfTheYear();
}, 60_000);

const inMonth = (month: number) => new Set((byMonth(entries)[month - 1] ?? []).map(({ kind }) => kind));

describe('the demo garden’s year', () => {
  it('is the one the page shows; write it anew with npm run twelve-months', () => {
    const page = readFileSync(new URL('../../docs/twelve-months.md', import.meta.url), 'utf8');
    expect(page.slice(page.indexOf('## January')).trimEnd()).toBe(yearInMonths(entries));
  });

  it('has work in every month, and no week with more than seven entries', () => {
    for (const [month, rows] of byMonth(entries).entries())
      expect(rows.length, `month ${month + 1}`).toBeGreaterThan(0);
    expect(weekCounts(entries)[0]).toBeLessThanOrEqual(7);
  });

  // The months in which a grower of the upper Midwest does each job: common practice, and the charts that
  // tests/references holds each rule to.
  it.each([
    [1, ['order-seed']],
    [2, ['start-indoors']],
    [3, ['check-winter-kill', 'squeeze-soil', 'uncover-garlic']],
    [4, ['sow-crop', 'set-out']],
    [5, ['cut-cover', 'harden-off']],
    [6, ['set-out']],
    [7, ['clear-bed']],
    [8, ['cut-cover', 'set-out', 'settle-plan']],
    [9, ['sow-cover', 'topdress']],
    [10, ['clear-bed', 'close-down']],
    [11, ['gather-leaves', 'mulch-bare-bed', 'sow-crop']],
    [12, ['mulch-garlic']],
  ] as const)('has in month %d what belongs there: %s', (month, kinds) => {
    expect([...inMonth(month)]).toEqual(expect.arrayContaining([...kinds]));
  });

  it('asks for nothing in winter that wants open soil', () => {
    for (const month of [12, 1, 2]) {
      for (const kind of ['sow-crop', 'set-out', 'sow-cover', 'topdress', 'squeeze-soil']) {
        expect([...inMonth(month)], `month ${month}`).not.toContain(kind);
      }
    }
  });

  it('leaves harvesting and weeding out, as its page says', () => {
    for (const { title } of entries) expect(title).not.toMatch(/\b(harvest|weed)\b/i);
  });
});
