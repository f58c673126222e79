import { command } from '../command-line/command.ts';
import { BY } from '../command-line/household.ts';
import { formatOption, ofOneGarden } from '../command-line/options.ts';
import { settleTasks } from '../text/settled-text.ts';

export const skip = command({
  name: 'skip',
  about:
    'Takes tasks out of the plan and the calendar, and shows what that moves; without a key it lists what could be.',
  argument: { flags: '[keys...]', about: 'the keys of the tasks, as the list and "plan --format json" have them' },
  options: { ...ofOneGarden, format: formatOption('text', 'json') },
  run: (call) => settleTasks(call, (steward, view, keys) => steward.skip(view.garden.id, keys, BY)),
});
