import { describe, expect, it } from 'vitest';
import { quantity } from '../../../src/measures/quantity.ts';
import { bed, cover, draft, draftsIn, frostDates, garden, milwaukee, setOut, sown } from '../gardens.ts';

const garlic = (day: string, parts = {}) => setOut('garlic', day, { id: 'garlic', harvested: '2028-07-10', ...parts });
const kindsOf = (parts: Parameters<typeof garden>[0], climate = milwaukee) =>
  draftsIn(garden(parts), climate).flatMap(({ practice, kind }) => (practice === 'mulching' ? [kind] : []));

describe('garlic', () => {
  it('is mulched once the ground begins to freeze, and uncovered when the soil wakes', () => {
    const drafts = draftsIn(garden({ startedOn: '2027-06-01', plantings: [garlic('2027-10-20')] }));
    const mulch = draft(drafts, 'mulch-garlic/planting:garlic');
    const uncover = draft(drafts, 'uncover-garlic/planting:garlic');
    expect(mulch.window).toEqual({ earliest: '2027-11-13', preferred: '2027-11-17', latest: '2027-11-27' });
    // Bare soil would wake six days sooner: in some of the record's years snow falls again late in March.
    expect(uncover.window).toEqual({ earliest: '2028-03-25', preferred: '2028-03-29', latest: '2028-04-15' });
    expect(uncover.after.map(({ key }) => key)).toEqual([mulch.key]);
    // 3 m² under 90 mm.
    expect(mulch.supplies[0]?.amount?.value).toBe(270);
  });

  it('is left two weeks to root where it went in late', () => {
    const drafts = draftsIn(garden({ plantings: [garlic('2027-11-14')] }));
    expect(draft(drafts, 'mulch-garlic/').window.earliest).toBe('2027-11-28');
  });

  it('is still mulched where the garden was begun after its days, as long as winter is ahead', () => {
    const began = (startedOn: string) => draftsIn(garden({ startedOn, plantings: [garlic('2027-10-10')] }), cold);
    const cold = frostDates('05-20', '09-26', 46.8);
    const late = draft(began('2027-11-26'), 'mulch-garlic/planting:garlic');
    expect(late.window).toEqual({ earliest: '2027-11-26', preferred: '2027-11-30', latest: '2027-12-10' });
    expect(draft(began('2027-11-26'), 'uncover-garlic/').after.map(({ key }) => key)).toEqual([late.key]);
    expect(began('2028-02-10').map(({ kind }) => kind)).not.toContain('mulch-garlic');
  });

  it('is not uncovered where it was never mulched', () => {
    const skipped = { 'mulch-garlic/planting:garlic': '2027-11-20' };
    const parts = { startedOn: '2027-06-01', plantings: [garlic('2027-10-20')] };
    expect(kindsOf(parts)).toContain('uncover-garlic');
    expect(kindsOf({ ...parts, skipped })).not.toContain('uncover-garlic');
  });

  it('of two kinds in one bed is one mulch', () => {
    const plantings = [garlic('2027-10-20'), garlic('2027-10-21', { id: 'other' })];
    expect(kindsOf({ plantings }).filter((kind) => kind === 'mulch-garlic')).toEqual(['mulch-garlic']);
  });

  it('in the south is mulched in May and uncovered in September', () => {
    const of = garden({
      startedOn: '2027-07-01',
      place: { latitude: -43 },
      plantings: [setOut('garlic', '2028-05-10', { id: 'garlic' })],
    });
    const drafts = draftsIn(of, frostDates('10-20', '04-20', -43), '2028-03-01');
    expect(draft(drafts, 'mulch-garlic/').window.earliest).toBe('2028-05-24');
    expect(draft(drafts, 'uncover-garlic/').window.earliest).toBe('2028-09-08');
  });
});

describe('warm crops', () => {
  it('are mulched once the soil is warm and they have taken hold', () => {
    const plantings = [setOut('tomato', '2027-05-25'), setOut('pepper', '2027-06-18', { bedId: 'b' })];
    const drafts = draftsIn(garden({ beds: [bed('a'), bed('b')], plantings }));
    const [tomato, pepper] = [draft(drafts, 'mulch-warm/planting:tomato'), draft(drafts, 'mulch-warm/planting:pepper')];
    expect(tomato.window).toEqual({ earliest: '2027-06-22', preferred: '2027-07-06', latest: '2027-07-20' });
    expect(pepper.window).toEqual({ earliest: '2027-07-02', preferred: '2027-07-06', latest: '2027-07-30' });
    expect(tomato.steps.join(' ')).toContain(quantity(225, 'L'));
  });

  it('are left alone where their soil never gets warm, and near their end', () => {
    const cold = frostDates('05-10', '10-01');
    expect(kindsOf({ plantings: [setOut('tomato', '2027-05-25')] }, cold)).not.toContain('mulch-warm-crop');
    const short = setOut('summer-squash', '2027-06-01', { harvested: '2027-07-18' });
    expect(kindsOf({ plantings: [short] })).not.toContain('mulch-warm-crop');
  });

  it('are not cabbages, beans, corn or potatoes', () => {
    for (const crop of ['cabbage', 'snap-bean', 'sweet-corn', 'potato']) {
      expect(kindsOf({ plantings: [sown(crop, '2027-05-25')] }), crop).not.toContain('mulch-warm-crop');
    }
  });

  it('side by side share one mulch', () => {
    const plantings = [setOut('tomato', '2027-05-25'), setOut('pepper', '2027-06-01')];
    expect(kindsOf({ plantings }).filter((kind) => kind === 'mulch-warm-crop')).toHaveLength(1);
  });
});

describe('residue before small seed', () => {
  const oats = cover('oats', '2027-09-01');
  const aside = (parts: Parameters<typeof garden>[0]) =>
    draftsIn(garden({ startedOn: '2027-07-01', ...parts })).filter(({ kind }) => kind === 'draw-aside');

  it('is drawn aside two weeks to one week ahead', () => {
    const [task] = aside({ stands: [oats], plantings: [sown('carrot', '2028-04-22', { id: 'carrot' })] });
    expect(task?.key).toBe('residue-aside/planting:carrot');
    expect(task?.window).toEqual({ earliest: '2028-04-08', preferred: '2028-04-12', latest: '2028-04-15' });
    expect(task?.steps.join(' ')).toContain('slugs');
  });

  it('is not asked for beans, plants, or where radish left nothing', () => {
    expect(aside({ stands: [oats], plantings: [sown('snap-bean', '2028-05-25')] })).toEqual([]);
    expect(aside({ stands: [oats], plantings: [setOut('lettuce-leaf', '2028-04-25')] })).toEqual([]);
    const radish = cover('oilseed_radish', '2027-08-20');
    expect(aside({ stands: [radish], plantings: [sown('carrot', '2028-04-22')] })).toEqual([]);
  });

  it('is asked where winter mulch lies, and waits for that to have been laid', () => {
    const plantings = [sown('kale', '2027-07-15', { harvested: '2027-10-28' }), sown('carrot', '2028-04-22')];
    const [task] = aside({ plantings });
    expect(task?.title).toBe('Draw the mulch aside in Bed A for carrot');
    expect(task?.after).toEqual([{ key: 'mulch-bare/bed:a/2028', minDays: 0 }]);
    expect(aside({ plantings, skipped: { 'mulch-bare/bed:a/2028': '2027-11-05' } })).toEqual([]);
  });

  it('is not asked where a crop stood in between', () => {
    const lettuce = sown('lettuce-leaf', '2028-04-10', { harvested: '2028-05-30' });
    const [only, ...others] = aside({ stands: [oats], plantings: [lettuce, sown('beet', '2028-06-08')] });
    expect(only?.key).toContain('lettuce');
    expect(others).toEqual([]);
  });

  it('waits for a cover to be cut', () => {
    const rye = cover('cereal_rye', '2027-09-25');
    const [task] = aside({ stands: [rye], plantings: [sown('carrot', '2028-06-15')] });
    expect(task?.after).toEqual([{ key: 'cover-cut/stand:s', minDays: 0 }]);
  });
});
