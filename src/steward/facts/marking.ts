/**
 * Tasks of the plan marked done, as facts: with the day, and what was really used where something was.
 */
import { type Effect, isOfSeed } from '../../garden/effects.ts';
import type { Fact } from '../../garden/facts.ts';
import { nearestNames, suggestion } from '../../garden/nearest-name.ts';
import { InputRefused, type Problem } from '../../garden/problem.ts';
import { withoutAbsent } from '../../garden/without-absent.ts';
import { fertilisers } from '../../handbook/fertilisers.ts';
import { addDays, type Day, isDay } from '../../measures/days.ts';
import { readableIn } from '../../measures/quantity.ts';
import { tenth } from '../../measures/tenth.ts';
import type { TaskKey } from '../../practices/draft.ts';
import type { Plan, PlannedTask } from '../../schedule/plan.ts';
import type { Used } from '../doings/steward.ts';
import type { VersionedView } from '../planning/planner.ts';
import { orderProblems } from './done-order.ts';
import { doneTask } from './done-task.ts';

/** Days back that work may still be marked done, and ahead that it may be pinned: a year. House default. */
export const MARK_DAYS = 366;

/** What can have been used of a thing at once: of litres as much as the garden file takes. House default. */
const MOST_USED = { litres: 100_000, grams: 100_000 } as const;

/** A refusal of one thing. */
export function refusal(where: string, what: string, mend: string): InputRefused {
  return new InputRefused('It cannot be done.', [{ where, what, mend }]);
}

const CHOOSE = 'Choose a task that is still open; the week page lists them.';

function openKeys({ tasks }: Plan): string[] {
  return tasks.filter(({ state }) => state === 'open' || state === 'lapsed').map(({ key }) => key);
}

/** What a mark is held against. */
type GardenAndPlan = Pick<VersionedView, 'garden' | 'plan'>;

/**
 * The open tasks with these keys.
 *
 * @throws {InputRefused} naming every key that is not one, and when there is none
 */
export function openTasks({ plan, garden }: GardenAndPlan, keys: readonly TaskKey[]): PlannedTask[] {
  const problems: Problem[] = [];
  const tasks = keys.flatMap((key) => {
    const task = plan.tasks.find((row) => row.key === key);
    if (task !== undefined && (task.state === 'open' || task.state === 'lapsed')) return [task];
    const what = task === undefined ? 'is not in the plan.' : `is ${task.state} already.`;
    const near = task === undefined ? nearestNames(key, openKeys(plan)) : [];
    const mend = near.length > 0 ? `Did you mean ${near.join(' or ')}?` : CHOOSE;
    const where = task === undefined ? key : readableIn(garden.place.units, task.title, plan.today);
    problems.push({ where, what, mend });
    return [];
  });
  if (keys.length === 0) problems.push({ where: 'tasks', what: 'None was chosen.', mend: 'Tick at least one.' });
  if (problems.length > 0) throw new InputRefused('It cannot be marked.', problems);
  return tasks;
}

/**
 * What marking tasks done on a day makes true.
 *
 * @param used what was used, by task, where it was other than planned
 * @throws {InputRefused} with every task and amount that cannot be
 */
export function doneFacts(
  { garden, plan }: VersionedView,
  keys: readonly TaskKey[],
  on: Day,
  used: Readonly<Record<TaskKey, Used>>,
): Fact[] {
  if (!isDay(on) || on > plan.today || on < addDays(plan.today, -MARK_DAYS)) {
    const mend = `Give a day of the past year up to today, such as ${plan.today}.`;
    throw refusal('the day it was done', `"${on}" cannot be used.`, mend);
  }
  const open = openTasks({ plan, garden }, keys);
  const wrong = open.flatMap((task) => [
    ...amountProblems(task, used[task.key] ?? {}),
    ...orderProblems(garden, task, on, keys),
  ]);
  if (wrong.length > 0) throw new InputRefused('It cannot be marked.', wrong);
  const { changes } = plan;
  const tasks = open.map((task) => doneTask(task, withUsed(task.makes, used[task.key] ?? {}), { on, changes }));
  return [{ kind: 'tasks-done', on, tasks }];
}

function amountProblems({ title }: PlannedTask, used: Used): Problem[] {
  const { fertiliserId } = used;
  const known = fertilisers.map(({ id }) => id);
  if (fertiliserId !== undefined && !known.includes(fertiliserId)) {
    const what = `"${fertiliserId}" is not a known fertiliser.`;
    return [{ where: title, what, mend: suggestion(fertiliserId, known) }];
  }
  const amounts = [
    { measure: 'litres' as const, amount: used.litres },
    ...[used.grams, ...Object.values(used.seed ?? {})].map((amount) => ({ measure: 'grams' as const, amount })),
  ];
  return amounts.flatMap(({ measure, amount }) => {
    const most = MOST_USED[measure];
    if (amount === undefined || (Number.isFinite(amount) && amount > 0 && amount <= most)) return [];
    const mend = `Give more than 0 and at most ${most} ${measure}.`;
    return [{ where: title, what: `${amount} ${measure} cannot have been used.`, mend }];
  });
}

function withUsed(makes: PlannedTask['makes'], { litres, grams, fertiliserId, seed }: Used): PlannedTask['makes'] {
  const planned = makes.reduce((sum, effect) => sum + (isOfSeed(effect) ? effect.grams : 0), 0);
  return makes.map((effect): Effect => {
    switch (effect.makes) {
      // What was planned of a pile is a guess: only what somebody measured is kept of it.
      case 'pile-built':
      case 'pile-finished':
        return withoutAbsent({ ...effect, litres });
      case 'bed-fed':
        return { ...effect, grams: grams ?? effect.grams, fertiliserId: fertiliserId ?? effect.fertiliserId };
      case 'seed-sown':
      case 'seed-bought': {
        const share = grams === undefined || planned === 0 ? effect.grams : tenth((grams * effect.grams) / planned);
        return { ...effect, grams: seed?.[effect.coverId] ?? share };
      }
      case 'bed-topdressed':
      case 'compost-bought':
        return { ...effect, litres: litres ?? effect.litres };
      default:
        return effect;
    }
  });
}
