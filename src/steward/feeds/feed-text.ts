/**
 * A garden's plan as the text of one of its calendar feeds.
 */
import { strongEtag } from '../../calendar/etag.ts';
import { type FeedFrame, type FeedView, gardenFeed, PLAIN_VIEW } from '../../calendar/feed-events.ts';
import { memberOfFeed, PLAIN_SHAPE, sameShape } from '../../calendar/feed-shape.ts';
import { KeptTexts } from '../../calendar/kept-texts.ts';
import { feedOf } from '../../calendar/render-feed.ts';
import { shownEntries } from '../../calendar/shown-entries.ts';
import type { Garden } from '../../garden/garden.ts';
import { membersOf } from '../../garden/household-changes.ts';
import { addDays, type Day, daysBetween, type Instant, latestOf } from '../../measures/days.ts';
import type { Plan } from '../../schedule/plan.ts';
import type { Feed } from '../../store/feeds.ts';
import type { FeedBody, GardenView } from '../doings/steward.ts';
import { dayBegins, dayIn } from '../planning/planner.ts';

/** Texts by the plan they render and the likeness of their feed: a plan is read far more often than it is made. */
const rendered = new WeakMap<Plan, Map<string, FeedBody>>();

/** Days that no feed shows an entry longer than: within them one that left cannot have come back. */
const LONGEST_SHOWN_DAYS = 366;

/** What a feed is rendered from. */
type Planned = Pick<GardenView, 'garden' | 'plan'>;

/** How a feed is rendered. */
export type RenderedFeed = Pick<Feed, 'id' | 'label' | 'shape' | 'shapeRevision' | 'shapedAt' | 'changedAt'>;

/**
 * A feed of a garden as its plan stands; without one named, the plain feed. Holds no secret and no clock: the same plan
 * and shape give the same octets, whatever texts are kept from the plan before.
 */
export function feedTextOf(
  view: Planned,
  { feed, kept = new KeptTexts() }: { feed?: RenderedFeed; kept?: KeptTexts } = {},
): FeedBody {
  const texts = rendered.get(view.plan) ?? new Map<string, FeedBody>();
  rendered.set(view.plan, texts);
  const name = likenessOf(view, feed);
  const text = texts.get(name) ?? render(view, feed === undefined || isPlain(feed) ? undefined : feed, kept);
  texts.set(name, text);
  return text;
}

/** A text that is equal for feeds that are rendered alike: all those are that nobody ever shaped. */
export function likenessOf({ garden }: Pick<GardenView, 'garden'>, feed?: RenderedFeed): string {
  if (feed === undefined || isPlain(feed)) return '';
  const member = memberOfFeed(feed.shape, membersOf(garden));
  return JSON.stringify([feed.id, feed.label, feed.shape, feed.changedAt, garden.place.timeZone, member]);
}

function isPlain({ shape, shapeRevision }: RenderedFeed): boolean {
  return shapeRevision === 0 && sameShape(shape, PLAIN_SHAPE);
}

function render({ garden, plan }: Planned, feed: RenderedFeed | undefined, kept: KeptTexts): FeedBody {
  const view = viewOf(garden, feed);
  const { head, eventTexts } = gardenFeed(plan, garden.place.units, frameOf(garden, feed), { view, kept });
  const changedAt = latestOf(lastChange({ garden, plan }, view), feed?.changedAt ?? '');
  return bodyOf(feedOf({ ...head, lastModified: changedAt }, eventTexts), changedAt);
}

/** A text with its validators. */
export function bodyOf(body: string, changedAt: Instant): FeedBody {
  return { body, etag: strongEtag(body), changedAt };
}

function viewOf({ place, household, assigned }: Garden, feed: RenderedFeed | undefined): FeedView {
  const { timeZone } = place;
  if (feed === undefined) return { ...PLAIN_VIEW, timeZone };
  const { id: feedId, shape, shapeRevision: revision, shapedAt } = feed;
  return {
    feedId,
    shape,
    revision,
    timeZone,
    people: { members: household?.members ?? [], assigned },
    ...(shapedAt === undefined ? {} : { revisedAt: shapedAt }),
  };
}

/** What a feed says for itself. One that shows less than the whole is named after its label too, to be told apart. */
function frameOf({ name, household }: Garden, feed: RenderedFeed | undefined): FeedFrame {
  if (feed === undefined || sameShape(feed.shape, PLAIN_SHAPE)) {
    return {
      calendarName: name,
      description: `What ${name} wants doing and when, worked out from its beds and its weather.`,
      notice: {
        title: `${name}: nothing to do in the coming year`,
        description: 'Nothing is planned. Add plantings or cover stands to the garden file to see work here.',
      },
    };
  }
  const { person } = feed.shape;
  const isGone = person !== undefined && memberOfFeed(feed.shape, household?.members ?? []) === undefined;
  return {
    calendarName: `${name}: ${feed.label}`,
    description: `Work of ${name}, as this feed was shaped.`,
    notice: isGone
      ? {
          title: `${name}: ${person} is no longer in the household`,
          description:
            `This calendar showed what falls to ${person}, whom the garden file does not name any more.\n` +
            'Whoever keeps the garden can change on the Feeds page whose work it shows.',
        }
      : {
          title: `${name}: nothing to do in this feed`,
          description: 'No work falls within what this feed shows. The Feeds page says what that is.',
        },
  };
}

/**
 * When the feed last became another: with the plan's entries, or at the beginning of the day on which one of them came
 * into the span a feed shows, or left it.
 */
function lastChange({ garden, plan }: Planned, { shape, people }: FeedView): Instant {
  const { timeZone } = garden.place;
  const revised = dayIn(timeZone, plan.revisedAt);
  const shownOn = (today: Day): string => {
    const entries = shownEntries({ ...plan, today }, shape, people);
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
