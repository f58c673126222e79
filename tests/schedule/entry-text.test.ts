import { describe, expect, it } from 'vitest';
import type { TaskDraft } from '../../src/practices/draft.ts';
import { entryText, gatheredSupplies, supplyAmount, supplyLine, titleOf } from '../../src/schedule/entry-text.ts';
import { type Days, doneMark, draft, garden, planOn } from './drafts.ts';

const APRIL: Days = ['2027-04-01', '2027-04-10', '2027-04-30'];
const TODAY = '2027-03-01';

/** The text of the first entry of a plan of these drafts. */
function textOf(
  drafts: readonly TaskDraft[],
  parts: Parameters<typeof planOn>[2] = {},
  units: 'metric' | 'us' = 'metric',
) {
  const plan = planOn(TODAY, drafts, parts);
  const [entry] = plan.entries;
  if (entry === undefined) throw new Error('The plan has no entry.');
  return entryText(plan, entry, units);
}

describe('a title', () => {
  it("is the task's own when it stands alone, and the job with its beds when there are several", () => {
    expect(textOf([draft('sow', 'a', APRIL)]).title).toBe('sow bed a');
    expect(textOf([draft('sow', 'b', APRIL), draft('sow', 'a', APRIL)]).title).toBe('sow the beds: Bed a, Bed b');
  });

  it('names numbered beds in the order of their numbers', () => {
    const drafts = ['10', '2', '1'].map((bed) => draft('sow', bed, APRIL));
    expect(textOf(drafts).title).toBe('sow the beds: Bed 1, Bed 2, Bed 10');
  });

  it('leaves out the checks that ride along', () => {
    const check = draft('look', 'a', APRIL, { weight: 'check' });
    expect(textOf([draft('sow', 'a', APRIL), check]).title).toBe('sow bed a');
  });

  it('names a bed once where two plantings of it are cleared together', () => {
    const planting = (id: string) => ({
      type: 'planting' as const,
      id,
      name: id,
      bedId: 'gate',
      grows: '',
      bedName: 'Gate bed',
    });
    const clear = { job: { id: 'clear', title: 'Clear the bed' }, title: 'Clear', weight: 'work' as const };
    const two = ['beet', 'kale'].map((id) => ({ ...clear, subject: planting(id) }));
    expect(titleOf(two)).toBe('Clear the bed: Gate bed');
  });

  it('is empty for no tasks', () => {
    expect(titleOf([])).toBe('');
  });
});

describe('whom work was given to', () => {
  const both = [draft('sow', 'a', APRIL), draft('sow', 'b', APRIL), draft('sow', 'c', APRIL)];
  const firstLines = (assigned: Record<string, string>) =>
    textOf(both, { garden: garden({ assigned }) }).description.split('\n\n')[0];

  it('stands first: a name for all of it, or each bed by whose it is', () => {
    expect(firstLines({ 'sow/bed:a': 'Ida', 'sow/bed:b': 'Ida', 'sow/bed:c': 'Ida' })).toBe('For Ida.');
    expect(firstLines({ 'sow/bed:a': 'Ida', 'sow/bed:b': 'Jonas', 'sow/bed:c': 'Ida' })).toBe(
      'Bed a, Bed c: for Ida.\nBed b: for Jonas.',
    );
    expect(firstLines({ 'sow/bed:b': 'Jonas' })).toBe('Bed b: for Jonas.');
  });

  it('is said of nothing that is done', () => {
    const done = garden({ assigned: { 'sow/bed:a': 'Ida' }, done: [doneMark(draft('sow', 'a', APRIL), TODAY)] });
    expect(textOf([], { garden: done }).description).not.toContain('Ida');
  });
});

describe('a description', () => {
  it('gives steps, things to hand, window, cautions and reasons of one task, in this order', () => {
    const task = draft('sow', 'a', APRIL, {
      steps: ['Rake the bed.', 'Scatter ⟦120 g⟧ of seed.'],
      supplies: [{ what: 'oats', amount: { value: 120, unit: 'g' } }, { what: 'rake' }],
      cautions: ['Keep off wet soil.'],
      reasons: [{ rule: 'schedule.pinned', saw: { day: '2027-04-10' }, source: "the garden's own plan" }],
    });
    expect(textOf([task]).description).toBe(
      [
        'Rake the bed.',
        'Scatter 120 g of seed.',
        '',
        'To hand: oats 120 g; rake.',
        '',
        'Window from 1 April to 30 April.',
        '',
        'Take care:',
        '- Keep off wet soil.',
        '',
        'Why then:',
        '- You pinned it to 10 April.',
      ].join('\n'),
    );
  });

  it('writes amounts and days as the reader writes them', () => {
    const task = draft('sow', 'a', APRIL, { steps: ['Spread ⟦25.4 mm⟧ of compost.'], reasons: [] });
    expect(textOf([task], {}, 'us').description).toBe('Spread 1 in of compost.\n\nWindow from April 1 to April 30.');
  });

  it('says once what several beds share, and bed by bed what they do not', () => {
    const beds = ['a', 'b'].map((bed) =>
      draft('sow', bed, APRIL, { steps: ['Rake.', `Weigh out seed for ${bed}.`], reasons: [] }),
    );
    expect(textOf(beds).description.split('\n\n')[0]).toBe(
      'Rake.\nBed a: Weigh out seed for a.\nBed b: Weigh out seed for b.',
    );
  });

  it('keeps steps shared though a check rides along, and names the check', () => {
    const beds = ['a', 'b'].map((bed) => draft('sow', bed, APRIL, { steps: ['Rake.'], reasons: [] }));
    const check = draft('look', 'a', APRIL, { weight: 'check', title: 'Is it up?', steps: ['Part the stems.'] });
    expect(textOf([...beds, check]).description.split('\n\n')[0]).toBe('Rake.\nIs it up?: Part the stems.');
  });

  it('names each window of several beds, and none of the checks that ride along', () => {
    const beds = [draft('sow', 'a', APRIL), draft('sow', 'b', ['2027-04-10', '2027-04-10', '2027-04-10'])];
    const check = draft('look', 'a', ['2027-04-02', '2027-04-10', '2027-04-29'], { weight: 'check' });
    const { description } = textOf([...beds, check]);
    expect(description).toContain('Bed a: Window from 1 April to 30 April.\nBed b: Window on 10 April.');
    expect(description).not.toContain('29 April');
  });

  it('gives the window of a check that stands alone', () => {
    const check = draft('look', 'a', APRIL, { weight: 'check' });
    expect(textOf([check]).description).toContain('Window from 1 April to 30 April.');
  });

  it('warns of a pin outside the window', () => {
    const pins = { 'sow/bed:a': '2027-05-04' };
    expect(textOf([draft('sow', 'a', APRIL)], { garden: garden({ pins }) }).description).toContain(
      'Pinned outside its window, which runs from 1 April to 30 April.',
    );
  });

  it('says what happens now when the window has closed', () => {
    const missed = draft('sow', 'a', ['2027-02-01', '2027-02-10', '2027-02-20'], { missedNote: 'Lay leaves instead.' });
    expect(textOf([missed]).description).toContain(
      'Window from 1 February to 20 February. That has passed. Lay leaves instead.',
    );
  });

  it('is empty for finished work: the ledger keeps what was done, not how', () => {
    const done = [doneMark(draft('sow', 'a', APRIL), '2027-02-28')];
    expect(textOf([], { garden: garden({ done }) })).toMatchObject({ title: 'sow bed a', description: '' });
  });

  it('says a caution and a reason once', () => {
    const beds = ['a', 'b'].map((bed) => draft('sow', bed, APRIL, { cautions: ['Keep off wet soil.'] }));
    expect(textOf(beds).description.split('Keep off wet soil.')).toHaveLength(2);
  });
});

describe('categories', () => {
  it('name each practice once, as the pages do', () => {
    const mixed = [draft('sow', 'a', APRIL), draft('sow', 'b', APRIL, { practice: 'cover-cropping' })];
    expect(textOf([...mixed, draft('sow', 'c', APRIL)]).categories).toEqual(['Rotation', 'Cover crops']);
  });
});

describe('supplies', () => {
  it('add up equal things', () => {
    const compost = (value: number) => ({
      what: 'compost',
      amount: { value, unit: 'L' as const },
      also: 'a barrow load',
    });
    expect(gatheredSupplies([compost(40), { what: 'rake' }, compost(60), { what: 'rake' }])).toEqual([
      { what: 'compost', amount: { value: 100, unit: 'L' } },
      { what: 'rake' },
    ]);
  });

  it('keep what one bed alone needs as it was said', () => {
    const one = { what: 'compost', amount: { value: 40, unit: 'L' as const }, also: 'half a barrow load' };
    expect(gatheredSupplies([one])).toEqual([one]);
  });

  it('keep amounts in different units apart, and let an amount stand for the bare word', () => {
    const rows = [
      { what: 'straw' },
      { what: 'straw', amount: { value: 80, unit: 'L' as const } },
      { what: 'straw', amount: { value: 2, unit: 'kg' as const } },
    ];
    expect(gatheredSupplies(rows)).toEqual(rows.slice(1));
  });

  it('are written with their amount and what a gardener counts', () => {
    const one = { what: 'compost', amount: { value: 150, unit: 'L' as const }, also: '2 barrow loads' };
    expect(supplyLine(one)).toBe('compost ⟦150 L⟧ (2 barrow loads)');
    expect(supplyLine({ what: 'rake' })).toBe('rake');
    expect([supplyAmount(one, 'metric'), supplyAmount({ what: 'rake' }, 'metric')]).toEqual(['150 L', '']);
  });
});
