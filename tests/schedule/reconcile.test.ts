import { describe, expect, it } from 'vitest';
import type { Garden } from '../../src/garden/garden.ts';
import type { TaskDraft } from '../../src/practices/draft.ts';
import type { Plan } from '../../src/schedule/plan.ts';
import { DONE_KEPT_DAYS } from '../../src/schedule/plan.ts';
import { type Days, doneMark, draft, entryWith, garden, planOn, taskIn } from './drafts.ts';

/** In April 2027 the Wednesdays are 7, 14, 21, 28 and the Saturdays 3, 10, 17, 24. */
const APRIL: Days = ['2027-04-01', '2027-04-12', '2027-04-30'];
const [a, b, c] = ['a', 'b', 'c'].map((bed) => draft('sow', bed, APRIL)) as [TaskDraft, TaskDraft, TaskDraft];

/** A plan of one day after another, each held against the one before. */
function followed(published: Plan, today: string, drafts: readonly TaskDraft[], facts: Partial<Garden> = {}): Plan {
  return planOn(today, drafts, { published, garden: garden(facts) });
}

describe('a first plan', () => {
  const first = planOn('2027-04-01', [a, b]);

  it('has one entry for the same job on one day, its tasks pointing back at it', () => {
    expect(first.entries).toHaveLength(1);
    expect(first.entries[0]).toMatchObject({
      lotId: 'sow/bed:a',
      day: '2027-04-10',
      title: 'sow the beds: Bed a, Bed b',
      keys: ['sow/bed:a', 'sow/bed:b'],
      effortMinutes: 40,
      state: 'open',
      sequence: 0,
      createdAt: '2027-04-01T12:00:00.000Z',
      changedAt: '2027-04-01T12:00:00.000Z',
    });
    expect(taskIn(first, 'sow/bed:b')).toMatchObject({ day: '2027-04-10', lotId: 'sow/bed:a', sequence: 0 });
  });

  it('names no changes, for there was nothing before', () => {
    expect(first.changes).toEqual([]);
  });

  it('remembers what it was made from', () => {
    expect(planOn('2027-04-01', [a], { factsVersion: 7 })).toMatchObject({ today: '2027-04-01', factsVersion: 7 });
  });
});

describe('a revision', () => {
  const first = planOn('2027-04-01', [a, draft('cut', 'b', ['2027-04-01', '2027-04-21', '2027-04-30'])]);

  it('rises for the entry that moved and for no other', () => {
    const next = followed(first, '2027-04-11', [a, draft('cut', 'b', ['2027-04-01', '2027-04-21', '2027-04-30'])]);
    expect(entryWith(next, 'sow/bed:a')).toMatchObject({
      day: '2027-04-14',
      sequence: 1,
      createdAt: '2027-04-01T12:00:00.000Z',
      changedAt: '2027-04-11T12:00:00.000Z',
    });
    expect(entryWith(next, 'cut/bed:b')).toEqual(entryWith(first, 'cut/bed:b'));
    expect([first.revisedAt, next.revisedAt]).toEqual(['2027-04-01T12:00:00.000Z', '2027-04-11T12:00:00.000Z']);
  });

  it('rises when words change on the same day', () => {
    const reworded = { ...a, steps: ['Step of sow.', 'Water it in.'] };
    expect(entryWith(followed(first, '2027-04-02', [reworded]), 'sow/bed:a')).toMatchObject({
      day: '2027-04-10',
      sequence: 1,
    });
  });

  it('rises when the household reads other units', () => {
    const { place } = garden();
    const next = followed(first, '2027-04-02', [a], { place: { ...place, units: 'us' } });
    expect(entryWith(next, 'sow/bed:a').sequence).toBe(1);
  });

  it('does not rise for what no calendar shows', () => {
    const quiet = { ...a, effortMinutes: 25, confidence: 'modelled' as const };
    const next = followed(first, '2027-04-02', [quiet]);
    expect(entryWith(next, 'sow/bed:a')).toMatchObject({ sequence: 0, effortMinutes: 25 });
  });

  it('is new again when an entry only leaves', () => {
    const next = followed(first, '2027-04-02', [a]);
    expect([next.entries.length, next.revisedAt]).toEqual([1, '2027-04-02T12:00:00.000Z']);
  });
});

describe('done work', () => {
  const first = planOn('2027-04-01', [a, b, c]);
  const marked = (task: TaskDraft, on: string) => ({ done: [doneMark(task, on)] });

  it('keeps the entry when all of it is done, on the day it was done', () => {
    const done = [a, b, c].map((task) => doneMark(task, '2027-04-09'));
    const next = followed(first, '2027-04-10', [a, b, c], { done });
    expect(next.entries).toHaveLength(1);
    expect(next.entries[0]).toMatchObject({ lotId: 'sow/bed:a', state: 'done', day: '2027-04-09', sequence: 1 });
  });

  it('leaves the entry to the beds still to do, though the first bed is the one done', () => {
    const next = followed(first, '2027-04-10', [a, b, c], marked(a, '2027-04-09'));
    expect(entryWith(next, b.key)).toMatchObject({
      lotId: 'sow/bed:a',
      state: 'open',
      title: 'sow the beds: Bed b, Bed c',
    });
    expect(entryWith(next, a.key)).toMatchObject({ lotId: 'sow/bed:a~2', state: 'done', sequence: 0 });
  });

  it('never comes back as open, even if a practice still asks for it', () => {
    const next = followed(first, '2027-04-10', [a], marked(a, '2027-04-09'));
    expect(next.tasks.map(({ key, state }) => [key, state])).toEqual([[a.key, 'done']]);
  });

  it('stands on the day it was last said to be done', () => {
    const done = [doneMark(a, '2027-04-03'), doneMark(a, '2027-04-05')];
    expect(taskIn(planOn('2027-04-10', [], { garden: garden({ done }) }), a.key).day).toBe('2027-04-05');
  });

  it('leaves the plan after sixty days', () => {
    expect(DONE_KEPT_DAYS).toBe(60);
    const facts = marked(a, '2027-04-01');
    expect(planOn('2027-05-31', [], { garden: garden(facts) }).tasks).toHaveLength(1);
    expect(planOn('2027-06-01', [], { garden: garden(facts) }).tasks).toHaveLength(0);
  });

  it('leaves a check that rode with it by itself, on the day it was published for', () => {
    const look = draft('look', 'a', ['2027-04-05', '2027-04-06', '2027-04-20'], { weight: 'check' });
    const riding = planOn('2027-04-01', [a, look]);
    expect(entryWith(riding, look.key).keys).toEqual([a.key, look.key]);
    const next = followed(riding, '2027-04-03', [a, look], marked(a, '2027-04-02'));
    expect(entryWith(next, a.key)).toMatchObject({ lotId: entryWith(riding, a.key).lotId, state: 'done' });
    expect(entryWith(next, look.key)).toMatchObject({ state: 'open', day: '2027-04-10', keys: [look.key] });
  });
});

describe('skipped work', () => {
  it('stays in the plan, in no entry, and is not stamped anew each time', () => {
    const first = planOn('2027-04-01', [a, b]);
    const skipped = followed(first, '2027-04-02', [a, b], { skipped: { [a.key]: '2027-04-02' } });
    expect(taskIn(skipped, a.key).state).toBe('skipped');
    expect(skipped.entries.map(({ keys }) => keys)).toEqual([[b.key]]);
    const again = followed(skipped, '2027-04-03', [a, b], { skipped: { [a.key]: '2027-04-02' } });
    expect(taskIn(again, a.key)).toEqual(taskIn(skipped, a.key));
  });

  it('that was done all the same is done', () => {
    const facts = { skipped: { [a.key]: '2027-04-02' }, done: [doneMark(a, '2027-04-03')] };
    expect(planOn('2027-04-04', [a], { garden: garden(facts) }).tasks.map(({ state }) => state)).toEqual(['done']);
  });

  it('holds up nothing that waits for it', () => {
    const cut = draft('cut', 'a', APRIL, { after: [{ key: a.key, minDays: 14 }] });
    const facts = { skipped: { [a.key]: '2027-04-01' } };
    expect(taskIn(planOn('2027-04-01', [a, cut], { garden: garden(facts) }), cut.key).day).toBe('2027-04-10');
  });
});

describe('taking a fact back', () => {
  const first = planOn('2027-04-01', [a, b]);

  it('brings an entry that left back as itself, one revision on', () => {
    const one = planOn('2027-04-01', [a]);
    const during = followed(one, '2027-04-02', [a], { skipped: { [a.key]: '2027-04-02' } });
    expect([during.entries, during.retired?.map(({ lotId }) => lotId)]).toEqual([[], ['sow/bed:a']]);
    const back = followed(during, '2027-04-03', [a]);
    expect(back.entries[0]).toEqual({
      ...one.entries[0],
      sequence: 1,
      changedAt: '2027-04-03T12:00:00.000Z',
    });
    expect(back.retired).toBeUndefined();
  });

  it('never gives an id a second life with an older revision', () => {
    const done = (on: string) => ({ done: [doneMark(b, on)] });
    const once = followed(first, '2027-04-02', [a, b], done('2027-04-01'));
    const undone = followed(once, '2027-04-03', [a, b]);
    const twice = followed(undone, '2027-04-04', [a, b], done('2027-04-03'));
    const [before, now] = [entryWith(once, b.key), entryWith(twice, b.key)];
    expect([before.day, now.day, now.lotId]).toEqual(['2027-04-01', '2027-04-03', before.lotId]);
    expect(now.sequence).toBeGreaterThan(before.sequence);
  });

  it('parts two entries again that a pin had joined, each under its own id', () => {
    const later = draft('sow', 'b', ['2027-04-20', '2027-04-28', '2027-05-20']);
    const apart = planOn('2027-04-01', [a, later]);
    expect(apart.entries).toHaveLength(2);
    const joined = followed(apart, '2027-04-02', [a, later], { pins: { [a.key]: '2027-04-28' } });
    expect(joined.entries).toHaveLength(1);
    const back = followed(joined, '2027-04-03', [a, later]);
    const ids = (plan: Plan) => plan.entries.map(({ lotId, day }) => [lotId, day]);
    expect(ids(back)).toEqual(ids(apart));
  });

  it('forgets an entry that has been gone for more than a year', () => {
    const gone = followed(first, '2027-04-02', []);
    const year = followed(gone, '2028-04-02', []);
    expect([year.retired?.length, followed(year, '2028-04-03', []).retired]).toEqual([1, undefined]);
  });
});
