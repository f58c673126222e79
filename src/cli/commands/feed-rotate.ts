import { GRACE_DAYS } from '../../calendar/closed-feed.ts';
import { command } from '../command-line/command.ts';
import { openFeed } from '../command-line/feed-shape.ts';
import { chosenGarden, withHousehold } from '../command-line/household.ts';
import { ofOneGarden } from '../command-line/options.ts';
import { writeLines } from '../text/output.ts';
import { addressOf, reachNote } from './feed-address.ts';

export const feedRotate = command({
  name: 'rotate',
  about: 'Gives a feed a new address and closes the one it had.',
  argument: { flags: '<id>', about: 'the feed, as "feed list" names it' },
  options: ofOneGarden,
  run: (call) =>
    withHousehold(call, {}, async ({ steward }) => {
      const { at, settings, options, argument: id = '' } = call;
      const garden = await chosenGarden(steward, options.garden);
      const feed = await openFeed(steward, garden, id);
      const rotated = (await steward.rotateFeed(garden, id)) ?? feed;
      writeLines(at.stdout, [
        `${id} has a new address. For ${GRACE_DAYS} days the old one says that it is closed, then it answers no more.`,
        addressOf(settings, rotated.token),
        reachNote(settings),
      ]);
    }),
});
