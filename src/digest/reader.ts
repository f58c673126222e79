/**
 * Whom a weekly list is for, and what of the plan is theirs.
 */
import type { Garden } from '../garden/garden.ts';
import type { Member } from '../garden/household.ts';
import type { Instant } from '../measures/days.ts';
import type { TaskKey } from '../practices/draft.ts';
import type { Plan } from '../schedule/plan.ts';
import { isTheirs } from '../schedule/whose.ts';

/** The reader of a list; without a person it is the whole household. */
export interface Reader {
  /** The name of a member. */
  person?: string;
  /** When the last list went out to this reader; absent, what moved in the last seven days is told. */
  since?: Instant;
}

type People = Pick<Garden, 'household' | 'assigned'>;

/**
 * A plan with what is a member's own: every entry that has a task of theirs, whole, and what changed of such tasks. What
 * has left the plan is told to everybody, for nobody is left to be asked whose it was. Overdue or clashing work of others
 * is left out.
 *
 * @throws {RangeError} when the household has no such member
 */
export function readersPlan(plan: Plan, garden: People, person: string | undefined): Plan {
  if (person === undefined) return plan;
  const { household, assigned } = garden;
  const member = memberNamed(household?.members, person);
  const mine = new Set(plan.tasks.filter((task) => isTheirs(task, member, assigned)).map(({ key }) => key));
  const entries = plan.entries.filter(({ keys }) => keys.some((key) => mine.has(key)));
  const shown = new Set<TaskKey>([...mine, ...entries.flatMap(({ keys }) => keys)]);
  const known = new Set(plan.tasks.map(({ key }) => key));
  return {
    ...plan,
    entries,
    tasks: plan.tasks.filter(({ key }) => shown.has(key)),
    changes: plan.changes.filter(({ key }) => shown.has(key) || !known.has(key)),
    clashes: plan.clashes.filter(({ key }) => shown.has(key)),
  };
}

function memberNamed(members: readonly Member[] = [], person: string): Member {
  const member = members.find(({ name }) => name === person);
  if (member !== undefined) return member;
  const names = members.map(({ name }) => name).join(', ');
  throw new RangeError(`Nobody called "${person}" is in the household; its members are: ${names || 'none'}.`);
}
