/**
 * What put a task on the day it stands on, where that is not the day that suits it best.
 */
import { addDays, type Day, daysBetween, weekStart } from '../measures/days.ts';
import type { Reason } from '../practices/draft.ts';
import type { Plan, PlannedTask } from './plan.ts';
import type { Hours } from './week-hours.ts';
import { WeekLoad } from './week-load.ts';
import { isAway, unfitness } from './work-days.ts';

const OWN = "the garden's own plan" as const;

/** What a day is explained by: the plan's tasks, and how the household works. */
export interface Standing {
  plan: Pick<Plan, 'today' | 'tasks'>;
  household: Hours;
}

/**
 * Why a task that is still to be done stands on another day than its best one: what the gardener said first, then what
 * shuts the best day out, then what only drew it elsewhere. Nothing where it stands on its best day, or is settled.
 */
export function standsBecause(task: PlannedTask, standing: Standing): Reason[] {
  const { day, state, pinned, window } = task;
  if (state !== 'open') return [];
  if (pinned) return [{ rule: 'schedule.pinned', saw: { day }, source: OWN }];
  const best = window.preferred;
  if (day === best) return [];
  const shut = [byToday(best, standing), byOrder(task, standing), byAway(task, standing)].flatMap((each) => each ?? []);
  const drew = [byDays(task, standing), byMates(task, standing), byFullWeek(task, standing)].flatMap(
    (each) => each ?? [],
  );
  const found = [...shut, ...drew];
  return found.length > 0 ? found : [{ rule: 'schedule.shared-out', saw: { best, day }, source: OWN }];
}

function byToday(best: Day, { plan: { today } }: Standing): Reason | undefined {
  return best < today ? { rule: 'schedule.best-past', saw: { best }, source: OWN } : undefined;
}

/** What it waits for that is not done by its best day. */
function byOrder({ after, window }: PlannedTask, { plan }: Standing): Reason | undefined {
  const waits = after.flatMap(({ key, minDays }) => {
    const first = plan.tasks.find((other) => other.key === key);
    if (first === undefined || first.state === 'skipped') return [];
    return [{ task: first.title, day: first.day, days: minDays, opens: addDays(first.day, minDays) }];
  });
  const [last] = waits.sort((a, b) => (a.opens > b.opens ? -1 : 1));
  if (last === undefined || last.opens <= window.preferred) return undefined;
  const { opens: _, ...saw } = last;
  return { rule: 'schedule.waits', saw, source: OWN };
}

/** A time away that its best day, or a day between that and its own, falls into. */
function byAway({ day, window: { preferred } }: PlannedTask, { household }: Standing): Reason | undefined {
  const [from, to] = preferred < day ? [preferred, day] : [day, preferred];
  const gone = household.away.find((away) => away.from <= to && away.to >= from);
  if (gone === undefined || isAway(day, household.away)) return undefined;
  return { rule: 'schedule.nobody-home', saw: { from: gone.from, to: gone.to }, source: OWN };
}

/** Its best day is none of the household's days in the garden. */
function byDays({ day, window: { preferred } }: PlannedTask, { household }: Standing): Reason | undefined {
  if (isAway(preferred, household.away) || unfitness(preferred, household) <= unfitness(day, household))
    return undefined;
  return { rule: 'schedule.work-day', saw: { day: preferred }, source: OWN };
}

/** The same work elsewhere, or the work it rides with, that is wanted nearer to this day. */
function byMates(task: PlannedTask, { plan }: Standing): Reason | undefined {
  const { day, lotId, key, window } = task;
  const apart = Math.abs(daysBetween(window.preferred, day));
  const mates = plan.tasks.filter((other) => other.lotId === lotId && other.key !== key && other.day === day);
  const host = task.weight === 'check' ? mates.find(({ weight }) => weight === 'work') : undefined;
  const mate = host ?? mates.find((other) => Math.abs(daysBetween(other.window.preferred, day)) < apart);
  return mate && { rule: 'schedule.together', saw: { task: mate.title, best: window.preferred }, source: OWN };
}

/** The week of its best day holds too much for it besides. */
function byFullWeek(task: PlannedTask, { plan, household }: Standing): Reason | undefined {
  const best = task.window.preferred;
  const monday = weekStart(best);
  if (task.weight === 'check' || monday === weekStart(task.day) || isAway(best, household.away)) return undefined;
  const load = new WeekLoad([], household);
  for (const other of plan.tasks) {
    if (other.state !== 'skipped' && weekStart(other.day) === monday) load.add(other.day, other);
  }
  if (load.isCrowdedFor(best, [task])) return { rule: 'schedule.entries', saw: { monday }, source: OWN };
  return load.isFullFor(best, [task]) ? { rule: 'schedule.hours', saw: { monday }, source: OWN } : undefined;
}
