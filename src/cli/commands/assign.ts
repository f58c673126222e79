import { wrapped } from '../../digest/wrapped.ts';
import { suggestion } from '../../garden/nearest-name.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { isUnsettled, type TaskView, taskView } from '../../web/task/task-view.ts';
import { command, switchOption } from '../command-line/command.ts';
import { BY, chosenGarden, withHousehold } from '../command-line/household.ts';
import { ofOneGarden } from '../command-line/options.ts';
import { refusal } from '../command-line/refusal.ts';
import { textValue } from '../command-line/values.ts';
import { writeLines } from '../text/output.ts';

const NOTHING = 'Nothing was changed.';

export const assign = command({
  name: 'assign',
  about: 'Gives a task to a member of the household, or to nobody in particular.',
  argument: { flags: '<key>', about: 'the task, by the key that "loamtide plan --format json" names' },
  options: {
    to: {
      flags: '--to <name>',
      about: 'the member it is given to',
      value: textValue('Name a member of the household, such as Ida.').optional(),
    },
    nobody: switchOption('--nobody', 'it is to be nobody’s in particular again'),
    whole: switchOption('--whole', 'with all that stands in the same calendar entry'),
    ...ofOneGarden,
  },
  run: (call) =>
    withHousehold(call, {}, async ({ steward }) => {
      const { at, options, argument: key = '' } = call;
      const { to, nobody = false, whole = false } = options;
      if ((to === undefined) !== nobody) {
        throw refusal(NOTHING, 'assign', 'Whose it is to be is not clear.', 'Give either --to NAME or --nobody.');
      }
      const view = await steward.view(await chosenGarden(steward, options.garden));
      const { task, lot } = foundTask(view, key);
      const meant = whole ? lot.filter(isUnsettled) : [task];
      const tasks = meant.map((each) => ({ key: each.key, title: each.title }));
      const told = { kind: 'task-assigned' as const, tasks, ...(to === undefined ? {} : { to }) };
      await steward.report(view.garden.id, told, BY);
      const titles = (list: readonly { title: string }[]) =>
        list.map(({ title }) => readableIn(view.garden.place.units, title, view.plan.today)).join('; ');
      const others = lot.filter((each) => !meant.includes(each));
      writeLines(at.stdout, [
        ...wrapped(`Given to ${to ?? 'nobody in particular'}: ${titles(tasks)}.`),
        ...(others.length === 0 ? [] : wrapped(`As it was, in the same calendar entry: ${titles(others)}.`)),
      ]);
    }),
});

function foundTask(view: GardenView, key: string): TaskView {
  const found = taskView(view, key);
  if (found !== undefined) return found;
  const keys = view.plan.tasks.map((task) => task.key);
  throw refusal(NOTHING, key, 'is not in the plan.', suggestion(key, keys));
}
