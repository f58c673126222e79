/**
 * What a taking-back is about: only there are the days held to again that stood before it was said. Work it has nothing
 * to do with keeps the day it has by now.
 */
import { type Day, daysBetween } from '../measures/days.ts';
import type { TaskDraft, TaskKey } from '../practices/draft.ts';
import { GATHER_DAYS } from './gather.ts';
import { placeOf } from './room.ts';

/** What was taken back on a day. */
export interface TakenBack {
  /** The day it was said, the first of several. */
  since: Day;
  /** The tasks it named; all where it was the garden file or a time away. What it says of windows, the drafts show. */
  about: readonly TaskKey[] | 'all';
}

/**
 * The tasks a taking-back touches: those it names and those whose window it alters, what comes before and after them,
 * and what is gathered with them or rides along.
 *
 * @param altered keys of the drafts whose windows it gives other days
 */
export function touchedBy(
  { about }: TakenBack,
  drafts: readonly TaskDraft[],
  altered: readonly TaskKey[],
): ReadonlySet<TaskKey> {
  if (about === 'all') return new Set(drafts.map(({ key }) => key));
  const touched = inOrderWith(new Set([...about, ...altered]), drafts);
  const leads = drafts.filter(({ key }) => touched.has(key));
  const along = drafts.filter((draft) => leads.some((lead) => goesWith(draft, lead)));
  return new Set([...touched, ...along.map(({ key }) => key)]);
}

/** Tasks with all that waits for them and all they wait for, however far along. */
function inOrderWith(keys: ReadonlySet<TaskKey>, drafts: readonly TaskDraft[]): ReadonlySet<TaskKey> {
  const found = new Set(keys);
  for (const { key, after } of drafts) {
    if (found.has(key) || after.some((wait) => found.has(wait.key))) {
      for (const each of [key, ...after.map((wait) => wait.key)]) found.add(each);
    }
  }
  return found.size === keys.size ? found : inOrderWith(found, drafts);
}

function goesWith(draft: TaskDraft, lead: TaskDraft): boolean {
  if (draft.weight === 'check' && placeOf(draft) === placeOf(lead)) return true;
  const apart = Math.abs(daysBetween(draft.window.preferred, lead.window.preferred));
  return draft.job.id === lead.job.id && apart <= GATHER_DAYS;
}
