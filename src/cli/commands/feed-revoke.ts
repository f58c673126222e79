import { GRACE_DAYS } from '../../calendar/closed-feed.ts';
import { command } from '../command-line/command.ts';
import { openFeed } from '../command-line/feed-shape.ts';
import { chosenGarden, withHousehold } from '../command-line/household.ts';
import { ofOneGarden } from '../command-line/options.ts';
import { writeLines } from '../text/output.ts';

export const feedRevoke = command({
  name: 'revoke',
  about: 'Closes the address of a feed, until it is opened again on the Feeds page.',
  argument: { flags: '<id>', about: 'the feed, as "feed list" names it' },
  options: ofOneGarden,
  run: (call) =>
    withHousehold(call, {}, async ({ steward }) => {
      const { at, options, argument: id = '' } = call;
      const garden = await chosenGarden(steward, options.garden);
      await openFeed(steward, garden, id);
      await steward.revokeFeed(garden, id);
      writeLines(at.stdout, [
        `${id} is revoked: for ${GRACE_DAYS} days its address says that it is closed, then it answers no more.`,
      ]);
    }),
});
