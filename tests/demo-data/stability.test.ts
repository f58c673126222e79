import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/measures/days.ts';
import { reasonSentence } from '../../src/schedule/explain.ts';
import { SHIFT_DAYS } from '../../src/schedule/held.ts';
import { livedDemo, type Move, movesIn, type Replan } from './lived-year.ts';

/** Four weeks of the spring of 2018 as Milwaukee had it: warm days, then snow on thawed ground on the 15th and the 18th. */
const replans = [...livedDemo('2027-04-01', 28)];
const moves = replans.flatMap((replan) => movesIn(replan).map((move) => ({ ...move, replan })));
const inside = moves.filter((move) => move.inside);

type Told = Move & { replan: Replan };

const isShutOut = ({ before: { day }, after: { window } }: Move): boolean =>
  day < window.earliest || day > window.latest;

function isHeldUp({ before: { day }, after: { after } }: Move, { after: plan }: Replan): boolean {
  return after.some(({ key, minDays, maxDays }) => {
    const first = plan.tasks.find((task) => task.key === key);
    if (first === undefined) return false;
    return day < addDays(first.day, minDays) || (maxDays !== undefined && day > addDays(first.day, maxDays));
  });
}

/** A check that was in one entry with work which has left that day. */
function isLeft({ before, after }: Move, plans: Replan): boolean {
  if (after.weight !== 'check') return false;
  const mates = plans.before.tasks.filter(({ lotId, key }) => lotId === before.lotId && key !== before.key);
  return mates.some(({ key }) => plans.after.tasks.find((task) => task.key === key)?.day !== before.day);
}

/** Work whose best day was shifted by more than a few days by what was done that day. */
function isRedated({ before, after }: Move, { when }: Replan): boolean {
  const days = (Date.parse(after.window.preferred) - Date.parse(before.window.preferred)) / 86_400_000;
  return when === 'evening' && Math.abs(days) > SHIFT_DAYS;
}

const cause = (move: Told): string => {
  if (isShutOut(move)) return 'its window';
  if (isHeldUp(move, move.replan)) return 'the order of work';
  if (isLeft(move, move.replan)) return 'its company';
  return isRedated(move, move.replan) ? 'what was done' : 'nothing';
};

describe('an entry published for the next seven days', () => {
  it('moves in such a spring now and then', () => {
    expect(replans.length).toBeGreaterThan(28);
    expect(inside.length).toBeGreaterThan(2);
  });

  it('moves for a cause that anybody can look up in the two plans', () => {
    expect(inside.filter((move) => cause(move) === 'nothing').map(({ before: { key } }) => key)).toEqual([]);
  });

  it('moves with a reason that says just that', () => {
    for (const move of inside) {
      const because = move.change?.because ?? [];
      expect([move.before.key, because.length > 0]).toEqual([move.before.key, true]);
      expect(because.every((reason) => reasonSentence(reason).length > 20)).toBe(true);
      const rule = because[0]?.rule;
      if (cause(move) === 'the order of work') expect(rule).toBe('schedule.follows');
      if (cause(move) === 'its company') expect(rule).toMatch(/^schedule\.(goes-with|gathered|alone)$/);
      if (cause(move) === 'its window') expect(rule).not.toMatch(/^schedule\.(follows|goes-with|gathered|alone|load)$/);
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
