import { describe, expect, it } from 'vitest';
import { reasonSentence, sourceLine } from '../../src/schedule/explain.ts';

const own = "the garden's own plan" as const;

describe('reasonSentence', () => {
  it.each([
    ['schedule.not-done', { day: '2027-04-10' }, 'It stood on ⟦2027-04-10⟧ and has not been marked done'],
    ['schedule.lapsed', { day: '2027-04-30' }, 'Its window closed on ⟦2027-04-30⟧'],
    ['schedule.window', { earliest: '2027-04-01', latest: '2027-04-30' }, 'from ⟦2027-04-01⟧ to ⟦2027-04-30⟧'],
    [
      'schedule.follows',
      { task: 'Clear Long bed', day: '2027-04-14' },
      'after "Clear Long bed", which is now on ⟦2027-04-14⟧',
    ],
    ['schedule.work-day', { day: '2027-04-10' }, 'Nobody means to work in the garden on ⟦2027-04-10⟧'],
    ['schedule.gathered', { day: '2027-04-14' }, 'gathered with other work on ⟦2027-04-14⟧'],
    ['schedule.alone', { day: '2027-04-14' }, '⟦2027-04-14⟧ suits it best'],
    ['schedule.pinned', { day: '2027-04-14' }, 'You pinned it to ⟦2027-04-14⟧'],
    ['schedule.unpinned', {}, 'no longer pinned'],
    ['schedule.no-longer-wanted', {}, 'Nothing in the garden asks for it any more'],
  ])('says %s in words', (rule, saw, words) => {
    expect(reasonSentence({ rule, saw, source: own })).toContain(words);
  });

  it("finds a practice's own sentence", () => {
    const saw = { depthMm: 13, areaM2: 3, litres: 39 };
    expect(reasonSentence({ rule: 'topdress.volume', saw, source: 'common practice' })).toMatch(/\w{4}/);
  });

  it('refuses a rule nobody wrote a sentence for', () => {
    expect(() => reasonSentence({ rule: 'sow.by-moon', saw: {}, source: own })).toThrow(
      'No sentence is written for the rule "sow.by-moon".',
    );
  });
});

describe('sourceLine', () => {
  it('gives the book a figure comes from', () => {
    expect(sourceLine('veg:V36')).not.toBe('veg:V36');
    expect(sourceLine('veg:V36').length).toBeGreaterThan(20);
  });

  it('says in plain words what has no book', () => {
    expect(sourceLine('common practice')).toBe('common practice');
    expect(sourceLine(own)).toBe("the garden's own plan");
  });
});
