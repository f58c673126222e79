/**
 * Work given to somebody on the page of its task.
 */
import type { TaskKey } from '../../practices/draft.ts';
import type { GardenView, Steward } from '../../steward/doings/steward.ts';
import { taskPath } from '../addresses/addresses.ts';
import type { Form } from '../requests/form.ts';
import { BY } from '../requests/garden-view.ts';
import { isUnsettled, type TaskView } from './task-view.ts';

/** What came back of the form. */
export interface EnteredGiving {
  keys: readonly TaskKey[];
  /** A member's name; nothing between the quotes for nobody in particular. */
  to: string;
}

/** The fields of the form that was sent, or nothing where it was another form. */
export function enteredGiving(form: Form): EnteredGiving | undefined {
  return form.text('do') === 'assign' ? { keys: form.list('give'), to: form.text('to') } : undefined;
}

/** The ticked tasks of an entry given to a member, or to nobody in particular; what is so already stays unsaid. */
export function assigned(steward: Steward, { garden }: GardenView, { task, lot }: TaskView, form: Form) {
  const keys = form.list('give');
  const to = form.text('to') || undefined;
  const chosen = lot.filter(isUnsettled).filter(({ key }) => keys.includes(key));
  if (chosen.length === 0)
    form.refuse({ where: 'Which are meant', what: 'None is ticked.', mend: 'Tick at least one.' });
  const tasks = chosen.filter(({ key }) => garden.assigned[key] !== to).map(({ key, title }) => ({ key, title }));
  const told = { kind: 'task-assigned' as const, tasks, ...(to === undefined ? {} : { to }) };
  return {
    change: async () => (tasks.length === 0 ? undefined : steward.report(garden.id, told, BY)),
    leadsTo: async () => taskPath(garden.id, task.key),
  };
}
