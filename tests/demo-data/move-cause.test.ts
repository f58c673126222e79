import { describe, expect, it } from 'vitest';
import type { TaskDraft } from '../../src/practices/draft.ts';
import type { Plan } from '../../src/schedule/plan.ts';
import { draft, planOn } from '../schedule/drafts.ts';
import { movesIn } from './lived-year.ts';
import { causeOf, isReasoned } from './move-cause.ts';

/** In April 2027 the Wednesdays are 7, 14 and 21, the Saturdays 3, 10, 17 and 24. */
const a = draft('sow', 'a', ['2027-04-01', '2027-04-08', '2027-04-30']);

/** What is made of a move from one plan to the next, where the first holds the next to nothing. */
function judged(before: readonly TaskDraft[], after: readonly TaskDraft[]): [string, boolean][] {
  const { held: _, ...free }: Plan = planOn('2027-04-01', before);
  const replan = { today: '2027-04-02', when: 'morning' as const, before: free, drafts: after };
  const made = { ...replan, after: planOn('2027-04-02', after, { published: free }) };
  const moves = movesIn(made);
  expect(moves.every(({ inside }) => inside)).toBe(true);
  return moves.map((move) => [causeOf(move, made), isReasoned(move)]);
}

describe('a move inside seven days', () => {
  it('for a full week has no cause, and what is told of it is no reason', () => {
    const full = ['m', 'n', 'o', 'p', 'q'].map((job) => draft(job, 'b', ['2027-04-05', '2027-04-07', '2027-04-11']));
    expect(judged([a], [a, ...full])).toEqual([['nothing', false]]);
  });

  it('for other company has none either', () => {
    const mate = draft('sow', 'b', ['2027-04-01', '2027-04-17', '2027-04-30']);
    expect(judged([a], [a, mate])).toEqual([['nothing', false]]);
  });

  it('for a best day that wandered has none, though the window is told', () => {
    const later = draft('sow', 'a', ['2027-04-01', '2027-04-17', '2027-04-30']);
    expect(judged([a], [later])).toEqual([['nothing', true]]);
  });

  it('for a window that shuts the day out has one', () => {
    const later = draft('sow', 'a', ['2027-04-12', '2027-04-17', '2027-04-30'], { reasons: a.reasons });
    expect(judged([a], [later])).toEqual([['its window', true]]);
  });

  it('for the order of work has one', () => {
    const cut = draft('cut', 'a', ['2027-04-01', '2027-04-08', '2027-04-30']);
    const waits = { ...cut, after: [{ key: a.key, minDays: 3 }] };
    expect(judged([a, cut], [a, waits])).toEqual([['the order of work', true]]);
  });
});
