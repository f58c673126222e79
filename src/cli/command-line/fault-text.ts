/**
 * A fault as it is told where the program runs.
 */
import { InputRefused } from '../../garden/problem.ts';
import { stackOf } from '../../log/log.ts';
import { withoutTokens } from '../../log/redact.ts';
import { StoreFault } from '../../store/fault.ts';

/** What was refused in its own words; of anything else all there is, but for secrets. */
export function faultText(fault: unknown): string {
  const isTold = fault instanceof InputRefused || fault instanceof StoreFault;
  return withoutTokens(isTold ? String(fault) : stackOf(fault));
}
