/**
 * Lists sent while the server runs: each member's at the hour they chose, by the garden's own clock.
 */
import { Cron } from 'croner';
import type { Steward } from '../../steward/doings/steward.ts';
import type { Delivery } from '../../store/deliveries.ts';
import type { RoundEnds } from './keep-planned.ts';

/**
 * Every minute, on the minute: hours strike on it in every zone, settings may change at any time, and what was put off
 * comes due in between. Which lists are due is worked out anew each time, so that no minute slept through is lost.
 */
const EVERY_MINUTE = '* * * * *';

/** How long a list under way may still take when the program stops; then the line is broken off. House default. */
const GRACE_MS = 7_000;

/**
 * Sends what is due now and every minute; one round never begins while another runs.
 *
 * @param ends told of the lists a round sent or tried to, and of a round that failed as a whole
 * @returns a function that stops it and waits for the list under way
 */
export function keepPosted(
  steward: Pick<Steward, 'sendDue'>,
  ends: RoundEnds<readonly Delivery[]>,
): () => Promise<void> {
  const stopped = new AbortController();
  let underWay = Promise.resolve();
  const round = (atOnce = false): Promise<void> => {
    underWay = underWay.then(() => steward.sendDue({ atOnce, signal: stopped.signal })).then(ends.done, ends.failed);
    return underWay;
  };
  const clock = new Cron(EVERY_MINUTE, { protect: true, unref: true }, () => round());
  void round(true);
  return async () => {
    clock.stop();
    const impatience = setTimeout(() => stopped.abort(), GRACE_MS);
    await underWay;
    clearTimeout(impatience);
  };
}
