import { describe, expect, it } from 'vitest';
import { gathered, type Room } from '../../src/schedule/gather.ts';
import type { Household } from '../../src/schedule/work-days.ts';
import { draft } from './drafts.ts';

const anyDay: Household = { workDays: [1, 2, 3, 4, 5, 6, 7], away: [] };

/** A room of April 2027, days of the month. */
function room(bed: string, from: number, preferred: number, to: number): Room {
  const day = (number: number): string => `2027-04-${String(number).padStart(2, '0')}`;
  const days = { from: day(from), preferred: day(preferred), to: day(to) };
  return { draft: draft('sow', bed, [days.from, days.preferred, days.to]), ...days };
}

/** Beds of each cluster, with its span and its preferred day of the month. */
function told(rooms: readonly Room[], household = anyDay): string[] {
  const number = (day: string): number => Number(day.slice(8));
  return gathered(rooms, household).map(({ rooms: members, from, to, preferred }) => {
    const beds = members.map(({ draft: { subject } }) => subject.id).join(' ');
    return `${beds}: ${number(from)} ${number(preferred)} ${number(to)}`;
  });
}

describe('gathered', () => {
  it('puts beds together whose windows meet, on the latest of their preferred days', () => {
    expect(told([room('a', 1, 5, 20), room('b', 3, 9, 25)])).toEqual(['a b: 3 9 20']);
  });

  it('parts beds whose windows do not meet', () => {
    expect(told([room('a', 1, 5, 8), room('b', 9, 9, 20)])).toEqual(['a: 1 5 8', 'b: 9 9 20']);
  });

  it('parts beds whose preferred days are more than ten days apart, first and last of a chain too', () => {
    expect(told([room('a', 1, 2, 30), room('b', 1, 12, 30)])).toEqual(['a b: 1 12 30']);
    expect(told([room('a', 1, 2, 30), room('b', 1, 13, 30)])).toEqual(['a: 1 2 30', 'b: 1 13 30']);
    expect(told([room('a', 1, 2, 30), room('b', 1, 10, 30), room('c', 1, 18, 30)])).toEqual([
      'a b: 1 10 30',
      'c: 1 18 30',
    ]);
  });

  it('counts those days from the day a bed was wanted on, not from the one that time away or an order left it', () => {
    const early = room('a', 9, 9, 30);
    const wanted = { ...early, draft: { ...early.draft, window: { ...early.draft.window, preferred: '2027-04-03' } } };
    expect(told([wanted, room('b', 9, 18, 30)])).toEqual(['a: 9 9 30', 'b: 9 18 30']);
    expect(told([wanted, room('b', 9, 13, 30)])).toEqual(['a b: 9 13 30']);
  });

  it('holds the preferred day inside the days the beds share', () => {
    expect(told([room('a', 1, 5, 7), room('b', 2, 12, 20)])).toEqual(['a b: 2 7 7']);
  });

  it('does not gather a bed away from its only work day', () => {
    const saturdays: Household = { workDays: [6], away: [] };
    expect(told([room('a', 5, 7, 9), room('b', 5, 8, 12)], saturdays)).toEqual(['a: 5 7 9', 'b: 5 8 12']);
    expect(told([room('a', 5, 7, 10), room('b', 5, 8, 12)], saturdays)).toEqual(['a b: 5 8 10']);
  });

  it('does not mind the order the beds come in', () => {
    const rooms = [room('a', 1, 5, 20), room('b', 3, 9, 25), room('c', 14, 17, 30), room('d', 1, 5, 6)];
    expect(told([...rooms].reverse())).toEqual(told(rooms));
  });
});
