import { describe, expect, it } from 'vitest';
import { daysBetween } from '../../../src/measures/days.ts';
import { cover, draft, draftsIn, frostDates, garden, milwaukee, setOut } from '../gardens.ts';

/** Buckwheat between peas and a cover of rye with vetch. */
const stands = [cover('buckwheat', '2027-07-06'), cover('rye-vetch', '2027-09-14', { id: 'then' })];

describe('the cut of a cover that is still to be sown', () => {
  it('follows the day of its sowing, and has room for the last day that sowing may be put on', () => {
    const drafts = draftsIn(garden({ stands }), milwaukee);
    const [sow, cut] = [draft(drafts, 'cover-sow/stand:s'), draft(drafts, 'cover-cut/stand:s')];
    const [wait] = cut.after;
    expect(wait).toMatchObject({ key: sow.key });
    expect(wait?.minDays).toBeGreaterThanOrEqual(21);
    expect(wait?.maxDays).toBeGreaterThan(wait?.minDays ?? 0);
    expect(daysBetween(sow.window.latest, cut.window.latest)).toBeGreaterThanOrEqual(wait?.minDays ?? 99);
    expect(cut.window.latest < '2027-09-14').toBe(true);
    expect(cut.steps[0]).toMatch(/^Count from the day it was sown/);
  });

  it('is of a day alone where the sowing is held to one', () => {
    const pins = { 'cover-sow/stand:s': '2027-07-17' };
    const cut = draft(draftsIn(garden({ stands, pins }), milwaukee), 'cover-cut/stand:s');
    expect(daysBetween('2027-07-17', cut.window.earliest)).toBe(cut.after[0]?.minDays);
  });

  it('of a stand that goes through winter keeps its days in spring, whichever day that was sown', () => {
    const plantings = [setOut('tomato', '2028-06-01')];
    const rye = [cover('cereal_rye', '2027-09-20')];
    const cut = draft(
      draftsIn(garden({ startedOn: '2027-09-01', stands: rye, plantings }), milwaukee),
      'cover-cut/stand:s',
    );
    expect(cut.after[0]).toEqual({ key: 'cover-sow/stand:s', minDays: 0 });
  });

  it('follows it too where nobody knows the cold, and its flowers come before winter', () => {
    // Mustard flowers 28 to 42 days after it is sown; that no zone is told says nothing of its autumn.
    const of = garden({ startedOn: '2027-05-01', stands: [cover('mustard', '2027-08-03')] });
    const drafts = draftsIn(of, frostDates('05-05', '10-12', 46));
    const [sow, cut] = [draft(drafts, 'cover-sow/stand:s'), draft(drafts, 'cover-cut/stand:s')];
    const [wait] = cut.after;
    expect(wait).toMatchObject({ key: sow.key });
    expect(wait?.minDays).toBeGreaterThanOrEqual(20);
    expect(daysBetween(sow.window.latest, cut.window.latest)).toBeGreaterThanOrEqual(wait?.minDays ?? 99);
    expect(drafts.filter(({ kind }) => kind === 'check-winter-kill')).toEqual([]);
  });
});
