/**
 * What a change to the plan of the beds breaks, and what it mends.
 */
import type { Garden } from '../../garden/garden.ts';
import type { PracticeInput } from '../../practices/practice.ts';
import { brokenRules } from '../../practices/rotation-plan/broken.ts';
import { MOST_SEASONS } from '../../practices/rotation-plan/garden-problem.ts';
import type { BrokenRule } from '../../practices/rotation-plan/looked-at.ts';
import { plannedProblem } from './season-table.ts';

/** Rules that break in one garden and not in the other. */
export interface BrokenBy {
  breaks: readonly BrokenRule[];
  mends: readonly BrokenRule[];
}

/** A garden as it stands held against the same with a change taken in. */
export function brokenBy(input: PracticeInput, after: Garden): BrokenBy {
  const brokenIn = (garden: Garden): readonly BrokenRule[] =>
    brokenRules(plannedProblem({ ...input, garden }, MOST_SEASONS), []);
  const [was, is] = [brokenIn(input.garden), brokenIn(after)];
  return { breaks: without(is, was), mends: without(was, is) };
}

function without(broken: readonly BrokenRule[], known: readonly BrokenRule[]): BrokenRule[] {
  const held = new Set(known.map((each) => JSON.stringify(each)));
  return broken.filter((each) => !held.has(JSON.stringify(each)));
}
