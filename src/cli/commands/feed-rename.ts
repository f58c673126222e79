import { labelProblems } from '../../calendar/typed-shape.ts';
import { InputRefused } from '../../garden/problem.ts';
import { command } from '../command-line/command.ts';
import { openFeed } from '../command-line/feed-shape.ts';
import { chosenGarden, withHousehold } from '../command-line/household.ts';
import { ofOneGarden } from '../command-line/options.ts';
import { textValue } from '../command-line/values.ts';
import { writeLines } from '../text/output.ts';

export const feedRename = command({
  name: 'rename',
  about: 'Gives a feed another label; its address stays.',
  argument: { flags: '<id>', about: 'the feed, as "feed list" names it' },
  options: {
    label: {
      flags: '--label <text>',
      about: 'whose it is, or on which device',
      value: textValue('Give a label, such as "Kitchen phone".'),
    },
    ...ofOneGarden,
  },
  run: (call) =>
    withHousehold(call, {}, async ({ steward }) => {
      const { at, options, argument: id = '' } = call;
      const garden = await chosenGarden(steward, options.garden);
      await openFeed(steward, garden, id);
      const problems = labelProblems(options.label, '--label');
      if (problems.length > 0) throw new InputRefused('Nothing was changed.', problems);
      await steward.changeFeed(garden, id, { label: options.label });
      writeLines(at.stdout, [`${id} is called ${options.label} now.`]);
    }),
});
