/**
 * The odds behind a task as past years alone have them.
 */
import type { Climate } from '../climate/climate.ts';
import { usualOf } from '../climate/logged.ts';
import type { Odds } from '../climate/odds.ts';
import type { Garden } from '../garden/garden.ts';
import { addDays, type Day } from '../measures/days.ts';
import { draftsOf } from './catalogue.ts';
import type { TaskDraft, TaskKey } from './draft.ts';

/** Days ahead that past years are worked out for: a year and a little more than the plan's, for windows that open later. */
const DAYS_AHEAD = 456;

/**
 * What the odds of a task would be had none of this year's weather been seen. Nothing where they are not counted from
 * years, where this year's weather changes nothing of them, or where the task would not be there.
 */
export function pastOddsOf(
  { key, odds }: Pick<TaskDraft, 'key' | 'odds'>,
  { garden, climate, today }: { garden: Garden; climate: Climate; today: Day },
): Odds | undefined {
  const usual = usualOf(climate);
  if (odds === undefined || odds.years === 0 || usual === climate) return undefined;
  const past = pastOdds(climate, garden, today).get(key);
  return past === undefined || past.years === 0 || isSame(past, odds) ? undefined : past;
}

interface Reckoned {
  garden: Garden;
  today: Day;
  odds: ReadonlyMap<TaskKey, Odds>;
}

const reckoned = new WeakMap<Climate, Reckoned>();

/** The odds of every task by past years alone: worked out once for a garden, its climate and a day. */
function pastOdds(climate: Climate, garden: Garden, today: Day): ReadonlyMap<TaskKey, Odds> {
  const held = reckoned.get(climate);
  if (held?.garden === garden && held.today === today) return held.odds;
  const drafts = draftsOf({ garden, climate: usualOf(climate), today, until: addDays(today, DAYS_AHEAD) });
  const odds = new Map(drafts.flatMap((draft) => (draft.odds === undefined ? [] : [[draft.key, draft.odds] as const])));
  reckoned.set(climate, { garden, today, odds });
  return odds;
}

function isSame(one: Odds, other: Odds): boolean {
  return one.early === other.early && one.median === other.median && one.late === other.late;
}
