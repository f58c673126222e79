import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sentenceOf } from '../../src/practices/catalogue.ts';
import { reasonSentence, sourceLine } from '../../src/schedule/explain.ts';

const own = "the garden's own plan" as const;

const SCHEDULE_RULES = [
  ['schedule.best-past', { best: '2027-04-10' }, 'Its best day, ⟦2027-04-10⟧, is past'],
  ['schedule.waits', { task: 'Clear it', day: '2027-04-10', days: 7 }, 'comes 7 days after that at the soonest'],
  ['schedule.nobody-home', { from: '2027-04-10', to: '2027-04-12' }, 'from ⟦2027-04-10⟧ to ⟦2027-04-12⟧'],
  ['schedule.together', { task: 'Set out b', best: '2027-04-10' }, 'in one go with "Set out b"'],
  ['schedule.shared-out', { best: '2027-04-10', day: '2027-04-12' }, 'it stands on ⟦2027-04-12⟧'],
  ['schedule.not-done', { day: '2027-04-10' }, 'It stood on ⟦2027-04-10⟧ and has not been marked done'],
  [
    'schedule.given-up',
    { day: '2027-04-30', days: 60 },
    'Its window closed on ⟦2027-04-30⟧, and it was not marked done in the 60 days after',
  ],
  ['schedule.lapsed', { day: '2027-04-30' }, 'Its window closed on ⟦2027-04-30⟧'],
  ['schedule.window', { earliest: '2027-04-01', latest: '2027-04-30' }, 'from ⟦2027-04-01⟧ to ⟦2027-04-30⟧'],
  [
    'schedule.follows',
    { task: 'Clear Long bed', day: '2027-04-14' },
    'after "Clear Long bed", which is now on ⟦2027-04-14⟧',
  ],
  ['schedule.work-day', { day: '2027-04-10' }, 'Nobody means to work in the garden on ⟦2027-04-10⟧'],
  ['schedule.away', { day: '2027-04-10' }, 'Nobody is at home on ⟦2027-04-10⟧'],
  ['schedule.gathered', { day: '2027-04-14' }, 'gathered with other work on ⟦2027-04-14⟧'],
  ['schedule.alone', { day: '2027-04-14' }, '⟦2027-04-14⟧ suits it best'],
  [
    'schedule.goes-with',
    { task: 'Cut the rye', day: '2027-05-22' },
    'goes with "Cut the rye", which is now on ⟦2027-05-22⟧',
  ],
  ['schedule.hours', { monday: '2027-05-17' }, 'the week of ⟦2027-05-17⟧ would hold more than the hours'],
  ['schedule.entries', { monday: '2027-05-17' }, 'The week of ⟦2027-05-17⟧ holds enough other entries'],
  ['schedule.load', { from: '2027-05-19', day: '2027-05-22' }, 'it stands on ⟦2027-05-22⟧ instead of ⟦2027-05-19⟧'],
  ['schedule.pinned', { day: '2027-04-14' }, 'You pinned it to ⟦2027-04-14⟧'],
  ['schedule.put-off', { day: '2027-04-14' }, 'It was put off past ⟦2027-04-14⟧'],
  ['schedule.unpinned', {}, 'no longer pinned'],
  ['schedule.no-longer-wanted', {}, 'Nothing in the garden asks for it any more'],
] as const;

describe('reasonSentence', () => {
  it.each(SCHEDULE_RULES)('says %s in words', (rule, saw, words) => {
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

/** A rule's id as source text has it: two words or groups of words with a dot between, alone in quotes. */
const RULE_IN_QUOTES = /(?<=')[a-z-]+\.[a-z-]+(?=')/g;

/** Ids of the rules that files under a folder of src give as reasons, as their source text has them. */
function rulesUnder(folder: URL): string[] {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));
  return files.flatMap((name) => readFileSync(new URL(name, folder), 'utf8').match(RULE_IN_QUOTES) ?? []);
}

describe('the rules', () => {
  it('of every practice have a sentence', () => {
    // Those of the planned rotation are no tasks' reasons: their own table holds every one of them by its type.
    const all = rulesUnder(new URL('../../src/practices/', import.meta.url));
    const rules = [...new Set(all.filter((rule) => !rule.startsWith('rotation-plan.')))];
    expect(rules.length).toBeGreaterThan(20);
    expect(rules.filter((rule) => sentenceOf(rule) === undefined)).toEqual([]);
  });

  it('of the schedule are all tried above', () => {
    const rules = [...new Set(rulesUnder(new URL('../../src/schedule/', import.meta.url)))];
    expect(rules.sort()).toEqual([...SCHEDULE_RULES.map(([rule]) => rule)].sort());
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
