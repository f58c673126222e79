/**
 * What the steward says against a change.
 */
import { InputRefused, type Problem } from '../../garden/problem.ts';

/** What was wrong with a change, in the steward's own words; nothing when it was made. */
export async function refusalsOf(change: () => Promise<unknown>): Promise<readonly Problem[]> {
  try {
    await change();
    return [];
  } catch (error) {
    if (error instanceof InputRefused) return error.problems;
    throw error;
  }
}
