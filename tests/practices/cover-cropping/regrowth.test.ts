import { describe, expect, it } from 'vitest';
import type { Garden, Planting, Regrowth, Stand } from '../../../src/garden/garden.ts';
import type { Day } from '../../../src/measures/days.ts';
import type { TaskDraft } from '../../../src/practices/draft.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { bed, cover, draft, draftsIn, frostDates, garden, milwaukee, pile, rulesOf, setOut, sown } from '../gardens.ts';

const GREW: Regrowth = { on: '2027-05-19', what: 'grew-again', answer: 'cut' };
const SHEET: Regrowth = { ...GREW, answer: 'sheet' };
const LAID: Regrowth = { on: '2027-05-21', what: 'sheet-laid' };

/** Bed A with rye cut on 8 May, what was told of it since, and what is planned after it. */
function ryeBed(regrowth: Regrowth[], plantings: Planting[] = [], others: Stand[] = []): Garden {
  const rye = cover('cereal_rye', '2026-09-20', { cutOn: '2027-05-08', regrowth });
  return garden({ startedOn: '2027-05-21', plantings, stands: [rye, ...others] });
}

const drafts = (...of: Parameters<typeof ryeBed>) => draftsIn(ryeBed(...of), milwaukee);
const ofRye = (all: readonly TaskDraft[]) => all.map(({ key }) => key).filter((key) => key.includes('stand:s'));
const saidOf = (task: TaskDraft) => task.steps.join(' ');

describe('rye that has grown again', () => {
  it('is cut within four days, and looked at again ten days after that', () => {
    const all = drafts([GREW]);
    expect(ofRye(all)).toEqual(['cover-cut-again/stand:s/1', 'cover-regrowth/stand:s/check:2']);
    expect(draft(all, 'cover-cut-again/').window).toEqual({
      earliest: '2027-05-19',
      preferred: '2027-05-19',
      latest: '2027-05-23',
    });
    expect(draft(all, 'cover-regrowth/')).toMatchObject({
      window: { earliest: '2027-05-29', latest: '2027-06-06' },
      after: [{ key: 'cover-cut-again/stand:s/1', minDays: 10 }],
    });
  });

  it('goes under a sheet of 1.8 by 3.1 metres, lifted three to four weeks after it is laid', () => {
    const all = drafts([SHEET]);
    expect(ofRye(all)).toEqual(['cover-sheet/stand:s/lay:1', 'cover-sheet/stand:s/lift:1']);
    expect(draft(all, 'cover-sheet/stand:s/lay').supplies[0]?.amount).toEqual({ value: 5.6, unit: 'm2' });
    expect(draft(all, 'cover-sheet/stand:s/lift').after).toEqual([{ key: 'cover-sheet/stand:s/lay:1', minDays: 21 }]);
  });

  it('has its sheet lifted by the day it was really laid', () => {
    const lift = draft(drafts([SHEET, LAID]), 'cover-sheet/stand:s/lift');
    expect(lift.window).toEqual({ earliest: '2027-06-11', preferred: '2027-06-11', latest: '2027-06-18' });
    expect(lift.after).toEqual([]);
    expect(reasonSentence(lift.reasons[0] ?? { rule: '', saw: {}, source: 'house default' })).toBe(
      'The sheet was laid on ⟦2027-05-21⟧. Without light regrowth is finished in 21 to 28 days; one week was not enough.',
    );
  });

  it('asks for nothing more once its sheet is off, or nothing was green, or a crop went in', () => {
    expect(ofRye(drafts([SHEET, LAID, { on: '2027-06-12', what: 'sheet-lifted' }]))).toEqual([]);
    expect(ofRye(drafts([GREW, { on: '2027-05-20', what: 'cut-again' }]))).toEqual(['cover-regrowth/stand:s/check:2']);
    expect(ofRye(drafts([GREW], [setOut('tomato', '2027-05-20')]))).toEqual([]);
  });

  it('keeps asking after a sheet that lay before the garden was brought in', () => {
    const held = ryeBed([SHEET, LAID]);
    const late = draftsIn({ ...held, startedOn: '2027-07-10' }, milwaukee, '2027-07-10');
    expect(draft(late, 'cover-sheet/stand:s/lift').window.latest).toBe('2027-06-18');
  });

  it('asks for its cut only where that was skipped', () => {
    const held = { ...ryeBed([GREW]), skipped: { 'cover-cut-again/stand:s/1': '2027-05-20' } };
    expect(ofRye(draftsIn(held, milwaukee))).toEqual(['cover-cut-again/stand:s/1']);
  });
});

describe('what is planned after it', () => {
  const tomatoes = (day: Day) => [setOut('tomato', day)];

  it('waits for the sheet to be lifted, and says why', () => {
    const all = drafts([SHEET, LAID], tomatoes('2027-06-01'));
    const planting = draft(all, 'set-out/planting:tomato');
    expect(planting.window.earliest).toBe('2027-06-11');
    expect(planting.after).toContainEqual({ key: 'cover-sheet/stand:s/lift:1', minDays: 0 });
    expect(planting.reasons.filter(({ rule }) => rule === 'plant.after-sheet').map(reasonSentence)).toEqual([
      'The sheet on the winter rye was laid on ⟦2027-05-21⟧ and lies for 21 days at the least: from ⟦2027-06-11⟧.',
    ]);
  });

  it('waits two weeks from another cut for plants, three for small seed', () => {
    const cutAgain: Regrowth = { on: '2027-05-20', what: 'cut-again' };
    expect(draft(drafts([GREW, cutAgain], tomatoes('2027-05-25')), 'set-out/').window.earliest).toBe('2027-06-03');
    const all = drafts([GREW, cutAgain], [sown('carrot', '2027-05-25')]);
    expect(draft(all, 'sow/planting:carrot').window.earliest).toBe('2027-06-10');
    const green = draft(drafts([GREW], tomatoes('2027-05-25')), 'set-out/');
    expect(green.after).toContainEqual({ key: 'cover-cut-again/stand:s/1', minDays: 14 });
    expect(rulesOf(green)).toContain('plant.after-regrowth');
  });

  it('is told to give way, by so many days, where the sheet takes longer', () => {
    expect(saidOf(draft(drafts([SHEET], tomatoes('2027-06-01')), 'cover-sheet/stand:s/lay'))).toContain(
      'Next here: tomato, planned for ⟦2027-06-01⟧. The sheet lies until ⟦2027-06-09⟧ at the least, so that gives way, ' +
        'by 8 days.',
    );
  });

  it('is named where the sheet is lifted', () => {
    expect(saidOf(draft(drafts([SHEET, LAID], tomatoes('2027-06-20')), 'cover-sheet/stand:s/lift'))).toContain(
      'The bed is free then. Next here: tomato, planned for ⟦2027-06-20⟧.',
    );
  });

  it('is weighed before another cut: which of the two keeps its day', () => {
    const said = (day: Day) => saidOf(draft(drafts([GREW], tomatoes(day)), 'cover-cut-again/'));
    expect(said('2027-05-30')).toContain(
      'by ⟦2027-06-02⟧, 3 days late; a sheet laid now is off on ⟦2027-06-09⟧, 10 days',
    );
    expect(said('2027-06-04')).toContain('Cut now, it keeps its day; a sheet laid now lies until ⟦2027-06-09⟧');
    expect(said('2027-06-12')).toContain('There is time for another cut, and for a sheet.');
  });

  it('is asked after where the bed comes free too late for it', () => {
    // Onions go in until nine days after the last freeze of 23 April; the sheet lies until 11 June.
    const all = drafts([SHEET, LAID], [setOut('onion-seed', '2027-05-25')]);
    expect(rulesOf(draft(all, 'mend-date/planting:onion'))).toContain('plant.bed-taken');
  });

  it('where it is a cover, is sown once the look can be made, and waits for it', () => {
    const next = cover('buckwheat', '2027-06-01', { id: 'next' });
    const clean = draft(drafts([], [], [next]), 'cover-sow/stand:next');
    expect(clean.window.preferred).toBe('2027-06-01');
    expect(clean.after).toContainEqual({ key: 'cover-regrowth/stand:s/check:1', minDays: 0 });
    const sheeted = draft(drafts([SHEET, LAID], [], [next]), 'cover-sow/stand:next');
    expect(sheeted.window.earliest).toBe('2027-06-11');
    expect(sheeted.after).toContainEqual({ key: 'cover-sheet/stand:s/lift:1', minDays: 0 });
    expect(rulesOf(sheeted)).toContain('cover-sow.after-cover');
  });

  it('gets its compost once the sheet is off', () => {
    // Compost that would have to be ordered now comes after the tomatoes: this is there.
    const piles = [pile('2026-05-01', { finishedOn: '2027-04-01', finishedLitres: 90 })];
    const held = { ...ryeBed([SHEET, LAID], tomatoes('2027-06-20')), beds: [bed('a')], piles };
    const compost = draft(draftsIn(held, milwaukee), 'topdress/bed:a/2027');
    expect(compost.after).toContainEqual({ key: 'cover-sheet/stand:s/lift:1', minDays: 0 });
  });
});

it('asks for the same half a year later in the south', () => {
  const rye = cover('cereal_rye', '2027-03-20', { cutOn: '2027-11-10', regrowth: [{ ...SHEET, on: '2027-12-22' }] });
  const south = garden({ startedOn: '2027-12-22', place: { latitude: -43 }, stands: [rye] });
  const lift = draft(draftsIn(south, frostDates('10-20', '04-20', -43)), 'cover-sheet/stand:s/lift');
  expect(lift.window).toMatchObject({ earliest: '2028-01-12', latest: '2028-01-23' });
});
