/**
 * A fault as it is told where the program runs.
 */
import { InputRefused } from '../garden/problem.ts';
import { stackOf } from '../log/log.ts';
import { withoutTokens } from '../log/redact.ts';

/** What was refused in its own words; of anything else all there is, but for secrets. */
export function faultText(fault: unknown): string {
  return withoutTokens(fault instanceof InputRefused ? String(fault) : stackOf(fault));
}
