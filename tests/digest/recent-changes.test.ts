import { expect, test } from 'vitest';
import { becauseText, changesTold, laterLine, recentChanges } from '../../src/digest/recent-changes.ts';
import type { Change, Plan } from '../../src/schedule/plan.ts';
import { planOf } from './example.ts';

const TODAY = '2027-04-18';

const pinned = { rule: 'schedule.pinned', saw: { day: '2027-04-24' }, source: "the garden's own plan" } as const;

function changed(...changes: (Pick<Change, 'key' | 'kind'> & Partial<Change>)[]): Plan {
  const filled = changes.map((change) => ({ title: change.key, because: [], at: `${TODAY}T05:00:00.000Z`, ...change }));
  return { ...planOf(TODAY, []), changes: filled };
}

test('a move is told with its days and the sentence of its reason', () => {
  const plan = changed({ key: 'sow', kind: 'moved', from: '2027-04-21', to: '2027-04-24', because: [pinned] });
  expect(recentChanges(plan)).toEqual([
    {
      kind: 'moved',
      keys: ['sow'],
      titles: ['sow'],
      from: '2027-04-21',
      to: '2027-04-24',
      because: ['You pinned it to ⟦2027-04-24⟧.'],
    },
  ]);
});

test('several moves of one task are told as one, from where it first stood', () => {
  const plan = changed(
    { key: 'sow', kind: 'moved', from: '2027-04-24', to: '2027-04-28', because: [pinned] },
    { key: 'sow', kind: 'moved', from: '2027-04-21', to: '2027-04-24' },
  );
  expect(recentChanges(plan)).toMatchObject([{ kind: 'moved', from: '2027-04-21', to: '2027-04-28' }]);
});

test('a task that came back to its day, or came and went, is no news', () => {
  const back = changed(
    { key: 'sow', kind: 'moved', from: '2027-04-24', to: '2027-04-21' },
    { key: 'sow', kind: 'moved', from: '2027-04-21', to: '2027-04-24' },
  );
  expect(recentChanges(back)).toEqual([]);
  const gone = changed(
    { key: 'sow', kind: 'dropped', from: '2027-04-21' },
    { key: 'sow', kind: 'added', to: '2027-04-21' },
  );
  expect(recentChanges(gone)).toEqual([]);
});

test('a task that was added and then moved is new, on the day it now has', () => {
  const plan = changed(
    { key: 'sow', kind: 'moved', from: '2027-04-21', to: '2027-04-24' },
    { key: 'sow', kind: 'added', to: '2027-04-21' },
  );
  expect(recentChanges(plan)).toMatchObject([{ kind: 'added', to: '2027-04-24' }]);
});

test('changes older than seven days and mere rewordings are left out', () => {
  const plan = changed(
    { key: 'sow', kind: 'moved', from: '2027-04-21', to: '2027-04-24', at: '2027-04-10T23:00:00.000Z' },
    { key: 'cut', kind: 'moved', from: '2027-04-21', to: '2027-04-24', at: '2027-04-11T01:00:00.000Z' },
    { key: 'turn', kind: 'reworded', to: '2027-04-24' },
  );
  expect(recentChanges(plan).map(({ keys }) => keys)).toEqual([['cut']]);
});

test('changes alike are told together: moved ones first, then dropped, then added', () => {
  const plan = changed(
    { key: 'c', kind: 'added', to: '2027-04-20' },
    { key: 'b', kind: 'dropped', from: '2027-04-20' },
    { key: 'a1', kind: 'moved', from: '2027-04-21', to: '2027-04-24' },
    { key: 'a2', kind: 'moved', from: '2027-04-21', to: '2027-04-24' },
  );
  expect(recentChanges(plan).map(({ kind, titles }) => [kind, titles])).toEqual([
    ['moved', ['a1', 'a2']],
    ['dropped', ['b']],
    ['added', ['c']],
  ]);
});

test('with the moment the last list went out, what came after it is told and nothing before', () => {
  const plan = changed(
    { key: 'sow', kind: 'moved', from: '2027-04-21', to: '2027-04-24', at: '2027-04-17T05:00:00.000Z' },
    { key: 'cut', kind: 'moved', from: '2027-04-21', to: '2027-04-24', at: '2027-04-17T07:00:00.000Z' },
  );
  expect(recentChanges(plan, '2027-04-17T06:00:00.000Z').map(({ keys }) => keys)).toEqual([['cut']]);
});

test('a last list of long ago reaches back beyond seven days', () => {
  const plan = changed({ key: 'sow', kind: 'added', to: '2027-04-24', at: '2027-04-06T05:00:00.000Z' });
  expect(recentChanges(plan)).toEqual([]);
  expect(recentChanges(plan, '2027-04-05T06:00:00.000Z')).toHaveLength(1);
});

const moves = (...spans: readonly (readonly [from: string, to: string])[]) =>
  recentChanges(changed(...spans.map(([from, to]) => ({ key: `sow ${from}`, kind: 'moved' as const, from, to }))));

test('the list of the week that is tells moves up to eight weeks after it, and counts the rest', () => {
  // The week of Monday 12 April 2027; eight weeks after it end on Sunday 13 June.
  const { near, later } = changesTold(
    moves(['2027-04-01', '2027-04-20'], ['2027-06-20', '2027-06-13'], ['2027-06-14', '2028-04-01']),
    '2027-04-12',
    TODAY,
  );
  expect(near.map(({ from }) => from)).toEqual(['2027-04-01', '2027-06-20']);
  expect(later.map(({ from }) => from)).toEqual(['2027-06-14']);
  expect(laterLine(later)).toBe('And 1 more later in the plan');
  expect(laterLine([])).toBe('');
});

test('the list of another week tells only what came to it or left it', () => {
  const all = moves(['2027-04-21', '2027-05-09'], ['2027-09-08', '2027-09-20'], ['2027-09-01', '2027-09-12']);
  expect(changesTold(all, '2027-09-06', TODAY)).toMatchObject({
    near: [{ from: '2027-09-01' }, { from: '2027-09-08' }],
    later: [],
  });
});

test('from Saturday on the next week is told of as the one that is, as its list goes out then', () => {
  const [far] = [moves(['2027-08-01', '2027-08-09'])];
  expect(changesTold(far, '2027-04-19', '2027-04-17').later).toHaveLength(1);
  expect(changesTold(far, '2027-04-19', '2027-04-16').later).toHaveLength(0);
});

test('one reason for several tasks is said of each', () => {
  const [move] = moves(['2027-04-21', '2027-04-24']);
  const group = {
    ...move,
    kind: 'moved',
    keys: ['a', 'b'],
    titles: ['a', 'b'],
    because: ['Its window closed.'],
  } as const;
  expect(becauseText(group)).toBe('For each: Its window closed.');
  expect(becauseText({ ...group, titles: ['a'] })).toBe('Its window closed.');
});
