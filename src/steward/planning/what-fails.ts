/**
 * Whether the household's program does its work: what whoever watches over it asks every few seconds.
 */
import { addDays } from '../../measures/days.ts';
import type { Store } from '../../store/store.ts';
import { type Clock, dayIn } from './planner.ts';

/**
 * Days by which the newest plan may be behind the day of UTC: a zone west of it is one behind for part of the day
 * (as far as UTC-12), and one more is a night that planning may have missed. House default.
 */
const BEHIND_DAYS = 2;

/**
 * A word on what fails; nothing where all is well. It looks at the newest plan, not at each: a garden that cannot be
 * planned is told of elsewhere, and starting the program anew would not help it.
 */
export async function whatFails({ store, clock }: { store: Store; clock: Clock }): Promise<string | undefined> {
  let newest: string | undefined;
  try {
    newest = await store.newestPlanDay();
  } catch {
    return 'the database does not answer';
  }
  const today = clock.today ?? dayIn('UTC', clock.now());
  return newest !== undefined && newest < addDays(today, -BEHIND_DAYS) ? 'the plans are behind' : undefined;
}
