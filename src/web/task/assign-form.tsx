/**
 * Whose a task is, and the form that gives it to somebody.
 */
import type { Garden } from '../../garden/garden.ts';
import { membersOf } from '../../garden/household-changes.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { PlannedTask } from '../../schedule/plan.ts';
import { isTheirs } from '../../schedule/whose.ts';
import { taskPath } from '../addresses/addresses.ts';
import { inARow } from '../frame/words.ts';
import type { EnteredGiving } from './assigning.ts';
import { isUnsettled, type TaskView } from './task-view.ts';

interface AssignProps {
  found: TaskView;
  garden: Garden;
  entered: EnteredGiving | undefined;
}

/** Asks whose a task is to be; nothing where nobody is named, or where it is settled. */
export const AssignForm = ({ found: { task, lot }, garden, entered }: AssignProps) => {
  const members = membersOf(garden);
  if (members.length === 0 || !isUnsettled(task)) return null;
  const open = lot.filter(isUnsettled);
  const chosen = entered?.keys ?? open.map(({ key }) => key);
  const to = entered?.to ?? task.assignedTo ?? '';
  return (
    <>
      <h2>Whose it is</h2>
      <p class="small">{whoseInWords(task, garden)}</p>
      <form method="post" action={taskPath(garden.id, task.key)}>
        <input type="hidden" name="do" value="assign" />
        {open.length === 1 ? (
          <input type="hidden" name="give" value={task.key} />
        ) : (
          <fieldset>
            <legend>Which are meant?</legend>
            {open.map(({ key, title, assignedTo }) => (
              <label class="choice">
                <input type="checkbox" name="give" value={key} checked={chosen.includes(key)} />{' '}
                <span>
                  {readableIn(garden.place.units, title)}
                  {assignedTo !== undefined && `, now for ${assignedTo}`}
                </span>
              </label>
            ))}
          </fieldset>
        )}
        <label>
          Given to{' '}
          <select name="to">
            <option value="" selected={to === ''}>
              nobody in particular
            </option>
            {members.map(({ name }) => (
              <option value={name} selected={to === name}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <button type="submit">Give it</button>
        <p class="small">
          Then it stands in that person’s own feeds and lists alone. This one only, not the next like it.
        </p>
      </form>
    </>
  );
};

/** Whom a task was given to, or to whom it falls by what each sees to. */
function whoseInWords(task: PlannedTask, garden: Garden): string {
  if (task.assignedTo !== undefined) return `It was given to ${task.assignedTo}.`;
  const names = membersOf(garden)
    .filter((member) => isTheirs(task, member, garden.assigned))
    .map(({ name }) => name);
  if (names.length === 0) return 'It falls to nobody: neither its kind of work nor its bed is anyone’s.';
  return `It falls to ${inARow(names)}, by what ${names.length === 1 ? 'they see' : 'each sees'} to.`;
}
