import { describe, expect, it } from 'vitest';
import { changePreview } from '../../src/digest/change-preview.ts';
import type { TaskDraft } from '../../src/practices/draft.ts';
import { draft, garden, planOn } from '../schedule/drafts.ts';

const TODAY = '2027-04-19';
const snow = (fit: string) => ({
  reasons: [
    {
      rule: 'squeeze.setback',
      saw: { on: TODAY, state: 'snow', fit, years: 30 },
      limit: fit,
      source: 'agro:S22' as const,
    },
  ],
});
const squeeze = (day: string, parts: Partial<TaskDraft> = {}) => draft('squeeze', 'a', [day, day, '2027-05-05'], parts);
const sow = (bed: string, latest = '2027-05-20') =>
  draft('sow', bed, ['2027-04-20', '2027-04-21', latest], { after: [{ key: 'squeeze/bed:a', minDays: 0 }] });
const BEFORE = [
  squeeze('2027-04-21'),
  sow('b'),
  sow('c'),
  draft('look', 'd', ['2027-04-24', '2027-04-24', '2027-04-30']),
];

function previewOf(after: readonly TaskDraft[], parts: Parameters<typeof planOn>[2] = {}) {
  const before = planOn(TODAY, BEFORE, parts);
  return changePreview(before, planOn(TODAY, after, { ...parts, published: before }));
}

describe('the preview of a report', () => {
  it('tells what moves, together where it is one entry, each with why in one sentence', () => {
    const { moved, clashes, added, dropped } = previewOf([
      squeeze('2027-04-28', snow('2027-04-28')),
      sow('b'),
      sow('c'),
      BEFORE[3] ?? sow('d'),
    ]);
    expect(moved).toEqual([
      {
        keys: ['sow/bed:b', 'sow/bed:c'],
        title: 'sow the beds: Bed b, Bed c',
        from: '2027-04-21',
        to: '2027-04-28',
        because: 'It comes after "squeeze bed a", which is now on ⟦2027-04-28⟧.',
        // What drives it off its day stands before what its window rests on.
        reasons: [
          expect.objectContaining({ rule: 'schedule.follows' }),
          ...sow('b').reasons.map((reason) => expect.objectContaining(reason)),
        ],
      },
      {
        keys: ['squeeze/bed:a'],
        title: 'squeeze bed a',
        from: '2027-04-21',
        to: '2027-04-28',
        because: expect.stringContaining('Snow lay again on ⟦2027-04-19⟧.'),
        reasons: snow('2027-04-28').reasons,
      },
    ]);
    expect([clashes, added, dropped]).toEqual([[], [], []]);
  });

  it('does not tell as gone what the report itself says was done', () => {
    const look = BEFORE[3] ?? sow('d');
    const { subject, job, practice, kind, title, effortMinutes, key } = look;
    const mark = { key, on: TODAY, practice, kind, title, job, subject, effortMinutes, entry: 2 };
    const before = planOn(TODAY, BEFORE);
    const done = { garden: { ...garden(), done: [mark] }, published: before };
    expect(changePreview(before, planOn(TODAY, BEFORE.slice(0, 3), done)).dropped).toEqual([]);
  });

  it('tells what comes with its first reason, and what goes', () => {
    const fresh = draft('cover', 'e', [TODAY, TODAY, TODAY], { weight: 'deadline' });
    const { added, dropped } = previewOf([...BEFORE.slice(0, 3), fresh]);
    expect(added).toEqual([
      {
        keys: ['cover/bed:e'],
        title: 'cover bed e',
        to: TODAY,
        because: expect.stringMatching(/oats|planned/i),
        reasons: fresh.reasons,
      },
    ]);
    expect(dropped).toEqual([
      {
        keys: ['look/bed:d'],
        title: 'look bed d',
        from: '2027-04-24',
        because: 'Nothing in the garden asks for it any more.',
        reasons: [expect.objectContaining({ rule: 'schedule.no-longer-wanted' }), ...(BEFORE[3]?.reasons ?? [])],
      },
    ]);
  });

  it('names work that no longer fits, and says that its window gives way', () => {
    const { clashes } = previewOf([squeeze('2027-04-28', snow('2027-04-28')), sow('b', '2027-04-24'), sow('c')]);
    expect(clashes).toEqual([
      {
        key: 'sow/bed:b',
        title: 'sow bed b',
        what: 'It cannot be done before ⟦2027-04-28⟧, and its window closes on ⟦2027-04-24⟧.',
        gives: 'The window gives way: it stands on ⟦2027-04-28⟧. Do it when you can.',
        reasons: sow('b', '2027-04-24').reasons,
      },
    ]);
  });

  it('says that the order gives way to a day the gardener pinned', () => {
    const pins = { 'sow/bed:b': '2027-04-22' };
    const { clashes } = previewOf([squeeze('2027-04-28'), sow('b'), sow('c')], { garden: garden({ pins }) });
    expect(clashes.map(({ key, gives }) => [key, gives])).toEqual([
      ['sow/bed:b', 'The day you pinned is kept; the order of the work gives way.'],
    ]);
  });

  it('does not give a window that is past before and after as the reason of a day', () => {
    const cut = (latest: string) => draft('cut', 'd', ['2027-04-01', '2027-04-02', latest], { ifMissed: 'still do' });
    const beside = (day: string) => draft('look', 'e', [day, day, day]);
    const before = planOn(TODAY, [cut('2027-04-05'), beside('2027-04-21')]);
    const after = planOn(TODAY, [cut('2027-04-10'), beside('2027-04-25')], { published: before });
    for (const { because } of changePreview(before, after).moved.filter(({ keys }) => keys.includes('cut/bed:d')))
      expect(because).not.toContain('window');
    const old = before.tasks.map((task) => (task.key === 'cut/bed:d' ? { ...task, day: '2027-04-20' as const } : task));
    const [moved] = changePreview({ ...before, tasks: old }, after).moved.filter(({ keys }) =>
      keys.includes('cut/bed:d'),
    );
    expect(moved?.from).toBe('2027-04-20');
    expect(moved?.because).toMatch(/gathered with other work|suits it best by itself/);
  });

  it('is empty where nothing changes, and does not tell old clashes again', () => {
    const tight = [squeeze('2027-04-28'), sow('b', '2027-04-24')];
    const before = planOn(TODAY, tight);
    expect(before.clashes).toHaveLength(1);
    const after = planOn(TODAY, tight, { published: before });
    expect(changePreview(before, after)).toEqual({ moved: [], clashes: [], added: [], dropped: [], reworded: [] });
  });
});
