import type { Feed } from '../../store/feeds.ts';
import { command } from '../command.ts';
import { addressOf } from '../feed-address.ts';
import { chosenGarden, withHousehold } from '../household.ts';
import { formatOption, ofOneGarden } from '../options.ts';
import { columns, writeJson, writeLines } from '../output.ts';
import type { Settings } from '../settings.ts';

export const feedList = command({
  name: 'list',
  about: 'Lists the calendar feeds with their addresses.',
  options: { ...ofOneGarden, format: formatOption('text', 'json') },
  run: (call) =>
    withHousehold(call, {}, async ({ steward }) => {
      const { at, settings, options } = call;
      const garden = await chosenGarden(steward, options.garden);
      const feeds = (await steward.feeds(garden)).map((feed) => feedJson(feed, settings));
      if (options.format === 'json') writeJson(at.stdout, { garden, feeds }, 'metric');
      else if (feeds.length === 0) writeLines(at.stdout, ['There is no feed. Make one with: loamtide feed add']);
      else writeLines(at.stdout, columns(feeds.map(({ id, label, address }) => [id, label, address ?? 'revoked'])));
    }),
});

/** A feed; a revoked one has no address any more. */
function feedJson({ id, label, createdAt, revokedAt, token }: Feed, settings: Settings) {
  return revokedAt === undefined
    ? { id, label, createdAt, address: addressOf(settings, token) }
    : { id, label, createdAt, revokedAt, address: undefined };
}
