/**
 * The odds behind a task as past years alone have them.
 */
import type { Climate } from '../climate/climate.ts';
import { usualOf } from '../climate/logged.ts';
import type { Odds } from '../climate/odds.ts';
import type { Garden } from '../garden/garden.ts';
import { addDays, type Day, latestOf } from '../measures/days.ts';
import { draftsOf } from './catalogue.ts';
import type { TaskDraft } from './draft.ts';

/** Days that a window may open later without this year's weather and still be found. House default. */
const LATER_DAYS = 60;

/**
 * What the odds of a task would be had none of this year's weather been seen. Nothing where they are not counted from
 * years, where this year's weather changes nothing of them, or where the task would not be there.
 */
export function pastOddsOf(
  { key, odds, window }: Pick<TaskDraft, 'key' | 'odds' | 'window'>,
  { garden, climate, today }: { garden: Garden; climate: Climate; today: Day },
): Odds | undefined {
  const usual = usualOf(climate);
  if (odds === undefined || odds.years === 0 || usual === climate) return undefined;
  const until = latestOf(addDays(window.latest, LATER_DAYS), today);
  const past = draftsOf({ garden, climate: usual, today, until }).find((draft) => draft.key === key)?.odds;
  return past === undefined || past.years === 0 || isSame(past, odds) ? undefined : past;
}

function isSame(one: Odds, other: Odds): boolean {
  return one.early === other.early && one.median === other.median && one.late === other.late;
}
