/**
 * A fault as it is told where the program runs.
 */
import { InputRefused } from '../garden/problem.ts';
import { withoutTokens } from '../web/trouble.ts';

/** What was refused in its own words; of anything else all there is, but for secrets. */
export function faultText(fault: unknown): string {
  if (fault instanceof InputRefused || !(fault instanceof Error)) return withoutTokens(String(fault));
  return withoutTokens(fault.stack ?? fault.message);
}
