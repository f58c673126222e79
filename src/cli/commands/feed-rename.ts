import { labelProblems } from '../../calendar/typed-shape.ts';
import { InputRefused } from '../../garden/problem.ts';
import { command } from '../command.ts';
import { openFeed } from '../feed-shape.ts';
import { chosenGarden, withHousehold } from '../household.ts';
import { ofOneGarden } from '../options.ts';
import { writeLines } from '../output.ts';
import { textValue } from '../values.ts';

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
