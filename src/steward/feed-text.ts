/**
 * A garden's plan as the text of its calendar feed.
 */
import { strongEtag } from '../calendar/etag.ts';
import { gardenFeed } from '../calendar/feed-events.ts';
import { renderFeed } from '../calendar/render-feed.ts';
import type { Plan } from '../schedule/plan.ts';
import type { FeedBody, GardenView } from './steward.ts';

/** Texts by the plan they render: a plan is read far more often than it is made. */
const rendered = new WeakMap<Plan, FeedBody>();

/** The feed of a garden as its plan stands. Holds no secret and no clock: the same plan gives the same octets. */
export function feedTextOf(view: GardenView): FeedBody {
  const held = rendered.get(view.plan);
  if (held !== undefined) return held;
  const text = render(view);
  rendered.set(view.plan, text);
  return text;
}

function render({ garden, plan }: GardenView): FeedBody {
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
