/**
 * Feeds: the calendar addresses of a garden, new ones, and the way to close one.
 */

import { GRACE_DAYS } from '../../calendar/closed-feed.ts';
import { fullDay } from '../../digest/words.ts';
import type { Garden } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import type { Feed } from '../../store/feeds.ts';
import { feedsPath, revokePath } from '../addresses.ts';
import { Problems, page } from '../layout.tsx';
import { feedAddress, type WebSettings } from '../settings.ts';

/** Longest name a feed may have. House default: one line on a phone. */
export const LABEL_CHARACTERS = 60;

export interface FeedsPageProps {
  garden: Garden;
  /** Every feed, revoked ones included. */
  feeds: readonly Feed[];
  settings: WebSettings;
  /** What was entered and what was wrong with it, when the form comes back. */
  label?: string;
  problems?: readonly Problem[];
}

/** The page of a garden's feeds. */
export function feedsPage({ garden, feeds, settings, label = '', problems = [] }: FeedsPageProps) {
  const open = feeds.filter(({ revokedAt }) => revokedAt === undefined);
  return page(
    { title: 'Feeds', garden, here: 'feeds' },
    <article class="feeds">
      <h1>Feeds</h1>
      <p>
        A feed is an address that a calendar app reads. The garden’s work then shows there on its days, for the coming
        twelve months, and follows when the plan moves.
      </p>
      <Problems problems={problems} />
      {open.length === 0 ? (
        <p>There is no feed yet.</p>
      ) : (
        <OpenFeeds feeds={open} garden={garden} settings={settings} />
      )}
      <NewFeed garden={garden} label={label} />
      <HowToSubscribe />
      <Reach settings={settings} />
    </article>,
  );
}

const OpenFeeds = ({ feeds, garden, settings }: { feeds: readonly Feed[]; garden: Garden; settings: WebSettings }) => (
  <dl class="feed-list">
    {feeds.map(({ id, label, token, createdAt }) => (
      <>
        <dt>{label}</dt>
        <dd>
          <code class="address">{feedAddress(settings, token)}</code>
          <span class="under">
            since {fullDay(createdAt.slice(0, 10), garden.place.units)} · <a href={revokePath(garden.id, id)}>Revoke</a>
          </span>
        </dd>
      </>
    ))}
  </dl>
);

const NewFeed = ({ garden, label }: { garden: Garden; label: string }) => (
  <section>
    <h2>A new feed</h2>
    <form method="post" action={feedsPath(garden.id)} class="inline-form">
      <label>
        Whose, or where it is read{' '}
        <input type="text" name="label" value={label} maxlength={LABEL_CHARACTERS} required />
      </label>
      <button type="submit">Make a feed</button>
    </form>
    <p class="small">One for each person or device: each can be revoked without disturbing the others.</p>
  </section>
);

const HowToSubscribe = () => (
  <section>
    <h2>How to subscribe</h2>
    <ol class="marked">
      <li>Copy the address. Whoever has it can read the plan, so pass it on as you would a door key.</li>
      <li>
        In the calendar app look for a way to <em>subscribe</em> to a calendar by its address, usually where calendars
        or accounts are added, and paste it there.
      </li>
      <li>Subscribe, do not import: an import is a copy made once and never follows the plan.</li>
    </ol>
    <p>
      The feed asks to be read every six hours, but each app decides for itself; some look only once a day. When a
      freeze is coming, do not wait for the calendar: the This week page is always the latest word.
    </p>
  </section>
);

const Reach = ({ settings: { publicUrl } }: { settings: WebSettings }) => (
  <section>
    <h2>From a phone</h2>
    {publicUrl === undefined ? (
      <p>
        These addresses work on this computer only; a phone, or a calendar kept by a service elsewhere, cannot reach
        them. Bring a public address to this program with a reverse proxy of your own, name it in{' '}
        <code>LOAMTIDE_PUBLIC_URL</code>, start again, and it will stand in the addresses above.
      </p>
    ) : (
      <p>
        The addresses above begin with {publicUrl.origin}, the public address this program was given. Whatever can reach
        it can read the feeds. These pages stay on this computer.
      </p>
    )}
  </section>
);

/** Asks before a feed is revoked. */
export function revokePage(garden: Garden, { id, label }: Feed) {
  return page(
    { title: 'Revoke a feed', garden, here: 'feeds' },
    <article>
      <h1>Revoke “{label}”?</h1>
      <p>
        Its address stops working for good. For {GRACE_DAYS} days it tells calendars so, in a single entry that takes
        the place of the work; after that it is as good as unknown. A new feed gets a new address.
      </p>
      <form method="post" action={revokePath(garden.id, id)}>
        <button type="submit">Revoke it</button>
      </form>
      <p>
        <a href={feedsPath(garden.id)}>Keep it</a>
      </p>
    </article>,
  );
}
