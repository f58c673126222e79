import { PLAIN_SHAPE } from '../../calendar/feed-shape.ts';
import { LABEL_CHARACTERS } from '../../calendar/typed-shape.ts';
import { command } from '../command-line/command.ts';
import { feedLine, shapeOf, shapeOptions } from '../command-line/feed-shape.ts';
import { chosenGarden, withHousehold } from '../command-line/household.ts';
import { ofOneGarden } from '../command-line/options.ts';
import { textValue } from '../command-line/values.ts';
import { writeLines } from '../text/output.ts';
import { addressOf, reachNote } from './feed-address.ts';

const LABEL = 'Everything';

export const feedAdd = command({
  name: 'add',
  about: 'Makes a calendar feed and shows its address.',
  options: {
    label: {
      flags: '--label <text>',
      about: `whose it is, or on which device, up to ${LABEL_CHARACTERS} characters (default: ${LABEL})`,
      value: textValue('Give a label, such as "Kitchen phone".').optional(),
    },
    ...shapeOptions,
    ...ofOneGarden,
  },
  run: (call) =>
    withHousehold(call, {}, async ({ steward }) => {
      const { at, settings, options } = call;
      const { garden } = await steward.view(await chosenGarden(steward, options.garden));
      const shape = shapeOf({ label: options.label, typed: options }, PLAIN_SHAPE, garden);
      const feed = await steward.addFeed(garden.id, options.label ?? LABEL, shape);
      writeLines(at.stdout, [feedLine(feed, garden), addressOf(settings, feed.token), reachNote(settings)]);
    }),
});
