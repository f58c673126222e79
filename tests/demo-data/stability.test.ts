import { describe, expect, it } from 'vitest';
import { reasonSentence } from '../../src/schedule/explain.ts';
import { livedDemo, movesIn } from './lived-year.ts';
import { causeOf, isReasoned } from './move-cause.ts';

/** Four weeks of the spring of 2018 as Milwaukee had it: warm days, then snow on thawed ground on the 15th and the 18th. */
const replans = [...livedDemo('2027-04-01', 28)];
const moves = replans.flatMap((replan) => movesIn(replan).map((move) => ({ ...move, cause: causeOf(move, replan) })));
const inside = moves.filter((move) => move.inside);

describe('an entry published for the next seven days', () => {
  it('moves in such a spring now and then', () => {
    expect(replans.length).toBeGreaterThan(28);
    expect(inside.length).toBeGreaterThan(2);
  });

  it('moves for a cause that anybody can look up in the two plans', () => {
    expect(inside.filter(({ cause }) => cause === 'nothing').map(({ before: { key } }) => key)).toEqual([]);
  });

  it('moves with a reason that says just that, never for a fuller week or other company', () => {
    expect(inside.filter((move) => !isReasoned(move)).map(({ before: { key } }) => key)).toEqual([]);
    for (const { cause, change } of inside) {
      const because = change?.because ?? [];
      expect(because.every((reason) => reasonSentence(reason).length > 20)).toBe(true);
      const rule = because[0]?.rule;
      if (cause === 'the order of work') expect(rule).toBe('schedule.follows');
      if (cause === 'its company') expect(rule).toBe('schedule.goes-with');
      if (cause === 'its window') expect(rule).not.toMatch(/^schedule\.(follows|goes-with)$/);
    }
  });
});

describe('later work', () => {
  const later = moves.filter(({ late, inside }) => !late && !inside);

  it('moves with a reason too', () => {
    for (const { before, change } of later.filter(({ before: { day } }) => day < '2027-12-01'))
      expect([before.key, (change?.because.length ?? 0) > 0]).toEqual([before.key, true]);
  });

  it('does not go to and fro', () => {
    const places = new Map<string, string[]>();
    for (const { before, after } of moves)
      places.set(before.key, [...(places.get(before.key) ?? [before.day]), after.day]);
    const back = [...places].filter(([, days]) => new Set(days).size < days.length);
    expect(back).toEqual([]);
  });
});

describe('what was not done on its day', () => {
  it('goes on and says so', () => {
    const late = moves.filter((move) => move.late);
    expect(late.length).toBeGreaterThan(0);
    for (const { change } of late) expect(change?.because[0]?.rule).toMatch(/^schedule\.(not-done|lapsed)$/);
  });
});
