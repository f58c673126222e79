import { shapeWords } from '../../calendar/shape-words.ts';
import type { Garden } from '../../garden/garden.ts';
import type { Feed } from '../../store/feeds.ts';
import { command } from '../command-line/command.ts';
import { chosenGarden, withHousehold } from '../command-line/household.ts';
import { formatOption, ofOneGarden } from '../command-line/options.ts';
import type { Settings } from '../command-line/settings.ts';
import { columns, writeJson, writeLines } from '../text/output.ts';
import { addressOf } from './feed-address.ts';

export const feedList = command({
  name: 'list',
  about: 'Lists the calendar feeds with their addresses.',
  options: { ...ofOneGarden, format: formatOption('text', 'json') },
  run: (call) =>
    withHousehold(call, { onlyLook: true }, async ({ steward }) => {
      const { at, settings, options } = call;
      const { garden } = await steward.view(await chosenGarden(steward, options.garden));
      const feeds = (await steward.feeds(garden.id)).map((feed) => feedJson(feed, settings));
      if (options.format === 'json') writeJson(at.stdout, { garden: garden.id, feeds }, 'metric');
      else if (feeds.length === 0) writeLines(at.stdout, ['There is no feed. Make one with: loamtide feed add']);
      else writeLines(at.stdout, columns(feeds.map((feed) => feedRow(feed, garden))));
    }),
});

/** A feed; a revoked one has no address any more. */
function feedJson({ id, label, createdAt, revokedAt, token, shape, lastFetch }: Feed, settings: Settings) {
  const common = { id, label, createdAt, shape, lastFetch };
  return revokedAt === undefined
    ? { ...common, address: addressOf(settings, token) }
    : { ...common, revokedAt, address: undefined };
}

function feedRow({ id, label, address, shape }: ReturnType<typeof feedJson>, garden: Garden): string[] {
  const { beds, household, place } = garden;
  if (address === undefined) return [id, label, 'revoked', ''];
  return [id, label, address, shapeWords(shape, { beds, units: place.units, members: household?.members }).join('; ')];
}
