/**
 * A garden's plan as the text of its calendar feed.
 */
import { strongEtag } from '../calendar/etag.ts';
import { gardenFeed } from '../calendar/feed-events.ts';
import { renderFeed } from '../calendar/render-feed.ts';
import type { FeedBody, GardenView } from './steward.ts';

/** The feed of a garden as its plan stands. Holds no secret and no clock: the same plan gives the same octets. */
export function feedTextOf({ garden, plan }: GardenView): FeedBody {
  const content = gardenFeed(plan, garden.place.units, {
    gardenName: garden.name,
    description: `What ${garden.name} wants doing and when, worked out from its beds and its weather.`,
    notice: {
      title: `${garden.name}: nothing to do in the coming year`,
      description: 'Nothing is planned. Add plantings or cover stands to the garden file to see work here.',
    },
  });
  const body = renderFeed({ ...content, lastModified: plan.revisedAt });
  return { body, etag: strongEtag(body), changedAt: plan.revisedAt };
}
