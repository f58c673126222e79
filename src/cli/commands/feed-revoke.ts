import { GRACE_DAYS } from '../../calendar/closed-feed.ts';
import { command } from '../command.ts';
import { openFeed } from '../feed-shape.ts';
import { chosenGarden, withHousehold } from '../household.ts';
import { ofOneGarden } from '../options.ts';
import { writeLines } from '../output.ts';

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
