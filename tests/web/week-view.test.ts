import { describe, expect, test } from 'vitest';
import { changesOf, closingSoon, isToDo, lapsedTasks, ridingAlong, weekView } from '../../src/web/week-view.ts';
import { sampleChange, samplePlan, sampleTask } from './sample-plan.ts';

const MONDAY = '2027-04-19';
const TODAY = '2027-04-20';

describe('a week', () => {
  test('holds Monday to Sunday and nothing of its neighbours', () => {
    const days = ['2027-04-18', '2027-04-19', '2027-04-25', '2027-04-26'];
    const week = weekView(samplePlan(days.map((day) => sampleTask(day, day))), MONDAY);
    expect(week.days.map(({ day }) => day)).toEqual(['2027-04-19', '2027-04-25']);
    expect(week.next.map(({ day }) => day)).toEqual(['2027-04-26']);
  });

  test('crosses a year end and a leap day', () => {
    const plan = samplePlan(['2027-12-31', '2028-01-01', '2028-02-29'].map((day) => sampleTask(day, day)));
    expect(weekView(plan, '2027-12-27').days.map(({ day }) => day)).toEqual(['2027-12-31', '2028-01-01']);
    expect(weekView(plan, '2028-02-28').days.map(({ day }) => day)).toEqual(['2028-02-29']);
  });

  test('counts open and late work as to do, done work apart, lost and skipped work not at all', () => {
    const week = weekView(
      samplePlan([
        sampleTask('open', MONDAY, { effortMinutes: 60 }),
        sampleTask('late', MONDAY, { state: 'lapsed', ifMissed: 'still do', effortMinutes: 20 }),
        sampleTask('lost', MONDAY, { state: 'lapsed', ifMissed: 'drop', effortMinutes: 1000 }),
        sampleTask('skipped', MONDAY, { state: 'skipped', effortMinutes: 1000 }),
        sampleTask('done', MONDAY, { state: 'done', effortMinutes: 45 }),
      ]),
      MONDAY,
    );
    expect([week.openMinutes, week.doneMinutes]).toEqual([80, 45]);
  });

  test('names the first day after it that has work, for a week with none', () => {
    const plan = samplePlan([sampleTask('b', '2027-06-02'), sampleTask('a', '2027-05-30'), sampleTask('c', MONDAY)]);
    expect(weekView(plan, MONDAY).comes?.day).toBe('2027-05-30');
    expect(weekView(plan, '2027-05-31').comes).toBeUndefined();
  });
});

describe('an entry', () => {
  test('lists the checks that ride along with its work', () => {
    const plan = samplePlan([
      sampleTask('work', MONDAY),
      sampleTask('look', MONDAY, { weight: 'check', lotId: 'work' }),
    ]);
    const [row] = weekView(plan, MONDAY).days[0]?.entries ?? [];
    expect(row && ridingAlong(row).map(({ key }) => key)).toEqual(['look']);
  });

  test('of checks alone has none riding along', () => {
    const tasks = ['a', 'b'].map((key) => sampleTask(key, MONDAY, { weight: 'check', lotId: 'a' }));
    const [row] = weekView(samplePlan(tasks), MONDAY).days[0]?.entries ?? [];
    expect(row && ridingAlong(row)).toEqual([]);
  });

  test.each([
    ['open', 'drop', true],
    ['lapsed', 'still do', true],
    ['lapsed', 'replace', false],
    ['done', 'still do', false],
  ] as const)('that is %s and, if missed, %s is still to do: %s', (state, ifMissed, expected) => {
    const plan = samplePlan([sampleTask('a', MONDAY, { state, ifMissed })]);
    const [row] = weekView(plan, MONDAY).days[0]?.entries ?? [];
    expect(row && isToDo(row)).toBe(expected);
  });
});

describe('closing soon', () => {
  const closing = (key: string, latest: string, change = {}) =>
    sampleTask(key, '2027-04-21', { window: { earliest: '2027-04-01', preferred: '2027-04-21', latest }, ...change });

  test('reaches fourteen days ahead, soonest first', () => {
    const plan = samplePlan([
      closing('too-late', '2027-05-05'),
      closing('edge', '2027-05-04'),
      closing('today', TODAY),
      closing('past', '2027-04-19'),
    ]);
    expect(closingSoon({ plan, today: TODAY }).map(({ key, daysLeft }) => [key, daysLeft])).toEqual([
      ['today', 0],
      ['edge', 14],
    ]);
  });

  test('leaves out checks and what is settled', () => {
    const plan = samplePlan([
      closing('check', TODAY, { weight: 'check' }),
      closing('done', TODAY, { state: 'done' }),
      closing('skipped', TODAY, { state: 'skipped' }),
      closing('lapsed', TODAY, { state: 'lapsed' }),
    ]);
    expect(closingSoon({ plan, today: TODAY })).toEqual([]);
  });

  test('names the same job closing on the same day once', () => {
    const job = { id: 'rake', title: 'Rake' };
    const plan = samplePlan([
      closing('a', TODAY, { job, lotId: 'a' }),
      closing('b', TODAY, { job, lotId: 'a' }),
      closing('c', '2027-04-22', { job, lotId: 'a' }),
    ]);
    expect(closingSoon({ plan, today: TODAY }).map(({ title }) => title)).toEqual(['Rake: bed a, bed b', 'Do c']);
  });
});

test('what lapsed is told with the latest closed first', () => {
  const lapsed = (key: string, latest: string) =>
    sampleTask(key, TODAY, { state: 'lapsed', window: { earliest: '2027-03-01', preferred: latest, latest } });
  const plan = samplePlan([lapsed('b', '2027-04-01'), lapsed('c', '2027-04-10'), lapsed('a', '2027-04-01')]);
  expect(lapsedTasks(plan).map(({ key }) => key)).toEqual(['c', 'a', 'b']);
});

describe('what moved', () => {
  test('tells changes alike in days and reasons together', () => {
    const changes = ['a', 'b'].map((key) => sampleChange(key, 'moved', '2027-04-21', '2027-04-24'));
    const plan = samplePlan(
      ['a', 'b'].map((key) => sampleTask(key, '2027-04-24')),
      changes,
    );
    expect(changesOf(plan, 'moved').map(({ titles }) => titles)).toEqual([['Do a', 'Do b']]);
  });

  test('tells a task that moved twice once, from where it first stood', () => {
    const plan = samplePlan(
      [sampleTask('a', '2027-05-02')],
      [sampleChange('a', 'moved', '2027-04-28', '2027-05-02'), sampleChange('a', 'moved', '2027-04-21', '2027-04-28')],
    );
    expect(changesOf(plan, 'moved').map(({ from, to }) => [from, to])).toEqual([['2027-04-21', '2027-05-02']]);
  });

  test('leaves out what went and came back', () => {
    const plan = samplePlan(
      [sampleTask('a', '2027-04-21')],
      [sampleChange('a', 'moved', '2027-04-28', '2027-04-21'), sampleChange('a', 'moved', '2027-04-21', '2027-04-28')],
    );
    expect(changesOf(plan, 'moved')).toEqual([]);
  });

  test('tells what was new and then moved as new, and what came and went not at all', () => {
    const plan = samplePlan(
      [sampleTask('a', '2027-04-28')],
      [
        sampleChange('a', 'moved', '2027-04-21', '2027-04-28'),
        sampleChange('b', 'dropped', '2027-04-21'),
        sampleChange('a', 'added', undefined, '2027-04-21'),
        sampleChange('b', 'added', undefined, '2027-04-21'),
      ],
    );
    expect(changesOf(plan, 'added').map(({ titles, to }) => [titles, to])).toEqual([[['Do a'], '2027-04-28']]);
    expect(changesOf(plan, 'moved')).toEqual([]);
    expect(changesOf(plan, 'dropped')).toEqual([]);
  });

  test('tells what left the plan from where it first stood', () => {
    const plan = samplePlan(
      [],
      [sampleChange('a', 'dropped', '2027-04-28'), sampleChange('a', 'moved', '2027-04-21', '2027-04-28')],
    );
    expect(changesOf(plan, 'dropped').map(({ from }) => from)).toEqual(['2027-04-21']);
  });

  test.each(['done', 'skipped', 'lapsed'] as const)('leaves a task that is %s to its own place', (state) => {
    const plan = samplePlan([sampleTask('a', TODAY, { state })], [sampleChange('a', 'moved', '2027-04-18', TODAY)]);
    expect(changesOf(plan, 'moved')).toEqual([]);
  });
});
