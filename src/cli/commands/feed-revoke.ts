import { command } from '../command.ts';
import { chosenGarden, withHousehold } from '../household.ts';
import { ofOneGarden } from '../options.ts';
import { writeLines } from '../output.ts';
import { refusal } from '../refusal.ts';

export const feedRevoke = command({
  name: 'revoke',
  about: 'Closes the address of a feed for good.',
  argument: { flags: '<id>', about: 'the feed, as "feed list" names it' },
  options: ofOneGarden,
  run: (call) =>
    withHousehold(call, {}, async ({ steward }) => {
      const { at, options, argument: id = '' } = call;
      const garden = await chosenGarden(steward, options.garden);
      if (await steward.revokeFeed(garden, id)) {
        writeLines(at.stdout, [`${id} is revoked: its address answers no more.`]);
        return;
      }
      const open = (await steward.feeds(garden)).filter(({ revokedAt }) => revokedAt === undefined);
      const mend =
        open.length === 0 ? 'There is no open feed.' : `Open feeds: ${open.map((feed) => feed.id).join(', ')}.`;
      throw refusal('Nothing was revoked.', 'ID', `"${id}" is not an open feed of this garden.`, mend);
    }),
});
