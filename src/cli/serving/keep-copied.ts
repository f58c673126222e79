/**
 * The daily copy, made while the server runs.
 */
import { Cron } from 'croner';
import { DateTime } from 'luxon';
import type { Clock } from '../../steward/planning/planner.ts';
import type { Household } from '../command-line/household.ts';
import type { RoundEnds } from './keep-planned.ts';

/** Whether a copy is due is looked at every ten minutes: the quiet hour is met, and a start in between is not waited for. */
const EVERY_TEN_MINUTES = '*/10 * * * *';

/**
 * Makes the daily copy now, if it is due, and whenever it is.
 *
 * @param ends told of each copy made, and of one that could not be
 * @returns a function that stops it and waits for the copy under way
 */
export function keepCopied(
  { store, steward }: Household,
  clock: Pick<Clock, 'now'>,
  { done, failed }: RoundEnds<string | undefined>,
): () => Promise<void> {
  let underWay = Promise.resolve();
  const copied = async () => {
    const now = clock.now();
    done(await store.renewCopies(now, await householdHour(steward, now)));
  };
  const round = (): void => {
    underWay = underWay.then(copied).catch(failed);
  };
  const rounds = new Cron(EVERY_TEN_MINUTES, { unref: true }, round);
  round();
  return () => {
    rounds.stop();
    return underWay;
  };
}

/** The hour by the clock of the first garden; by UTC where there is none that can be read. */
async function householdHour(steward: Household['steward'], now: string): Promise<number> {
  const [first] = await steward.gardenIds();
  const zone = first === undefined ? 'utc' : await steward.view(first).then(timeZoneOf, () => 'utc');
  return DateTime.fromISO(now, { zone }).hour;
}

function timeZoneOf({ garden }: { garden: { place: { timeZone: string } } }): string {
  return garden.place.timeZone;
}
