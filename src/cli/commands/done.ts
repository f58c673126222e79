import type { GardenView, Used } from '../../steward/doings/steward.ts';
import { askedAmounts, askedChoice } from '../../web/task/amounts.ts';
import { command } from '../command-line/command.ts';
import { BY } from '../command-line/household.ts';
import { formatOption, ofOneGarden } from '../command-line/options.ts';
import { refusal } from '../command-line/refusal.ts';
import { dayValue, numberValue, textValue } from '../command-line/values.ts';
import { settleTasks } from '../text/settled-text.ts';

/** As much as the garden file takes of a thing. */
const MOST = 100_000;

export const done = command({
  name: 'done',
  about: 'Marks tasks done and shows what that moves; without a key it lists what could be marked.',
  argument: { flags: '[keys...]', about: 'the keys of the tasks, as the list and "plan --format json" have them' },
  options: {
    on: { flags: '--on <day>', about: 'the day they were done (default: today)', value: dayValue.optional() },
    litres: {
      flags: '--litres <number>',
      about: 'litres really used, ordered or made, where the task counts them (default: as planned)',
      value: numberValue('litres', 40, 0.1, MOST).optional(),
    },
    grams: {
      flags: '--grams <number>',
      about: 'grams really used, where the task counts them (default: as planned)',
      value: numberValue('grams', 250, 0.1, MOST).optional(),
    },
    of: {
      flags: '--of <fertiliser>',
      about: 'the fertiliser that was strewn, where it was another than planned',
      value: textValue('Name a fertiliser, such as blood_meal.').optional(),
    },
    ...ofOneGarden,
    format: formatOption('text', 'json'),
  },
  run: (call) => {
    const { on, litres, grams, of } = call.options;
    const told: Used = {
      ...(litres === undefined ? {} : { litres }),
      ...(grams === undefined ? {} : { grams }),
      ...(of === undefined ? {} : { fertiliserId: of }),
    };
    return settleTasks(call, (steward, view, keys) =>
      steward.markDone(view.garden.id, keys, on ?? view.plan.today, BY, usedBy(view, keys, told)),
    );
  },
});

/** The amounts told, by the one task that counts them. */
function usedBy({ garden, plan }: GardenView, keys: readonly string[], told: Used): Record<string, Used> {
  const tasks = plan.tasks.filter(({ key }) => keys.includes(key));
  const used: Record<string, Used> = {};
  const give = (measure: keyof Used, flag: string, asking: readonly string[]): void => {
    const [key, ...others] = asking;
    if (told[measure] === undefined || tasks.length < keys.length) return;
    if (key !== undefined && others.length === 0) used[key] = { ...used[key], [measure]: told[measure] };
    else throw amountRefused(flag, key === undefined);
  };
  const asks = (measure: 'litres' | 'grams'): string[] =>
    tasks
      .filter((task) => askedAmounts(task, garden.place.units).some((asked) => asked.measure === measure))
      .map(({ key }) => key);
  give('litres', '--litres', asks('litres'));
  give('grams', '--grams', asks('grams'));
  give('fertiliserId', '--of', tasks.flatMap((task) => askedChoice(task) && task.key).filter(isKey));
  return used;
}

function isKey(key: string | undefined): key is string {
  return key !== undefined;
}

function amountRefused(flag: string, isNone: boolean) {
  return isNone
    ? refusal('Nothing was marked.', flag, 'none of these tasks counts that.', 'Leave it out.')
    : refusal('Nothing was marked.', flag, 'more than one of these tasks counts that.', 'Mark them one by one.');
}
