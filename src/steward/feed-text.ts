/**
 * A garden's plan as the text of its calendar feed.
 */
import { strongEtag } from '../calendar/etag.ts';
import { gardenFeed, shownEntries } from '../calendar/feed-events.ts';
import { KeptTexts } from '../calendar/kept-texts.ts';
import { feedOf } from '../calendar/render-feed.ts';
import type { Garden } from '../garden/garden.ts';
import { addDays, type Day, daysBetween, type Instant, latestOf } from '../measures/days.ts';
import type { Plan } from '../schedule/plan.ts';
import { dayBegins, dayIn } from './planner.ts';
import type { FeedBody, GardenView } from './steward.ts';

/** Texts by the plan they render: a plan is read far more often than it is made. */
const rendered = new WeakMap<Plan, FeedBody>();

/** Days that no feed shows an entry longer than: within them one that left cannot have come back. */
const LONGEST_SHOWN_DAYS = 366;

/**
 * The feed of a garden as its plan stands. Holds no secret and no clock: the same plan gives the same octets, whatever
 * texts are kept from the plan before.
 */
export function feedTextOf(view: GardenView, kept = new KeptTexts()): FeedBody {
  const held = rendered.get(view.plan);
  if (held !== undefined) return held;
  const text = render(view, kept);
  rendered.set(view.plan, text);
  return text;
}

function render({ garden, plan }: GardenView, kept: KeptTexts): FeedBody {
  const { head, eventTexts } = gardenFeed(plan, garden.place.units, frameOf(garden), kept);
  const changedAt = lastChange({ garden, plan });
  return bodyOf(feedOf({ ...head, lastModified: changedAt }, eventTexts), changedAt);
}

/** A text with its validators. */
export function bodyOf(body: string, changedAt: Instant): FeedBody {
  return { body, etag: strongEtag(body), changedAt };
}

function frameOf({ name }: Garden) {
  return {
    gardenName: name,
    description: `What ${name} wants doing and when, worked out from its beds and its weather.`,
    notice: {
      title: `${name}: nothing to do in the coming year`,
      description: 'Nothing is planned. Add plantings or cover stands to the garden file to see work here.',
    },
  };
}

/**
 * When the feed last became another: with the plan's entries, or at the beginning of the day on which one of them came
 * into the span a feed shows, or left it.
 */
function lastChange({ garden, plan }: Pick<GardenView, 'garden' | 'plan'>): Instant {
  const { timeZone } = garden.place;
  const revised = dayIn(timeZone, plan.revisedAt);
  const shownOn = (today: Day): string => {
    const entries = shownEntries(plan, today);
    return entries.length === 0 ? today : entries.map(({ lotId }) => lotId).join();
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
