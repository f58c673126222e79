/**
 * Plans kept up to date while the server runs: each garden's day turns at its own midnight.
 */
import type { Steward } from '../../steward/doings/steward.ts';

/** How often days are looked at: no plan is more than a minute behind its midnight. */
const EVERY_MS = 60_000;

/** Who is told how rounds end. */
export interface RoundEnds<Done> {
  /** A round came to its end: what it did. */
  done(what: Done): void;
  /** A round failed, or a part of it; the next one comes all the same. */
  failed(error: unknown): void;
}

/**
 * Has plans whose day has passed made again, now and every minute; meanwhile the last good ones are served.
 *
 * @param ends told of the gardens planned, and of what could not be planned
 * @returns a function that stops it after the gardens under way
 */
export function keepPlanned(
  steward: Pick<Steward, 'refresh'>,
  ends: RoundEnds<readonly string[]>,
): () => Promise<void> {
  const stopped = new AbortController();
  const round = () => steward.refresh(stopped.signal).then(ends.done, ends.failed);
  let underWay = round();
  const timer = setInterval(() => {
    underWay = underWay.then(round);
  }, EVERY_MS);
  return () => {
    clearInterval(timer);
    stopped.abort();
    return underWay;
  };
}
