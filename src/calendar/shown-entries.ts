/**
 * Which of a plan's entries one feed shows.
 */
import type { Member } from '../garden/garden.ts';
import { addDays, type Day } from '../measures/days.ts';
import type { TaskKey } from '../practices/draft.ts';
import type { Entry, Plan, PlannedTask } from '../schedule/plan.ts';
import type { FeedShape } from './feed-shape.ts';

/** Days that work still to be done stays in the feed after its day. House default: one week to catch up. */
const UNDONE_SHOWN_DAYS = 7;

/**
 * The entries of a feed. Open ones and missed ones that should still be done stay for a week after their day, finished
 * ones for as long as the shape says; in a feed that has one entry a day both stay that long, so that an entry of the
 * past changes by what happens and never because a day has passed. Skipped entries, and missed ones that are past
 * mending or replaced by other work, leave. A filter chooses whole entries: one with a task that fits is shown with all
 * of its tasks. A feed of somebody who is not among the members shows none.
 */
export function shownEntries(plan: Plan, shape: FeedShape, members: readonly Member[] = []): Entry[] {
  const whose = shape.person === undefined ? {} : members.find(({ name }) => name === shape.person);
  if (whose === undefined) return [];
  const byKey = new Map<TaskKey, PlannedTask>(plan.tasks.map((task) => [task.key, task]));
  return plan.entries.filter((entry) => {
    const tasks = entry.keys.flatMap((key) => byKey.get(key) ?? []);
    return isWithin(entry, plan.today, shape) && isStanding(entry, tasks, shape) && isWanted(tasks, shape, whose);
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

/** Who sees to what; what is left out is everything. */
type Whose = Pick<Member, 'practices' | 'beds'>;

function isWanted(tasks: readonly PlannedTask[], { practices, beds }: FeedShape, whose: Whose): boolean {
  if (practices.length + beds.length === 0 && whose.practices === undefined && whose.beds === undefined) return true;
  return tasks.some((task) => {
    const bed = bedOf(task);
    const inBeds = beds.length === 0 || (bed !== undefined && beds.includes(bed));
    return inBeds && (practices.length === 0 || practices.includes(task.practice)) && isTheirs(task, whose);
  });
}

/** Whether a task is somebody's: by its practice and its bed, or by its practice alone where it belongs to no bed. */
function isTheirs(task: PlannedTask, { practices, beds }: Whose): boolean {
  const bed = bedOf(task);
  return (practices?.includes(task.practice) ?? true) && (bed === undefined || (beds?.includes(bed) ?? true));
}

/** The bed a task is about, by id; piles and the garden as a whole have none. */
function bedOf({ subject }: PlannedTask): string | undefined {
  if (subject.type === 'bed') return subject.id;
  return 'bedId' in subject ? subject.bedId : undefined;
}
