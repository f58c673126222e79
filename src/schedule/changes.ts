/**
 * What a new plan did to the one before, and why.
 */
import { addDays, type Day, type Instant, weekStart } from '../measures/days.ts';
import type { Reason, TaskKey } from '../practices/draft.ts';
import { hasShifted } from './held.ts';
import { lastDayInSight, STILL_DO_DAYS } from './place.ts';
import { CHANGES_KEPT_DAYS, type Change, type Plan, type PlannedTask } from './plan.ts';
import type { Hours } from './week-hours.ts';
import { WeekLoad } from './week-load.ts';
import { isAway, unfitness } from './work-days.ts';

/** Days ahead beyond which nothing is news: the horizon moves a day every day, and stirs what lies along it. */
const NEWS_DAYS = 330;

/** What naming changes has to reckon with. */
export interface ChangeInput {
  today: Day;
  now: Instant;
  /** Keys the gardener settled (done or skipped): their leaving is no news to them. */
  settled: ReadonlySet<TaskKey>;
  household: Hours;
  /** Set when the gardener brought a file in or took something back: what that did was shown before it was done. */
  silent: boolean;
}

type ByKey = ReadonlyMap<TaskKey, PlannedTask>;

/** Two plans held beside each other. */
interface Beside extends ChangeInput {
  was: ByKey;
  is: ByKey;
}

const OWN = "the garden's own plan" as const;

/**
 * The changes since the plan before, with those of the last days that it already held; newest first. A silent plan tells
 * nothing new, and no longer tells what it took back.
 */
export function changesSince(published: Plan | undefined, tasks: readonly PlannedTask[], input: ChangeInput): Change[] {
  if (published === undefined) return [];
  const since = addDays(input.today, -CHANGES_KEPT_DAYS);
  const kept = published.changes.filter(({ on, at }) => (on ?? at.slice(0, 10)) >= since);
  const beside: Beside = { ...input, was: byKey(published.tasks), is: byKey(tasks) };
  return input.silent
    ? kept.filter((change) => stillTrue(change, beside))
    : [...newChanges(beside).map((change) => ({ ...change, on: input.today })), ...kept];
}

function stillTrue({ key, kind, to }: Change, { is }: Beside): boolean {
  return kind === 'dropped' ? !is.has(key) : is.get(key)?.day === to;
}

function byKey(tasks: readonly PlannedTask[]): ByKey {
  return new Map(tasks.map((task) => [task.key, task]));
}

function newChanges(beside: Beside): Change[] {
  const { was, is, settled, today } = beside;
  const changes = [...is.values()].flatMap((task) => changeOf(was.get(task.key), task, beside));
  for (const task of was.values()) {
    if (is.has(task.key) || settled.has(task.key) || !isToDo(task) || !isNear(task, today)) continue;
    changes.push(dropped(task, today > lastDayInSight(task) ? givenUp(task) : noLongerWanted, beside));
  }
  const place = ({ to, from, key }: Change): string => `${to ?? from ?? ''} ${key}`;
  return changes.sort((a, b) => (place(a) < place(b) ? -1 : 1));
}

function changeOf(before: PlannedTask | undefined, task: PlannedTask, beside: Beside): Change[] {
  const { today, now: at } = beside;
  if (task.state !== 'open' && task.state !== 'lapsed') return [];
  const { key, title } = task;
  const seen = before !== undefined && isToDo(before);
  if (!isToDo(task)) return before?.state === 'open' ? [dropped(before, lapsedReason(task), beside)] : [];
  if (!isNear(task, today) && !(seen && isNear(before, today))) return [];
  if (!seen) return [{ key, title, kind: 'added', to: task.day, because: task.reasons, at }];
  if (before.day !== task.day) {
    const because = whyMoved(before, task, beside);
    return [{ key, title, kind: 'moved', from: before.day, to: task.day, because, at }];
  }
  const because = newReasons(before, task);
  return because.length === 0 ? [] : [{ key, title, kind: 'reworded', to: task.day, because, at }];
}

function isNear({ day }: PlannedTask, today: Day): boolean {
  return day <= addDays(today, NEWS_DAYS);
}

/** Whether a task still asks for something: open, or late and worth doing all the same. */
function isToDo({ state, ifMissed }: PlannedTask): boolean {
  return state === 'open' || (state === 'lapsed' && ifMissed === 'still do');
}

function newReasons(before: PlannedTask, task: PlannedTask): Reason[] {
  const known = new Set(before.reasons.map((reason) => JSON.stringify(reason)));
  return task.reasons.filter((reason) => !known.has(JSON.stringify(reason)));
}

/** Why a task moved: what the gardener said first, then what shuts its old day out, then what only drew it elsewhere. */
function whyMoved(before: PlannedTask, task: PlannedTask, beside: Beside): Reason[] {
  if (task.pinned) return [{ rule: 'schedule.pinned', saw: { day: task.day }, source: OWN }];
  if (task.state === 'lapsed') return [lapsedReason(task)];
  if (before.pinned && before.day >= beside.today) return [{ rule: 'schedule.unpinned', saw: {}, source: OWN }];
  const shutOut = before.day < task.window.earliest || before.day > task.window.latest;
  if (shutOut) return byWindow(before, task);
  const [held] = [byDelay(before, beside), byOrder(before, task, beside), byHousehold(before, task, beside)].filter(
    isGiven,
  );
  if (held !== undefined) return [held];
  const full = byFullWeek(before, task, beside);
  if (full !== undefined && !hasShifted(before.window.preferred, task.window.preferred)) return [full];
  if (hasOtherWindow(before, task)) return byWindow(before, task);
  return [byLead(task, beside) ?? full ?? byCompany(before, task, beside)];
}

function isGiven(reason: Reason | undefined): reason is Reason {
  return reason !== undefined;
}

function byDelay({ day }: PlannedTask, { today }: Beside): Reason | undefined {
  return day < today ? { rule: 'schedule.not-done', saw: { day }, source: OWN } : undefined;
}

/** What its practice found anew, and where that is nothing but other days, these. */
function byWindow(before: PlannedTask, task: PlannedTask): Reason[] {
  const reasons = newReasons(before, task);
  if (reasons.length > 0) return reasons;
  const { earliest, latest } = task.window;
  return [{ rule: 'schedule.window', saw: { earliest, latest }, source: OWN }];
}

function hasOtherWindow({ window: was }: PlannedTask, { window: is }: PlannedTask): boolean {
  return was.earliest !== is.earliest || was.preferred !== is.preferred || was.latest !== is.latest;
}

/** Something it waits for shuts the old day out, or was moved or done on another day and so opens the new one. */
function byOrder(before: PlannedTask, task: PlannedTask, { was, is }: Beside): Reason | undefined {
  const firsts = task.after.flatMap((wait) => {
    const [then, first] = [was.get(wait.key), is.get(wait.key)];
    if (first === undefined || first.state === 'skipped') return [];
    const opens = then !== undefined && then.day !== first.day && shutsOut(wait, then.day, task.day);
    return shutsOut(wait, first.day, before.day) || opens ? [first] : [];
  });
  const [first] = firsts;
  return first && { rule: 'schedule.follows', saw: { task: first.title, day: first.day }, source: OWN };
}

function shutsOut({ minDays, maxDays }: PlannedTask['after'][number], first: Day, day: Day): boolean {
  return day < addDays(first, minDays) || (maxDays !== undefined && day > addDays(first, maxDays));
}

function byHousehold(before: PlannedTask, { day }: PlannedTask, { household }: Beside): Reason | undefined {
  if (isAway(before.day, household.away)) return { rule: 'schedule.away', saw: { day: before.day }, source: OWN };
  if (unfitness(before.day, household) <= unfitness(day, household)) return undefined;
  return { rule: 'schedule.work-day', saw: { day: before.day }, source: OWN };
}

/** Its week holds too much now for it to be there too, with what left that week along with it. */
function byFullWeek(before: PlannedTask, task: PlannedTask, { was, is, household }: Beside): Reason | undefined {
  const monday = weekStart(before.day);
  if (task.weight === 'check' || monday === weekStart(task.day)) return undefined;
  const load = new WeekLoad([], household);
  for (const other of is.values()) {
    if (other.key !== task.key && weekStart(other.day) === monday && takesTime(other))
      load.add(other.day, other, leadOf(other, is));
  }
  const along = mates(was, before).filter((mate) => {
    const now = is.get(mate.key);
    return now !== undefined && isToDo(now) && weekStart(now.day) !== monday && !hasOtherWindow(mate, now);
  });
  if (load.isCrowdedFor(before.day, [task])) return { rule: 'schedule.entries', saw: { monday }, source: OWN };
  return load.isFullFor(before.day, [task, ...along])
    ? { rule: 'schedule.hours', saw: { monday }, source: OWN }
    : undefined;
}

function takesTime(task: PlannedTask): boolean {
  return task.state === 'done' || isToDo(task);
}

/** The job a task is counted with: a check that rides along is counted with its work. */
function leadOf({ job, weight, lotId }: PlannedTask, is: ByKey): string {
  if (weight !== 'check') return job.id;
  return [...is.values()].find((other) => other.lotId === lotId && other.weight !== 'check')?.job.id ?? job.id;
}

function mates(tasks: ByKey, { key, lotId }: PlannedTask): PlannedTask[] {
  return [...tasks.values()].filter((other) => other.lotId === lotId && other.key !== key);
}

/** What it goes with was moved by something of its own. */
function byLead(task: PlannedTask, { was, is }: Beside): Reason | undefined {
  const lead = mates(is, task).find((other) => {
    const earlier = was.get(other.key);
    const leading = other.weight === 'work' && task.weight === 'check';
    return earlier !== undefined && earlier.day !== task.day && (leading || hasOtherWindow(earlier, other));
  });
  return lead && { rule: 'schedule.goes-with', saw: { task: lead.title, day: task.day }, source: OWN };
}

/** What no window, order, household or full week asked for: other company, or nothing but the load of the weeks. */
function byCompany(before: PlannedTask, task: PlannedTask, { was, is }: Beside): Reason {
  const { day } = task;
  const [had, has] = [mates(was, before), mates(is, task)];
  if (has.some(({ key }) => had.every((other) => other.key !== key)))
    return { rule: 'schedule.gathered', saw: { day }, source: OWN };
  if (had.some(({ key }) => has.every((other) => other.key !== key)))
    return { rule: 'schedule.alone', saw: { day }, source: OWN };
  return { rule: 'schedule.load', saw: { from: before.day, day }, source: OWN };
}

function lapsedReason({ window }: PlannedTask): Reason {
  return { rule: 'schedule.lapsed', saw: { day: window.latest }, source: OWN };
}

function givenUp({ window }: PlannedTask): Reason {
  return { rule: 'schedule.given-up', saw: { day: window.latest, days: STILL_DO_DAYS }, source: OWN };
}

const noLongerWanted: Reason = { rule: 'schedule.no-longer-wanted', saw: {}, source: OWN };

function dropped({ key, title, day }: PlannedTask, because: Reason, { now }: Beside): Change {
  return { key, title, kind: 'dropped', from: day, because: [because], at: now };
}
