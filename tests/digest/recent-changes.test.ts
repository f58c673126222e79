import { expect, test } from 'vitest';
import { recentChanges } from '../../src/digest/recent-changes.ts';
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
