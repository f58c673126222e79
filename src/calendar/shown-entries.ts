/**
 * Which of a plan's entries one feed shows.
 */
import type { Garden } from '../garden/garden.ts';
import type { Member } from '../garden/household.ts';
import { addDays, type Day } from '../measures/days.ts';
import type { TaskKey } from '../practices/draft.ts';
import type { Entry, Plan, PlannedTask } from '../schedule/plan.ts';
import { bedOf, isTheirs } from '../schedule/whose.ts';
import { type FeedShape, memberOfFeed } from './feed-shape.ts';

/** Days that work still to be done stays in the feed after its day. House default: one week to catch up. */
const UNDONE_SHOWN_DAYS = 7;

/** Who does what, and who was given what, for a feed of one person. */
export interface People {
  members: readonly Member[];
  assigned: Garden['assigned'];
}

/** Nobody at all: for feeds of everybody's work. */
const NOBODY: People = { members: [], assigned: {} };

/**
 * The entries of a feed. Open ones and missed ones that should still be done stay for a week after their day, finished
 * ones for as long as the shape says; in a feed that has one entry a day both stay that long, so that an entry of the
 * past changes by what happens and never because a day has passed. Skipped entries, and missed ones that are past
 * mending or replaced by other work, leave. A filter chooses whole entries: one with a task that fits is shown with all
 * of its tasks. A feed of somebody who is not among the members shows none.
 */
export function shownEntries(plan: Plan, shape: FeedShape, people: People = NOBODY): Entry[] {
  const whose = memberOfFeed(shape, people.members);
  if (shape.person !== undefined && whose === undefined) return [];
  const isWhose = (task: PlannedTask) => whose === undefined || isTheirs(task, whose, people.assigned);
  const byKey = new Map<TaskKey, PlannedTask>(plan.tasks.map((task) => [task.key, task]));
  return plan.entries.filter((entry) => {
    const tasks = entry.keys.flatMap((key) => byKey.get(key) ?? []);
    return (
      isWithin(entry, plan.today, shape) &&
      isStanding(entry, tasks, shape) &&
      tasks.some((task) => isChosen(task, shape) && isWhose(task))
    );
  });
}

function isWithin({ day, state }: Entry, today: Day, { daysAhead, daysBack, by }: FeedShape): boolean {
  const back = state === 'done' || by === 'day' ? daysBack : Math.min(UNDONE_SHOWN_DAYS, daysBack);
  return day >= addDays(today, -back) && day <= addDays(today, daysAhead);
}

function isStanding({ state }: Entry, [first]: readonly PlannedTask[], shape: FeedShape): boolean {
  switch (state) {
    case 'open':
      return true;
    case 'done':
      return shape.done;
    case 'lapsed':
      return first === undefined || first.ifMissed === 'still do';
    case 'skipped':
      return false;
    default:
      return state satisfies never;
  }
}

/** Whether a task is of the practices and on the beds that a feed was narrowed to. */
function isChosen(task: PlannedTask, { practices, beds }: FeedShape): boolean {
  const bed = bedOf(task);
  const inBeds = beds.length === 0 || (bed !== undefined && beds.includes(bed));
  return inBeds && (practices.length === 0 || practices.includes(task.practice));
}
