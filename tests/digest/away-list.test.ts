import { describe, expect, test } from 'vitest';
import { awayList } from '../../src/digest/away-list.ts';
import { hollowLane, planOf, type Wanted } from './example.ts';

const TODAY = '2027-07-01';
const AWAY = { from: '2027-07-10', to: '2027-07-17' };

const WANTED: readonly Wanted[] = [
  { key: 'cut/north', window: ['2027-07-03', '2027-07-14', '2027-07-16'] },
  { key: 'cut/south', window: ['2027-07-03', '2027-07-14', '2027-07-16'] },
  { key: 'turn/bay', window: ['2027-07-10', '2027-07-14', '2027-07-28'] },
  {
    key: 'mow/rye',
    window: ['2027-07-11', '2027-07-14', '2027-07-15'],
    minder: 'Cut the rye.',
    missedNote: 'Seed may have set.',
  },
  { key: 'look/ahead', window: ['2027-08-01', '2027-08-04', '2027-08-08'] },
];

function listOf(away = AWAY, pins: Record<string, string> = {}) {
  const garden = { ...hollowLane, pins };
  const before = planOf(TODAY, WANTED, undefined, garden);
  return awayList(before, planOf(TODAY, WANTED, before, { ...garden, away: [away] }), away);
}

describe('the list before a time away', () => {
  test('tells what is pulled forward, what waits, and what is left', () => {
    // Of the new day, the time away is told first.
    const reasons = expect.arrayContaining([expect.objectContaining({ rule: 'schedule.nobody-home', saw: AWAY })]);
    expect(listOf()).toEqual({
      earlier: [
        { keys: ['cut/north', 'cut/south'], title: 'cut: north, south', from: '2027-07-14', to: '2027-07-07', reasons },
      ],
      later: [{ keys: ['turn/bay'], title: 'turn bay', from: '2027-07-17', to: '2027-07-21', reasons }],
      left: [
        {
          keys: ['mow/rye'],
          title: 'mow rye',
          day: '2027-07-14',
          missedNote: 'Seed may have set.',
          asks: ['Cut the rye.'],
          pinned: false,
        },
      ],
    });
  });

  test('holds a task pinned into it as left, whatever its window', () => {
    expect(listOf(AWAY, { 'look/ahead': '2027-07-12' }).left).toMatchObject([
      { keys: ['look/ahead'], pinned: true },
      { keys: ['mow/rye'], pinned: false },
    ]);
  });

  test('is empty for days with no work in them', () => {
    expect(listOf({ from: '2027-09-01', to: '2027-09-09' })).toEqual({ earlier: [], later: [], left: [] });
  });
});
