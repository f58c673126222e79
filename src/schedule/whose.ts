/**
 * Whose a task is.
 */
import type { Garden } from '../garden/garden.ts';
import type { Member } from '../garden/household.ts';
import type { PlannedTask } from './plan.ts';

/** What tells whose a task is. */
type Task = Pick<PlannedTask, 'key' | 'practice' | 'subject'>;

/**
 * Whether a task is a member's: one that was given to somebody is theirs alone, whatever they see to; any other goes by
 * its practice and its bed, or by its practice alone where it belongs to no bed.
 */
export function isTheirs(
  task: Task,
  { name, practices, beds }: Pick<Member, 'name' | 'practices' | 'beds'>,
  assigned: Garden['assigned'],
): boolean {
  const given = assigned[task.key];
  if (given !== undefined) return given === name;
  const bed = bedOf(task);
  return (practices?.includes(task.practice) ?? true) && (bed === undefined || (beds?.includes(bed) ?? true));
}

/** The bed a task is about, by id; piles and the garden as a whole have none. */
export function bedOf({ subject }: Pick<PlannedTask, 'subject'>): string | undefined {
  if (subject.type === 'bed') return subject.id;
  return 'bedId' in subject ? subject.bedId : undefined;
}
