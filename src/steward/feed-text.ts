/**
 * A garden's plan as the text of its calendar feed.
 */
import { strongEtag } from '../calendar/etag.ts';
import { feedEventsOf, gardenFeed } from '../calendar/feed-events.ts';
import { renderFeed } from '../calendar/render-feed.ts';
import { addDays, type Day, daysBetween, type Instant, latestOf } from '../measures/days.ts';
import type { Plan } from '../schedule/plan.ts';
import { dayBegins, dayIn } from './planner.ts';
import type { FeedBody, GardenView } from './steward.ts';

/** Texts by the plan they render: a plan is read far more often than it is made. */
const rendered = new WeakMap<Plan, FeedBody>();

/** Days that no feed shows an entry longer than: within them one that left cannot have come back. */
const LONGEST_SHOWN_DAYS = 366;

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
  const changedAt = lastChange({ garden, plan });
  const body = renderFeed({ ...content, lastModified: changedAt });
  return { body, etag: strongEtag(body), changedAt };
}

/**
 * When the feed last became another: with the plan's entries, or at the beginning of the day on which one of them came
 * into the span a feed shows, or left it.
 */
function lastChange({ garden, plan }: Pick<GardenView, 'garden' | 'plan'>): Instant {
  const { timeZone, units } = garden.place;
  const revised = dayIn(timeZone, plan.revisedAt);
  const tasks = plan.tasks.map((task) => ({ ...task, steps: [], cautions: [], supplies: [], reasons: [] }));
  const shownOn = (today: Day): string => {
    const events = feedEventsOf({ ...plan, tasks, today }, units);
    return events.length === 0 ? today : events.map(({ uid }) => uid).join();
  };
  const shown = shownOn(plan.today);
  let [before, same] = [latestOf(revised, addDays(plan.today, -LONGEST_SHOWN_DAYS)), plan.today];
  if (before >= same || shownOn(before) === shown) return plan.revisedAt;
  while (daysBetween(before, same) > 1) {
    const between = addDays(before, daysBetween(before, same) / 2);
    if (shownOn(between) === shown) same = between;
    else before = between;
  }
  return dayBegins(timeZone, same);
}
