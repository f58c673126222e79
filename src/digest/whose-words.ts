/**
 * Whose work an entry is, in words.
 */
import type { Garden } from '../garden/garden.ts';
import { capital } from '../measures/capital.ts';
import type { PlannedTask } from '../schedule/plan.ts';
import { isTheirs } from '../schedule/whose.ts';

/**
 * "For Ann.", "For Ann or Bo.", or bed by bed where they differ: "North bed: for Ann. South bed: for Bo." Empty where it is
 * everybody's, where the household has no members, and for what is the reader's own already.
 */
export function whoseWords(
  tasks: readonly PlannedTask[],
  { household, assigned }: Pick<Garden, 'household' | 'assigned'>,
  reader?: string,
): string {
  const members = household?.members ?? [];
  const subjectsByNames = new Map<string, string[]>();
  const work = tasks.filter(({ weight }) => weight !== 'check');
  for (const task of work.length > 0 ? work : tasks) {
    const theirs = members.filter((member) => isTheirs(task, member, assigned)).map(({ name }) => name);
    const names = task.assignedTo !== undefined ? [task.assignedTo] : theirs.length === members.length ? [] : theirs;
    const words = names.join(' or ');
    subjectsByNames.set(words, [...(subjectsByNames.get(words) ?? []), task.subject.name]);
  }
  const [[only] = [''], ...others] = [...subjectsByNames];
  if (others.length === 0) return only === '' || only === reader ? '' : `For ${only}.`;
  return [...subjectsByNames]
    .filter(([names]) => names !== '')
    .map(([names, subjects]) => `${capital([...new Set(subjects)].join(', '))}: for ${names}.`)
    .join(' ');
}
