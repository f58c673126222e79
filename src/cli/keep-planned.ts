/**
 * Plans kept up to date while the server runs: each garden's day turns at its own midnight.
 */
import type { Steward } from '../steward/steward.ts';

/** How often days are looked at: no plan is more than a minute behind its midnight. */
const EVERY_MS = 60_000;

/**
 * Has plans whose day has passed made again, now and every minute.
 *
 * @param report told of a garden that could not be planned; the others go on
 * @returns once the first round is over, a function that stops it after the round under way
 */
export async function keepPlanned(steward: Steward, report: (error: unknown) => void): Promise<() => Promise<void>> {
  const round = () => steward.refresh().then(() => undefined, report);
  let underWay = round();
  await underWay;
  const timer = setInterval(() => {
    underWay = underWay.then(round);
  }, EVERY_MS);
  return () => {
    clearInterval(timer);
    return underWay;
  };
}
