/**
 * How long a list is held while it is sent, and when it is tried again.
 */
import type { Instant } from '../../measures/days.ts';
import { ANSWER_MS } from './hand-in.ts';

const MS_PER_MINUTE = 60_000;

/**
 * How long a claim holds while a list is made ready and the server spoken to. House default: a program that stopped then
 * has handed nothing over, and whoever comes after may begin anew.
 */
const READY_MINUTES = 5;

/** How long the handing over may take before it is taken to have broken off: longer than any answer is waited for. */
const HANDING_MINUTES = ANSWER_MS / MS_PER_MINUTE + 5;

/**
 * Minutes to wait after the first, second, … try, and after every later one as after the last. House default: soon, for
 * what passes in a moment; then ever more rarely, as RFC 5321, 4.5.4.1 asks of those who try again.
 */
const WAIT_MINUTES = [1, 5, 15, 60, 240] as const;

/** When a claim made now runs out. */
export function readyUntil(now: Instant): Instant {
  return minutesAfter(now, READY_MINUTES);
}

/** When a handing over begun now is taken to have broken off. */
export function handingUntil(now: Instant): Instant {
  return minutesAfter(now, HANDING_MINUTES);
}

/** When a list is tried again that was tried so often. */
export function nextTryAt(tries: number, now: Instant): Instant {
  return minutesAfter(now, WAIT_MINUTES[tries - 1] ?? WAIT_MINUTES[WAIT_MINUTES.length - 1] ?? 0);
}

function minutesAfter(now: Instant, minutes: number): Instant {
  return new Date(Date.parse(now) + minutes * MS_PER_MINUTE).toISOString();
}
