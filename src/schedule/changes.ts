/**
 * What a new plan did to the one before, and why.
 */
import { addDays, type Day, type Instant } from '../measures/days.ts';
import type { Reason, TaskKey } from '../practices/draft.ts';
import { CHANGES_KEPT_DAYS, type Change, type Plan, type PlannedTask } from './plan.ts';

/** Days ahead beyond which a task that comes into sight is no news: the horizon moves a day every day. */
const NEWS_DAYS = 330;

/** What naming changes has to reckon with. */
export interface ChangeInput {
  today: Day;
  now: Instant;
  /** Keys the gardener settled (done or skipped): their leaving is no news to them. */
  settled: ReadonlySet<TaskKey>;
}

/** The changes since the plan before, with those of the last days that it already held; newest first. */
export function changesSince(published: Plan | undefined, tasks: readonly PlannedTask[], input: ChangeInput): Change[] {
  if (published === undefined) return [];
  const since = addDays(input.today, -CHANGES_KEPT_DAYS);
  const kept = published.changes.filter(({ at }) => at.slice(0, 10) >= since);
  return [...newChanges(published, tasks, input), ...kept];
}

function newChanges(published: Plan, tasks: readonly PlannedTask[], input: ChangeInput): Change[] {
  const before = new Map(published.tasks.map((task) => [task.key, task]));
  const now = new Map(tasks.map((task) => [task.key, task]));
  const changes = tasks.flatMap((task) => changeOf(before.get(task.key), task, input));
  for (const task of published.tasks) {
    const gone = task.state === 'open' && !now.has(task.key) && !input.settled.has(task.key);
    if (gone && task.window.latest >= input.today) changes.push(dropped(task, input.now));
  }
  return changes.sort((a, b) => ((a.to ?? a.from ?? '') < (b.to ?? b.from ?? '') ? -1 : 1));
}

function changeOf(before: PlannedTask | undefined, task: PlannedTask, { today, now }: ChangeInput): Change[] {
  if (task.state !== 'open' && task.state !== 'lapsed') return [];
  const { key, title } = task;
  if (before === undefined || before.state === 'done' || before.state === 'skipped') {
    if (task.day > addDays(today, NEWS_DAYS)) return [];
    return [{ key, title, kind: 'added', to: task.day, because: task.reasons, at: now }];
  }
  if (before.day !== task.day) {
    return [
      { key, title, kind: 'moved', from: before.day, to: task.day, because: whyMoved(before, task, today), at: now },
    ];
  }
  const reworded = newReasons(before, task);
  return reworded.length === 0 ? [] : [{ key, title, kind: 'reworded', to: task.day, because: reworded, at: now }];
}

function newReasons(before: PlannedTask, task: PlannedTask): Reason[] {
  const known = new Set(before.reasons.map((reason) => JSON.stringify(reason)));
  return task.reasons.filter((reason) => !known.has(JSON.stringify(reason)));
}

function whyMoved(before: PlannedTask, task: PlannedTask, today: Day): Reason[] {
  const own = "the garden's own plan" as const;
  if (task.pinned) return [{ rule: 'schedule.pinned', saw: { day: task.day }, source: own }];
  if (before.pinned) return [{ rule: 'schedule.unpinned', saw: { day: task.day }, source: own }];
  const reasons = newReasons(before, task);
  if (reasons.length > 0) return reasons;
  if (before.day < today) return [{ rule: 'schedule.not-done', saw: { day: before.day }, source: own }];
  return [{ rule: 'schedule.gathered', saw: { day: task.day }, source: own }];
}

function dropped(task: PlannedTask, now: Instant): Change {
  const because: Reason = { rule: 'schedule.no-longer-wanted', saw: {}, source: "the garden's own plan" };
  return { key: task.key, title: task.title, kind: 'dropped', from: task.day, because: [because], at: now };
}
