import { describe, expect, test } from 'vitest';
import { entryNotes } from '../../src/digest/entry-notes.ts';
import { weekList } from '../../src/digest/week-list.ts';
import { hollowLane, planOf } from './example.ts';

const SUNDAY = '2027-04-18';
const NEXT_WEEK = '2027-04-20';

describe('the week', () => {
  test('runs from the Monday to the Sunday around any of its days, over a year end too', () => {
    const plan = planOf(SUNDAY, []);
    for (const day of ['2026-12-28', '2026-12-31', '2027-01-03']) {
      expect(weekList(plan, hollowLane, day)).toMatchObject({ monday: '2026-12-28', sunday: '2027-01-03' });
    }
  });

  test('holds the days with something on them, each with its entries and their tasks', () => {
    const plan = planOf(SUNDAY, [
      { key: 'sow/north', window: ['2027-04-19', '2027-04-21', '2027-04-25'] },
      { key: 'sow/south', window: ['2027-04-19', '2027-04-21', '2027-04-25'] },
      { key: 'turn/bay', window: ['2027-04-22', '2027-04-24', '2027-04-30'] },
      { key: 'mow/path', window: ['2027-05-10', '2027-05-12', '2027-05-20'] },
    ]);
    const { days } = weekList(plan, hollowLane, NEXT_WEEK);
    const shown = days.map(({ day, entries }) => [day, entries.map(({ tasks }) => tasks.map(({ key }) => key))]);
    expect(shown).toEqual([
      ['2027-04-21', [['sow/north', 'sow/south']]],
      ['2027-04-24', [['turn/bay']]],
    ]);
  });

  test('leaves skipped work out and counts the minutes of open and done work apart', () => {
    const garden = {
      ...hollowLane,
      skipped: { 'mow/path': SUNDAY },
      done: [
        {
          key: 'sow/north',
          on: '2027-04-20',
          practice: 'cover-cropping',
          kind: 'sow',
          title: 'sow north',
          job: { id: 'sow', title: 'sow' },
          subject: { type: 'bed' as const, id: 'north', name: 'north' },
          effortMinutes: 50,
          entry: 2,
        },
      ],
    };
    const wanted = [
      { key: 'sow/north', window: ['2027-04-19', '2027-04-21', '2027-04-25'] as const },
      { key: 'mow/path', window: ['2027-04-19', '2027-04-21', '2027-04-25'] as const },
      { key: 'turn/bay', window: ['2027-04-21', '2027-04-24', '2027-04-30'] as const, effortMinutes: 20 },
    ];
    const list = weekList(planOf('2027-04-20', wanted, undefined, garden), garden, '2027-04-20');
    expect(list.days.flatMap(({ entries }) => entries.map(({ entry }) => `${entry.state} ${entry.title}`))).toEqual([
      'done sow north',
      'open turn bay',
    ]);
    expect(list).toMatchObject({ openMinutes: 20, doneMinutes: 50, keptMinutes: 120 });
  });

  test('adds up the supplies of what is still to be done', () => {
    const oats = (key: string, day: string) => ({
      key,
      window: [day, day, day] as const,
      supplies: [{ what: 'oat seed', amount: { value: 120, unit: 'g' as const } }],
    });
    const plan = planOf(SUNDAY, [
      oats('sow/north', '2027-04-21'),
      oats('sow/south', '2027-04-24'),
      oats('sow/east', '2027-05-05'),
    ]);
    expect(weekList(plan, hollowLane, NEXT_WEEK).supplies).toEqual([
      { what: 'oat seed', amount: { value: 240, unit: 'g' } },
    ]);
  });
});

describe('what stands beside the week', () => {
  test('closing windows reach fourteen days from today and no further', () => {
    const plan = planOf(SUNDAY, [
      { key: 'a/today', window: ['2027-04-01', '2027-04-18', '2027-04-18'] },
      { key: 'b/fourteen', window: ['2027-04-01', '2027-04-25', '2027-05-02'] },
      { key: 'c/fifteen', window: ['2027-04-01', '2027-04-25', '2027-05-03'] },
      { key: 'd/check', window: ['2027-04-01', '2027-04-25', '2027-04-28'], weight: 'check' },
    ]);
    const closing = weekList(plan, hollowLane, SUNDAY).closing;
    expect(closing.map(({ title, daysLeft }) => [title, daysLeft])).toEqual([
      ['a today', 0],
      ['b fourteen', 14],
    ]);
  });

  test('closing windows of a later week reach fourteen days from its Monday, counted from today', () => {
    const plan = planOf(SUNDAY, [{ key: 'sow/north', window: ['2027-05-01', '2027-05-08', '2027-05-24'] }]);
    expect(weekList(plan, hollowLane, '2027-05-12').closing).toMatchObject([{ latest: '2027-05-24', daysLeft: 36 }]);
    expect(weekList(plan, hollowLane, SUNDAY).closing).toEqual([]);
  });

  test('the same job closing on the same day is named once', () => {
    const plan = planOf(SUNDAY, [
      { key: 'sow/north', window: ['2027-04-19', '2027-04-21', '2027-04-25'] },
      { key: 'sow/south', window: ['2027-04-19', '2027-04-21', '2027-04-25'] },
    ]);
    expect(weekList(plan, hollowLane, SUNDAY).closing).toMatchObject([
      { title: 'sow: north, south', keys: ['sow/north', 'sow/south'], day: '2027-04-21' },
    ]);
  });

  test('lapsed work is named, the latest closed first', () => {
    const plan = planOf(SUNDAY, [
      { key: 'sow/north', window: ['2027-04-01', '2027-04-05', '2027-04-10'] },
      { key: 'turn/bay', window: ['2027-04-01', '2027-04-05', '2027-04-16'] },
    ]);
    expect(weekList(plan, hollowLane, SUNDAY).lapsed.map(({ key }) => key)).toEqual(['turn/bay', 'sow/north']);
  });

  test('what lapsed is told once: in its day where it stands there, and never as a move', () => {
    const late = { ifMissed: 'still do', missedNote: 'It may bolt.' } as const;
    const wanted = [
      { key: 'sow/north', window: ['2027-04-01', '2027-04-05', '2027-04-10'], ...late },
      { key: 'sow/south', window: ['2027-04-01', '2027-04-05', '2027-04-08'], ...late },
    ] as const;
    const before = planOf('2027-04-05', wanted);
    const plan = planOf(SUNDAY, wanted, before);
    const list = weekList(plan, hollowLane, NEXT_WEEK);
    const [listed] = list.days.flatMap(({ entries }) => entries);
    expect(list.changes).toEqual([]);
    expect(list.triage.lines).toEqual([]);
    expect(weekList(plan, hollowLane, SUNDAY).triage.lines).toHaveLength(2);
    const notes = listed === undefined ? [] : entryNotes(listed, 'metric').filter(({ kind }) => kind === 'closed');
    expect(notes.map(({ text }) => text)).toEqual([
      'Its window closed 8 April (south), 10 April (north). It may bolt.',
    ]);
  });

  test('work that does not fit is told up to eight weeks ahead', () => {
    const clash = (key: string) => ({ key, title: key, what: 'It cannot.' });
    const plan = planOf(SUNDAY, [
      { key: 'near', window: ['2027-06-10', '2027-06-12', '2027-06-13'] },
      { key: 'far', window: ['2027-06-16', '2027-06-16', '2027-06-20'] },
    ]);
    const told = weekList({ ...plan, clashes: [clash('near'), clash('far')] }, hollowLane, SUNDAY).clashes;
    expect(told.map(({ key }) => key)).toEqual(['near']);
  });

  test('the week after is given by day, and the first later day where it is empty', () => {
    const soon = planOf(SUNDAY, [{ key: 'sow/north', window: ['2027-04-27', '2027-04-28', '2027-04-29'] }]);
    const list = weekList(soon, hollowLane, NEXT_WEEK);
    expect(list.next.map(({ day }) => day)).toEqual(['2027-04-28']);
    expect(list.comes).toBeUndefined();
    const late = planOf(SUNDAY, [{ key: 'sow/north', window: ['2027-06-01', '2027-06-02', '2027-06-03'] }]);
    expect(weekList(late, hollowLane, NEXT_WEEK)).toMatchObject({ next: [], comes: { day: '2027-06-02' } });
  });

  test('work that cannot keep both window and order is told', () => {
    const plan = planOf(SUNDAY, [
      { key: 'cut/north', window: ['2027-04-26', '2027-04-28', '2027-05-01'] },
      {
        key: 'plant/north',
        window: ['2027-04-19', '2027-04-21', '2027-04-24'],
        after: [{ key: 'cut/north', minDays: 14 }],
      },
    ]);
    expect(weekList(plan, hollowLane, SUNDAY).clashes).toMatchObject([{ key: 'plant/north' }]);
  });
});

test('the order of the drafts makes no difference', () => {
  const wanted = ['north', 'south', 'east'].map((bed) => ({
    key: `sow/${bed}`,
    window: ['2027-04-19', '2027-04-21', '2027-04-25'] as const,
  }));
  const list = weekList(planOf(SUNDAY, wanted), hollowLane, NEXT_WEEK);
  expect(weekList(planOf(SUNDAY, [...wanted].reverse()), hollowLane, NEXT_WEEK)).toEqual(list);
});
