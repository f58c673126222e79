import { describe, expect, it } from 'vitest';
import type { Planting } from '../../../src/garden/garden.ts';
import { addDays } from '../../../src/measures/days.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { bed, draft, draftsIn, frostDates, garden, sown } from '../gardens.ts';

/** Median freezes 10 May and 1 October. */
const climate = frostDates('05-10', '10-01');

/** Sowings of a crop in bed A, so many days apart, each on a share of it. */
function sowings(cropId: string, first: string, everyDays: number, count: number, areaM2 = 0.75): Planting[] {
  return Array.from({ length: count }, (_, at) =>
    sown(cropId, addDays(first, at * everyDays), { id: at === 0 ? 'again' : `again-${at + 1}`, areaM2 }),
  );
}

const draftsFor = (plantings: Planting[], over = climate, startedOn = '2027-01-01') =>
  draftsIn(garden({ plantings, startedOn }), over);
const stepsOf = (plantings: Planting[], key: string, over = climate) => draft(draftsFor(plantings, over), key).steps;

describe('a crop sown again', () => {
  it('has a task for every sowing, each on its day', () => {
    const drafts = draftsFor(sowings('lettuce-leaf', '2027-04-25', 14, 4)).filter(({ key }) => key.startsWith('sow/'));
    expect(drafts.map(({ key, window }) => `${key} ${window.preferred}`)).toEqual([
      'sow/planting:again 2027-04-25',
      'sow/planting:again-2 2027-05-09',
      'sow/planting:again-3 2027-05-23',
      'sow/planting:again-4 2027-06-06',
    ]);
  });

  it('says when the next sowing is planned', () => {
    // Leaf lettuce: 7.4 weeks before 1 October.
    const steps =
      draftsFor(sowings('lettuce-leaf', '2027-04-25', 14, 2)).find(({ key }) => key === 'sow/planting:again')?.steps ??
      [];
    expect(steps.at(-1)).toMatch(/^The next sowing of leaf lettuce here is planned for ⟦2027-05-09⟧\.$/);
  });

  it('says how often it is usually sown again where no other sowing is planned', () => {
    const steps = stepsOf([sown('radish', '2027-05-01')], 'sow/planting:radish');
    expect(steps.at(-1)).toMatch(
      /^For a longer harvest sow radish again in 7 to 14 days: here it may be sown until ⟦2027-/,
    );
  });

  it('says so when no later sowing is ready in time', () => {
    const latest = draft(draftsFor([sown('snap-bean', '2027-06-01')]), 'sow/').window.latest;
    const steps = stepsOf([sown('snap-bean', latest)], 'sow/');
    expect(steps).toContain('No later sowing of snap bean is ready in time here this season.');
  });

  it('has no such step where it is sown once, nor where no freeze date is known', () => {
    expect(stepsOf([sown('parsnip', '2027-05-10')], 'sow/').join(' ')).not.toContain('may be sown until');
  });

  it('takes the rows of its share and no more', () => {
    const whole = stepsOf([sown('lettuce-leaf', '2027-05-01')], 'sow/').join(' ');
    const shared = stepsOf([sown('lettuce-leaf', '2027-05-01', { areaM2: 0.75 })], 'sow/').join(' ');
    expect(whole).toContain('The bed takes 3 rows');
    expect(shared).toContain('Its share of the bed, ⟦0.75 m2⟧, takes 2 rows, ⟦30 cm⟧ apart');
  });

  it('is no return of its family to the bed, as another crop of it would be', () => {
    const rules = (plantings: Planting[]) =>
      draftsFor(plantings).flatMap(({ reasons }) => reasons.map(({ rule }) => rule));
    expect(rules(sowings('radish', '2027-04-25', 30, 3))).not.toContain('changeover.family-returns');
    expect(rules([sown('radish', '2027-04-25'), sown('kale', '2027-07-01')])).toContain('changeover.family-returns');
  });
});

describe('the last sowings of a succession', () => {
  const late = sowings('lettuce-leaf', '2027-07-10', 14, 5, 0.6);

  it('are asked after where the one before stands at the end of the season already', () => {
    const drafts = draftsFor(late);
    const asked = drafts.filter(({ key }) => key.startsWith('mend-date/'));
    const held = drafts.filter(({ key }) => key.startsWith('sow/'));
    expect(asked.length + held.length).toBe(5);
    expect(asked.length).toBeGreaterThan(0);
    for (const { window } of held) expect(window.preferred <= window.latest).toBe(true);
    expect(asked.flatMap(({ reasons }) => reasons.map(reasonSentence)).join(' ')).toMatch(
      /Leaf lettuce, planned for ⟦2027-0\d-\d\d⟧, is ready in time only if it is planted by ⟦2027-0\d-\d\d⟧; the sowing of/,
    );
  });

  it('never pile up on the last day', () => {
    const days = draftsFor(late)
      .filter(({ key }) => key.startsWith('sow/'))
      .map(({ window }) => window.preferred);
    expect(new Set(days).size).toBe(days.length);
  });

  it('are held to the season in the south too', () => {
    const south = frostDates('10-10', '04-25', -40);
    const drafts = draftsFor(sowings('lettuce-leaf', '2028-02-01', 14, 5, 0.6), south, '2027-06-01');
    const held = drafts.filter(({ key }) => key.startsWith('sow/')).map(({ window }) => window.preferred);
    expect(held.slice(0, 2)).toEqual(['2028-02-01', '2028-02-15']);
    expect(held.every((day) => day < '2028-04-25')).toBe(true);
  });
});

it('a share is never more than its bed', () => {
  const steps = stepsOf([sown('radish', '2027-05-01', { areaM2: 99 })], 'sow/');
  expect(steps.join(' ')).toContain('The bed takes');
  expect(bed('a').lengthM * bed('a').widthM).toBe(3);
});
