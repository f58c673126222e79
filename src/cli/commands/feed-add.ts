import { command } from '../command.ts';
import { addressOf, reachNote } from '../feed-address.ts';
import { chosenGarden, withHousehold } from '../household.ts';
import { ofOneGarden } from '../options.ts';
import { writeLines } from '../output.ts';
import { textValue } from '../values.ts';

const LABEL = 'Everything';

/** Characters of a label: a line on the Feeds page. House default. */
const LONGEST_LABEL = 80;

export const feedAdd = command({
  name: 'add',
  about: 'Makes a calendar feed and shows its address.',
  options: {
    label: {
      flags: '--label <text>',
      about: `whose it is, or on which device (default: ${LABEL})`,
      value: textValue('Give a label, such as "Kitchen phone".')
        .max(LONGEST_LABEL, `Shorten it to ${LONGEST_LABEL} characters.`)
        .optional(),
    },
    ...ofOneGarden,
  },
  run: (call) =>
    withHousehold(call, {}, async ({ steward }) => {
      const { at, settings, options } = call;
      const feed = await steward.addFeed(await chosenGarden(steward, options.garden), options.label ?? LABEL);
      writeLines(at.stdout, [`${feed.id}: ${feed.label}`, addressOf(settings, feed.token), reachNote(settings)]);
    }),
});
