/**
 * What was missed, in few lines: first what can still be saved, and a count for the rest. A list on return, not a
 * backlog.
 */
import type { TaskKey } from '../practices/draft.ts';
import { titleOf } from '../schedule/entry-text.ts';
import type { Plan, PlannedTask } from '../schedule/plan.ts';
import { lapsedTasks } from './closing.ts';

/** Most lines told of what was missed. House default: one a day of the week. */
export const TRIAGE_LINES = 7;

/** Missed work of one calendar entry whose window closed on one day, with the same advice. */
export interface TriageLine {
  keys: readonly TaskKey[];
  title: string;
  /** The last day of its window. */
  latest: PlannedTask['window']['latest'];
  ifMissed: PlannedTask['ifMissed'];
  /** What is lost, and what to do now. */
  missedNote: string;
}

/** The lines worth reading, and how many more there are. */
export interface Triage {
  lines: readonly TriageLine[];
  more: number;
}

/**
 * Missed work by what can still be saved: what holds up other work, then the rest that is still worth doing, what
 * another thing can replace, looks, and last what is only to be known. Within each the latest closed comes first.
 *
 * @param told keys of work that is told elsewhere
 */
export function triageOf(plan: Plan, told: ReadonlySet<TaskKey> = new Set()): Triage {
  const awaited = new Set(
    plan.tasks.filter(({ state }) => state === 'open').flatMap(({ after }) => after.map(({ key }) => key)),
  );
  const lines = gathered(lapsedTasks(plan).filter(({ key }) => !told.has(key)))
    .map((tasks) => ({ line: lineOf(tasks), rank: Math.min(...tasks.map((task) => rankOf(task, awaited))) }))
    .sort((a, b) => a.rank - b.rank)
    .map(({ line }) => line);
  return { lines: lines.slice(0, TRIAGE_LINES), more: Math.max(0, lines.length - TRIAGE_LINES) };
}

function rankOf({ key, ifMissed, weight }: PlannedTask, awaited: ReadonlySet<TaskKey>): number {
  if (ifMissed === 'drop') return 4;
  if (ifMissed === 'replace') return 2;
  if (awaited.has(key)) return 0;
  return weight === 'check' ? 3 : 1;
}

/** Tasks of one entry, one last day and one advice together, in the order of the first of each. */
function gathered(tasks: readonly PlannedTask[]): PlannedTask[][] {
  const groups = new Map<string, PlannedTask[]>();
  for (const task of tasks) {
    const name = `${task.lotId}|${task.window.latest}|${task.missedNote}`;
    groups.set(name, [...(groups.get(name) ?? []), task]);
  }
  return [...groups.values()];
}

function lineOf(tasks: readonly PlannedTask[]): TriageLine {
  const [first] = tasks;
  if (first === undefined) throw new RangeError('A line of the triage needs a task.');
  const { window, ifMissed, missedNote } = first;
  return { keys: tasks.map(({ key }) => key), title: titleOf(tasks), latest: window.latest, ifMissed, missedNote };
}

/** The one line that stands for all the rest; empty when there is none. */
export function moreLine({ more }: Triage): string {
  return more === 0 ? '' : `And ${more} more that can wait or ${more === 1 ? 'is' : 'are'} past.`;
}
