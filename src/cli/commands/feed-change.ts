import { command } from '../command-line/command.ts';
import {
  asksForShape,
  feedLine,
  openFeed,
  shapeBackOptions,
  shapeOf,
  shapeOptions,
} from '../command-line/feed-shape.ts';
import { chosenGarden, withHousehold } from '../command-line/household.ts';
import { ofOneGarden } from '../command-line/options.ts';
import { refusal } from '../command-line/refusal.ts';
import { writeLines } from '../text/output.ts';

export const feedChange = command({
  name: 'change',
  about: 'Shapes a feed anew at the address it has; what is not named stays.',
  argument: { flags: '<id>', about: 'the feed, as "feed list" names it' },
  options: { ...shapeOptions, ...shapeBackOptions, ...ofOneGarden },
  run: (call) =>
    withHousehold(call, {}, async ({ steward }) => {
      const { at, options, argument: id = '' } = call;
      if (!asksForShape(options)) {
        const mend = 'Name what to change, such as --ahead 90. "loamtide feed change --help" lists all of it.';
        throw refusal('Nothing was changed.', 'feed change', 'No option says what to change.', mend);
      }
      const { garden } = await steward.view(await chosenGarden(steward, options.garden));
      const feed = await openFeed(steward, garden.id, id);
      const shape = shapeOf({ label: undefined, typed: options }, feed.shape, garden);
      const changed = await steward.changeFeed(garden.id, id, { shape });
      writeLines(at.stdout, [feedLine(changed ?? feed, garden)]);
    }),
});
