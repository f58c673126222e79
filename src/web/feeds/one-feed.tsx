/**
 * Pages about one feed: changing it, another address, closing it.
 */
import { GRACE_DAYS } from '../../calendar/closed-feed.ts';
import { shapeWords } from '../../calendar/shape-words.ts';
import { fullDay } from '../../digest/words.ts';
import type { Garden } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import { dayIn } from '../../steward/planning/planner.ts';
import type { Feed } from '../../store/feeds.ts';
import { feedPath, feedsPath } from '../addresses/addresses.ts';
import { Problems, page } from '../frame/layout.tsx';
import type { EnteredFeed } from './entered-feed.ts';
import { LabelField, ShapeFields } from './feed-form.tsx';

interface ChangePageProps {
  garden: Garden;
  feed: Feed;
  entered: EnteredFeed;
  problems?: readonly Problem[];
}

/** The form that gives a feed another name or shape. */
export function changePage({ garden, feed, entered, problems = [] }: ChangePageProps) {
  return page(
    { title: 'Change a feed', garden, here: 'feeds' },
    <article>
      <h1>Change “{feed.label}”</h1>
      <p>Its address stays. Apps take the change in when they look next.</p>
      <Problems problems={problems} />
      <form method="post" action={feedPath(garden.id, feed.id, 'change')} class="change">
        <LabelField label={entered.label} />
        <ShapeFields entered={entered} garden={garden} />
        <button type="submit">Change it</button>
      </form>
      <p>
        <a href={feedsPath(garden.id)}>Leave it as it is</a>
      </p>
    </article>,
  );
}

/** Asks before a feed gets another address. */
export function newAddressPage(garden: Garden, { id, label }: Feed) {
  return page(
    { title: 'A new address', garden, here: 'feeds' },
    <article>
      <h1>A new address for “{label}”?</h1>
      <p>
        Do this when the address may have come into other hands. What the feed shows stays as it is. The old address
        says for {GRACE_DAYS} days that this calendar has moved, without saying where, and then answers no more; each
        app that is still to read the feed has to be given the new one.
      </p>
      <form method="post" action={feedPath(garden.id, id, 'new-address')}>
        <button type="submit">Give it a new address</button>
      </form>
      <p>
        <a href={feedsPath(garden.id)}>Keep the one it has</a>
      </p>
    </article>,
  );
}

/** Asks before a feed is revoked. */
export function revokePage(garden: Garden, feed: Feed) {
  const { id, label } = feed;
  return page(
    { title: 'Revoke a feed', garden, here: 'feeds' },
    <article>
      <h1>Revoke “{label}”?</h1>
      <p>What goes from the calendars that read it: {shownIn(feed, garden)}.</p>
      <p>{readIn(feed, garden)} The other feeds stay as they are.</p>
      <p>
        Its address stops working. For {GRACE_DAYS} days it tells calendars so, in a single entry that takes the place
        of the work; after that it is as good as unknown. It can be opened again, at the same address, on the Feeds
        page.
      </p>
      <form method="post" action={feedPath(garden.id, id, 'revoke')}>
        <button type="submit">Revoke it</button>
      </form>
      <p>
        <a href={feedsPath(garden.id)}>Keep it</a>
      </p>
    </article>,
  );
}

/** Asks before a revoked feed is opened again. */
export function openAgainPage(garden: Garden, feed: Feed) {
  const { id, label } = feed;
  return page(
    { title: 'Open a feed again', garden, here: 'feeds' },
    <article>
      <h1>Open “{label}” again?</h1>
      <p>
        It is kept at the address it had, and shows what it showed: {shownIn(feed, garden)}. Calendars that still have
        the address show the work again when they look next; whoever took it out has to subscribe once more.
      </p>
      <p>
        Whoever had the address can read it again too. Where it was revoked because it had come into other hands, make a
        new feed instead, or give this one a new address afterwards.
      </p>
      <form method="post" action={feedPath(garden.id, id, 'open-again')}>
        <button type="submit">Open it again</button>
      </form>
      <p>
        <a href={feedsPath(garden.id)}>Leave it closed</a>
      </p>
    </article>,
  );
}

function shownIn({ shape }: Feed, { beds, household, place }: Garden): string {
  return shapeWords(shape, { beds, units: place.units, members: household?.members }).join('; ');
}

/** Which calendar would lose it, as far as that is known. */
function readIn({ lastFetch }: Feed, { place }: Garden): string {
  if (lastFetch === undefined) return 'No calendar has read it yet.';
  const day = fullDay(dayIn(place.timeZone, lastFetch.at), place.units);
  return `It was last read on ${day} by ${lastFetch.by}, which would lose it; others that read it before then would as well.`;
}
