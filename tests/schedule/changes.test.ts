import { describe, expect, it } from 'vitest';
import type { Garden } from '../../src/garden/garden.ts';
import type { Reason, TaskDraft } from '../../src/practices/draft.ts';
import { reasonSentence } from '../../src/schedule/explain.ts';
import type { Change, Plan } from '../../src/schedule/plan.ts';
import { type Days, doneMark, draft, garden, planOn } from './drafts.ts';

/** In April 2027 the Wednesdays are 7, 14, 21, 28 and the Saturdays 3, 10, 17, 24. */
const APRIL: Days = ['2027-04-01', '2027-04-12', '2027-04-30'];
const a = draft('sow', 'a', APRIL);
const TODAY = '2027-04-01';
const OWN = "the garden's own plan" as const;

interface Step {
  today?: string;
  drafts?: readonly TaskDraft[];
  facts?: Partial<Garden>;
}

/** What changed from one step to the next. */
function changes(before: Step, now: Step): readonly Change[] {
  const published = planOn(before.today ?? TODAY, before.drafts ?? [a], { garden: garden(before.facts) });
  const made = planOn(now.today ?? '2027-04-02', now.drafts ?? [a], { published, garden: garden(now.facts) });
  return made.changes;
}

/** Kind, days and rules of each change. */
function told(before: Step, now: Step): string[] {
  return changes(before, now).map(
    ({ key, kind, from = '', to = '', because }) =>
      `${key} ${kind} ${from.slice(5)}>${to.slice(5)} ${because.map(({ rule }) => rule).join(' ')}`,
  );
}

describe('what is no news', () => {
  it('is a plan made again', () => {
    expect(told({}, {})).toEqual([]);
  });

  it('is what a file brought in or something taken back moves, and what that took back is told no longer', () => {
    const moved = draft('sow', 'a', ['2027-04-01', '2027-04-20', '2027-04-30']);
    const first = planOn(TODAY, [a], { garden: garden() });
    const second = planOn(TODAY, [moved], { published: first, garden: garden() });
    const back = planOn(TODAY, [a, draft('sow', 'b', APRIL)], { published: second, garden: garden(), silent: true });
    expect(second.changes).toHaveLength(1);
    expect(back.changes).toEqual([]);
    expect(planOn(TODAY, [moved], { published: second, garden: garden(), silent: true }).changes).toEqual(
      second.changes,
    );
  });

  it('is work the gardener did or skipped', () => {
    expect(told({}, { facts: { done: [doneMark(a, '2027-04-02')] } })).toEqual([]);
    expect(told({}, { facts: { skipped: { [a.key]: '2027-04-02' } } })).toEqual([]);
    expect(told({}, { drafts: [], facts: { done: [doneMark(a, '2027-04-02')] } })).toEqual([]);
  });

  it('is far work that comes into sight as the horizon moves on', () => {
    const far = draft('sow', 'b', ['2028-03-01', '2028-03-04', '2028-03-31']);
    expect(told({}, { drafts: [a, far] })).toEqual([]);
  });

  it('is far work that is stirred by what comes into sight beside it, or goes again', () => {
    const far = draft('sow', 'b', ['2028-03-01', '2028-03-04', '2028-03-31']);
    const beside = draft('sow', 'c', ['2028-03-01', '2028-03-12', '2028-03-31']);
    expect(told({ drafts: [far] }, { drafts: [far, beside] })).toEqual([]);
    expect(told({ drafts: [far] }, { drafts: [] })).toEqual([]);
  });

  it('is lost work that at last leaves the list', () => {
    const lost = draft('sow', 'b', ['2027-03-01', '2027-03-10', '2027-03-19'], { ifMissed: 'drop' });
    expect(told({ drafts: [a, lost] }, { today: '2027-04-03', drafts: [a, lost] })).toEqual([]);
  });

  it('is a last lot of compost, amounts alone, without a new reason', () => {
    expect(told({}, { drafts: [{ ...a, supplies: [{ what: 'rake' }] }] })).toEqual([]);
  });
});

describe('a change', () => {
  it('names what was added, with the reasons of the task', () => {
    const b = draft('cut', 'b', APRIL);
    expect(told({}, { drafts: [a, b] })).toEqual(['cut/bed:b added >04-10 cover-sow.planned']);
    expect(changes({}, { drafts: [a, b] })[0]).toMatchObject({ title: 'cut bed b', at: '2027-04-02T12:00:00.000Z' });
  });

  it('names what comes back when a done mark or a skip is taken back', () => {
    expect(told({ facts: { skipped: { [a.key]: TODAY } } }, {})).toEqual(['sow/bed:a added >04-10 cover-sow.planned']);
    expect(told({ facts: { done: [doneMark(a, TODAY)] } }, {})).toEqual(['sow/bed:a added >04-10 cover-sow.planned']);
  });

  it('names what was dropped', () => {
    expect(told({}, { drafts: [] })).toEqual(['sow/bed:a dropped 04-10> schedule.no-longer-wanted']);
  });

  it('names a new reason for an old day', () => {
    const reasons: Reason[] = [
      ...a.reasons,
      { rule: 'cover-sow.gap', saw: { before: 'peas', from: '2027-04-01' }, source: OWN },
    ];
    expect(told({}, { drafts: [{ ...a, reasons }] })).toEqual(['sow/bed:a reworded >04-10 cover-sow.gap']);
  });

  it('is kept for fourteen days, newest first', () => {
    const first = planOn(TODAY, [a]);
    const dropped = planOn('2027-04-02', [], { published: first });
    const added = planOn('2027-04-16', [draft('cut', 'b', APRIL)], { published: dropped });
    expect(added.changes.map(({ kind }) => kind)).toEqual(['added', 'dropped']);
    expect(planOn('2027-04-17', [], { published: added }).changes.map(({ kind }) => kind)).toEqual([
      'dropped',
      'added',
    ]);
  });
});

describe('a change is of the garden’s own day', () => {
  // Noon of 1 April in Honolulu, ten hours behind, is 22:00 of 1 April in Greenwich; its evening is 2 April there.
  const evening = { now: '2027-04-02T06:00:00.000Z' };

  it('beside the moment it was made', () => {
    const first = planOn(TODAY, [a], evening);
    const [added] = planOn(TODAY, [a, draft('sow', 'b', APRIL)], { ...evening, published: first }).changes;
    expect(added).toMatchObject({ on: TODAY, at: evening.now });
  });

  it('and goes fourteen of those days after it', () => {
    const dropped = planOn(TODAY, [], { ...evening, published: planOn(TODAY, [a], evening) });
    const later = (today: string) => planOn(today, [], { published: dropped }).changes.length;
    expect([later('2027-04-15'), later('2027-04-16')]).toEqual([1, 0]);
  });
});

describe('a move says', () => {
  it('that the day passed without a mark', () => {
    expect(told({}, { today: '2027-04-11' })).toEqual(['sow/bed:a moved 04-10>04-14 schedule.not-done']);
  });

  it('what its practice newly found, before anything else', () => {
    const warm: Reason = { rule: 'cover-sow.soil', saw: { cover: 'oats', tempC: 7, day: '2027-04-20' }, source: OWN };
    const later = draft('sow', 'a', ['2027-04-20', '2027-04-20', '2027-05-10'], { reasons: [...a.reasons, warm] });
    expect(told({}, { drafts: [later] })).toEqual(['sow/bed:a moved 04-10>04-21 cover-sow.soil']);
  });

  it('that its window is another, where no reason of its own does', () => {
    const later = draft('sow', 'a', ['2027-04-20', '2027-04-20', '2027-05-10'], { reasons: a.reasons });
    expect(told({}, { drafts: [later] })).toEqual(['sow/bed:a moved 04-10>04-21 schedule.window']);
  });

  it('so even when the new day is far off', () => {
    const far = draft('sow', 'a', ['2028-03-01', '2028-03-04', '2028-03-31'], { reasons: a.reasons });
    expect(told({}, { drafts: [far] })).toEqual(['sow/bed:a moved 04-10>03-04 schedule.window']);
  });

  it('that it was pinned, or is no longer', () => {
    const pins = { [a.key]: '2027-04-20' };
    expect(told({}, { facts: { pins } })).toEqual(['sow/bed:a moved 04-10>04-20 schedule.pinned']);
    expect(told({ facts: { pins } }, {})).toEqual(['sow/bed:a moved 04-20>04-10 schedule.unpinned']);
  });

  it('that a pinned day passed without a mark', () => {
    const facts = { pins: { [a.key]: '2027-04-12' } };
    expect(told({ facts }, { today: '2027-04-13', facts })).toEqual(['sow/bed:a moved 04-12>04-14 schedule.not-done']);
  });

  it('that what it comes after has moved or was done on another day', () => {
    const cut = draft('cut', 'a', APRIL, { after: [{ key: a.key, minDays: 7 }] });
    const drafts = [a, cut];
    expect(told({ drafts }, { today: '2027-04-11', drafts })).toEqual([
      'sow/bed:a moved 04-10>04-14 schedule.not-done',
      'cut/bed:a moved 04-17>04-21 schedule.follows',
    ]);
    const facts = { done: [doneMark(a, '2027-04-11')] };
    const late = changes({ drafts }, { today: '2027-04-12', drafts, facts });
    expect(late.map(({ key, because }) => [key, because[0]?.saw])).toEqual([
      ['cut/bed:a', { task: 'sow bed a', day: '2027-04-11' }],
    ]);
  });

  it('that nobody is at home on the day', () => {
    const away = [{ from: '2027-04-08', to: '2027-04-12' }];
    expect(told({}, { facts: { away } })).toEqual(['sow/bed:a moved 04-10>04-14 schedule.away']);
  });

  it('that nobody works on the day any more', () => {
    const place = { ...garden().place, workDays: [1] as const };
    expect(told({}, { facts: { place } })).toEqual(['sow/bed:a moved 04-10>04-12 schedule.work-day']);
  });

  it('that it was gathered with other work', () => {
    const b = draft('sow', 'b', ['2027-04-01', '2027-04-18', '2027-04-30']);
    expect(told({}, { drafts: [a, b] })).toEqual([
      'sow/bed:a moved 04-10>04-17 schedule.gathered',
      'sow/bed:b added >04-17 cover-sow.planned',
    ]);
  });
});

describe('a move that nothing asks for says', () => {
  /** A plan of the eve that holds nothing, as one of an older program. */
  const free = (drafts: readonly TaskDraft[]): Plan => {
    const { held: _, ...plan } = planOn(TODAY, drafts);
    return plan;
  };
  const rules = (published: Plan, drafts: readonly TaskDraft[], facts: Partial<Garden> = {}) =>
    planOn('2027-04-02', drafts, { published, garden: garden(facts) })
      .changes.filter(({ kind }) => kind === 'moved')
      .map(({ key, because: [first] }) => `${key} ${first?.rule} ${first?.saw.task ?? ''}`.trim());

  it('what it goes with, where that has a day of its own', () => {
    const look = draft('look', 'a', ['2027-04-05', '2027-04-06', '2027-04-28'], { weight: 'check' });
    const shut = draft('sow', 'a', ['2027-04-12', '2027-04-17', '2027-04-30'], { reasons: a.reasons });
    expect(rules(free([a, look]), [shut, look])).toEqual([
      'look/bed:a schedule.goes-with sow bed a',
      'sow/bed:a schedule.window',
    ]);
  });

  it('that it stands alone again', () => {
    const b = draft('sow', 'b', ['2027-04-01', '2027-04-18', '2027-04-30']);
    expect(rules(free([a, b]), [a, b], { skipped: { [b.key]: TODAY } })).toEqual(['sow/bed:a schedule.alone']);
  });

  it('that its week is full, of entries or of minutes, whatever company that leaves it', () => {
    const full = ['m', 'n', 'o', 'p', 'q'].map((job) => draft(job, 'b', ['2027-04-05', '2027-04-07', '2027-04-11']));
    expect(rules(free([a]), [a, ...full])).toEqual(['sow/bed:a schedule.entries']);
    const fork = (bed: string) =>
      draft('fork', bed, ['2027-04-12', '2027-04-14', '2027-04-25'], { effortMinutes: 90, onceMinutes: 5 });
    const urgent = draft('sow', 'd', ['2027-04-12', '2027-04-14', '2027-04-18'], { effortMinutes: 90 });
    const together = ['a', 'b'].map((bed) => fork(bed));
    expect(rules(free(together), [...together, urgent])).toEqual([
      'fork/bed:a schedule.hours',
      'fork/bed:b schedule.hours',
    ]);
    const apart = [fork('a'), { ...fork('b'), window: urgent.window }];
    expect(rules(free(apart), [...apart, urgent])).toEqual(['fork/bed:a schedule.hours']);
  });

  it('not so of work that only changes its day within the week, nor of a week it would still fit into', () => {
    const dig = draft('dig', 'a', ['2027-04-01', '2027-04-14', '2027-05-02'], { effortMinutes: 100 });
    const sow = draft('sow', 'b', ['2027-04-12', '2027-04-14', '2027-04-18'], { effortMinutes: 110 });
    expect(rules(free([dig]), [dig, sow])).toEqual(['dig/bed:a schedule.load']);
    const b = draft('sow', 'c', ['2027-04-01', '2027-04-18', '2027-04-30']);
    expect(rules(free([a]), [a, b])).toEqual(['sow/bed:a schedule.gathered']);
  });

  it('nothing of what it comes after, where that neither shuts the old day out nor opens the new one', () => {
    const cut = draft('cut', 'a', ['2027-04-01', '2027-04-17', '2027-04-30'], { after: [{ key: a.key, minDays: 0 }] });
    const mate = draft('cut', 'b', ['2027-04-01', '2027-04-24', '2027-04-30']);
    const sooner = draft('sow', 'a', ['2027-04-01', '2027-04-06', '2027-04-09'], { reasons: a.reasons });
    expect(rules(free([a, cut]), [sooner, cut, mate])).toEqual([
      'sow/bed:a schedule.window',
      'cut/bed:a schedule.gathered',
    ]);
  });

  it('what it comes after, where that was done sooner and so opens an earlier day', () => {
    const cut = draft('cut', 'a', APRIL, { after: [{ key: a.key, minDays: 7 }] });
    const done = [doneMark(a, TODAY)];
    expect(rules(free([a, cut]), [a, cut], { done })).toEqual(['cut/bed:a schedule.follows sow bed a']);
  });
});

describe('a window that closes', () => {
  const missed = (ifMissed: TaskDraft['ifMissed']) => [draft('sow', 'a', APRIL, { ifMissed })];

  it('moves what should still be done, and says that the window has closed', () => {
    const drafts = missed('still do');
    expect(told({ today: '2027-04-30', drafts }, { today: '2027-05-01', drafts })).toEqual([
      'sow/bed:a moved 04-30>05-01 schedule.lapsed',
    ]);
    expect(told({ today: '2027-05-01', drafts }, { today: '2027-05-02', drafts })).toEqual([
      'sow/bed:a moved 05-01>05-05 schedule.lapsed',
    ]);
  });

  it('drops what should still be done after sixty days, and says so, once', () => {
    const drafts = missed('still do');
    expect(told({ today: '2027-06-29', drafts }, { today: '2027-06-30', drafts })).toEqual([
      'sow/bed:a dropped 06-29> schedule.given-up',
    ]);
    expect(told({ today: '2027-06-30', drafts }, { today: '2027-07-01', drafts })).toEqual([]);
  });

  it('says of late work that nothing asks for any more that it has gone', () => {
    const drafts = missed('still do');
    expect(told({ today: '2027-05-01', drafts }, { today: '2027-05-02', drafts: [] })).toEqual([
      'sow/bed:a dropped 05-01> schedule.no-longer-wanted',
    ]);
  });

  it.each(['replace', 'drop'] as const)('drops what is to %s, once', (ifMissed) => {
    const drafts = missed(ifMissed);
    expect(told({ today: '2027-04-30', drafts }, { today: '2027-05-01', drafts })).toEqual([
      'sow/bed:a dropped 04-30> schedule.lapsed',
    ]);
    expect(told({ today: '2027-05-01', drafts }, { today: '2027-05-02', drafts })).toEqual([]);
  });

  it('that opens again adds the task anew', () => {
    const drafts = missed('drop');
    const longer = [draft('sow', 'a', ['2027-04-01', '2027-04-12', '2027-05-30'], { ifMissed: 'drop' })];
    expect(told({ today: '2027-05-02', drafts }, { today: '2027-05-02', drafts: longer })).toEqual([
      'sow/bed:a added >05-05 cover-sow.planned',
    ]);
  });
});

describe('every reason the schedule gives', () => {
  it('has a sentence', () => {
    const drafts = [a, draft('cut', 'a', APRIL, { after: [{ key: a.key, minDays: 7 }] })];
    const made = changes({ drafts }, { today: '2027-04-11', drafts });
    expect(made.flatMap(({ because }) => because.map(reasonSentence)).every((words) => words.length > 20)).toBe(true);
  });
});
