/**
 * What a link of an answer is about: its task, the same work beside it, and what was said of it.
 */
import { earliestSending } from '../../digest/mail/due-lists.ts';
import { membersOf } from '../../garden/household-changes.ts';
import { standingEntries } from '../../garden/project.ts';
import { addDays, type Day } from '../../measures/days.ts';
import type { TaskKey } from '../../practices/draft.ts';
import type { PlannedTask } from '../../schedule/plan.ts';
import { isTheirs } from '../../schedule/whose.ts';
import { type Answered, answeredOf } from '../../steward/answers/answered.ts';
import type { AnswerLink, OwnLink } from '../../steward/doings/mail-links.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { isUnsettled, taskView } from '../task/task-view.ts';

/** Days of the week that a list asks answers for. */
const WEEK_DAYS = 7;

/** A link with all its page shows. */
export interface AnswerView {
  view: GardenView;
  link: OwnLink<AnswerLink>;
  task: PlannedTask;
  /** The entry of the list that the link stood under, as a calendar calls it. */
  title: string;
  /** Work that can be answered: the entry's while its own task is open, then what is left of the same job. */
  open: readonly PlannedTask[];
  /** Everything this link may say something of. */
  reach: ReadonlySet<TaskKey>;
  /** The newest word on any of it, while it stands. */
  answered: Answered | undefined;
}

/**
 * The reader's same job on other beds up to the end of the list's week, unless it was settled before the list can have gone
 * out: it stood in one entry with the task, or might have.
 */
function besideIt({ plan, garden, ledger }: GardenView, task: PlannedTask, link: AnswerLink): PlannedTask[] {
  const until = addDays(link.monday, WEEK_DAYS);
  const reader = membersOf(garden).find(({ id }) => id === link.memberId);
  const isRead = (each: PlannedTask): boolean =>
    reader !== undefined && (reader.mail?.tasks !== 'own' || isTheirs(each, reader, garden.assigned));
  const settled = settledSince(ledger, earliestSending(link.monday));
  return plan.tasks.filter(
    (each) =>
      each.job.id === task.job.id &&
      each.subject.id !== task.subject.id &&
      each.day < until &&
      (isUnsettled(each) || settled.has(each.key)) &&
      isRead(each),
  );
}

/** What was done or skipped from a day on, and still is. */
function settledSince(ledger: GardenView['ledger'], from: Day): Set<TaskKey> {
  const since = standingEntries(ledger).filter(({ recordedOn }) => recordedOn >= from);
  return new Set(
    since.flatMap(({ fact }) =>
      fact.kind === 'tasks-done' || fact.kind === 'tasks-skipped' ? fact.tasks.map(({ key }) => key) : [],
    ),
  );
}

/** What a link is about today; nothing when its task has left the plan. */
export function answerView(view: GardenView, link: OwnLink<AnswerLink>): AnswerView | undefined {
  const { plan, ledger } = view;
  const found = taskView(view, link.key);
  if (found === undefined) return undefined;
  const { task, lot } = found;
  const reach = new Set([task, ...lot, ...besideIt(view, task, link)].map(({ key }) => key));
  const asked = isUnsettled(task) ? lot : plan.tasks.filter(({ key }) => reach.has(key));
  const title = plan.entries.find(({ keys }) => keys.includes(task.key))?.title ?? task.title;
  const answered = answeredOf(ledger, reach, link.memberId);
  return { view, link, task, title, open: asked.filter(isUnsettled), reach, answered };
}
