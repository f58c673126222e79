/**
 * The tasks behind the dates of what grows: which one begins a crop or a cover, and which one ends it.
 */
import type { TaskKey } from '../../practices/draft.ts';
import type { Plan } from '../../schedule/plan.ts';
import { editPath, whyPath } from '../addresses/addresses.ts';

const STARTS: ReadonlySet<string> = new Set(['sow-crop', 'set-out', 'sow-cover']);
const ENDS: ReadonlySet<string> = new Set(['clear-bed', 'cut-cover', 'check-winter-kill']);

/** Keys of the tasks by the id of the planting or stand that they begin or end. */
export interface GrownTasks {
  start: ReadonlyMap<string, TaskKey>;
  end: ReadonlyMap<string, TaskKey>;
}

/** What the plan knows of each crop's and cover's days. */
export function grownTasks({ tasks }: Pick<Plan, 'tasks'>): GrownTasks {
  const keysOf = (kinds: ReadonlySet<string>): Map<string, TaskKey> => {
    const of = tasks.filter(({ kind }) => kinds.has(kind));
    // The first of several is the one its day goes by; a map keeps the last.
    return new Map([...of].reverse().map(({ key }) => [grownIn(key), key]));
  };
  return { start: keysOf(STARTS), end: keysOf(ENDS) };
}

/** The planting or stand a key names: "bed-clear/planting:p-3" is about p-3. */
function grownIn(key: TaskKey): string {
  return /\/(?:planting|stand):([^/]+)/.exec(key)?.[1] ?? '';
}

/** Something that grows, or is to. */
export interface Grown {
  kind: 'crop' | 'cover';
  id: string;
}

/**
 * Where an end of something that grows is asked why: at the task that brings it; and where it came about, or was told, or
 * follows from what was told, at what was told.
 */
export function grownWay(gardenId: string, tasks: GrownTasks, end: keyof GrownTasks, { kind, id }: Grown): string {
  const key = tasks[end].get(id);
  return key === undefined
    ? editPath(gardenId, kind === 'crop' ? 'plantings' : 'cover-stands', id)
    : whyPath(gardenId, key);
}
