/**
 * Beds in an order that hangs on what they are and not on where they stand in the garden's list.
 */
import type { PlanBed, RotationProblem } from './problem.ts';

/** All of a bed but its names: beds with the same are alike. */
export function kindOf({ id: _id, name: _name, ...rest }: PlanBed): string {
  return JSON.stringify(rest);
}

/** The same problem, its beds ordered by what they are; alike beds stay in the order of the garden. */
export function inSetOrder(problem: RotationProblem): RotationProblem {
  const kinds = new Map(problem.beds.map((bed) => [bed.id, kindOf(bed)]));
  const kind = ({ id }: PlanBed) => kinds.get(id) ?? '';
  const beds = [...problem.beds].sort((a, b) => (kind(a) === kind(b) ? 0 : kind(a) < kind(b) ? -1 : 1));
  return { ...problem, beds };
}
