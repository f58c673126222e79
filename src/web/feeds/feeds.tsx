/**
 * Feeds: the calendar addresses of a garden, and new ones.
 */
import { shapeWords } from '../../calendar/shape-words.ts';
import { fullDay } from '../../digest/words.ts';
import type { Garden } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import type { Instant } from '../../measures/days.ts';
import { dayIn } from '../../steward/planning/planner.ts';
import type { Feed } from '../../store/feeds.ts';
import { feedPath, feedsPath, householdPath, keysPath } from '../addresses/addresses.ts';
import { feedAddress, type WebSettings, webcalAddress } from '../addresses/settings.ts';
import { Problems, page } from '../frame/layout.tsx';
import type { EnteredFeed } from './entered-feed.ts';
import { LabelField, ShapeFields } from './feed-form.tsx';
import { HereOnly, HowToSubscribe, Reach } from './feed-help.tsx';

export interface FeedsPageProps {
  garden: Garden;
  /** Every feed, revoked ones included. */
  feeds: readonly Feed[];
  settings: WebSettings;
  /** What stands in the form of a new feed, and what was wrong with it when it comes back. */
  entered: EnteredFeed;
  problems?: readonly Problem[];
}

/** The page of a garden's feeds. */
export function feedsPage({ garden, feeds, settings, entered, problems = [] }: FeedsPageProps) {
  const open = feeds.filter(({ revokedAt }) => revokedAt === undefined);
  return page(
    { title: 'Feeds', garden, here: 'feeds' },
    <article class="feeds two">
      <h1>Feeds</h1>
      <p>
        A feed is an address that a calendar app reads. The garden’s work then shows there on its days, and follows when
        the plan moves. Each shows all the work, or one person’s own: what falls to them, and what was given to them.
        Who sees to what is on the <a href={householdPath(garden.id)}>Household</a> page.
      </p>
      <Problems problems={problems} />
      {open.length === 0 ? (
        <p>
          {feeds.length === 0 ? 'There is no feed yet.' : 'No feed is open.'} Make one below: it needs no more than a
          name, such as whose phone it is for. Its address then stands here, to be copied into a calendar app.
        </p>
      ) : (
        <dl class="feed-list">
          {open.map((feed) => (
            <OpenFeed feed={feed} garden={garden} settings={settings} />
          ))}
        </dl>
      )}
      <div class="aside">
        <NewFeed garden={garden} entered={entered} unfolded={problems.length > 0} />
        <HowToSubscribe />
        <Reach settings={settings} />
      </div>
      <Revoked feeds={feeds} garden={garden} />
      <p>
        <a href={keysPath(garden.id)}>Keys for scripts that tell the heat of a pile</a>
      </p>
    </article>,
  );
}

const OpenFeed = ({ feed, garden, settings }: { feed: Feed; garden: Garden; settings: WebSettings }) => {
  const { id, label, token, createdAt, lastFetch, shape } = feed;
  const { beds, household, place } = garden;
  const address = feedAddress(settings, token);
  const webcal = webcalAddress(settings, token);
  const day = (at: Instant) => fullDay(dayIn(place.timeZone, at), place.units);
  return (
    <>
      <dt>{label}</dt>
      <dd>
        <code class="address">{address}</code>
        <HereOnly settings={settings} />
        <details>
          <summary>Copy it with the keyboard</summary>
          <label>
            The address, all of it marked when you come to it{' '}
            <input type="text" value={address} readonly spellcheck={false} />
          </label>
        </details>
        {webcal !== undefined && (
          <span class="under">
            or, to hand it to the app that opens calendars here: <a href={webcal}>{webcal}</a>
          </span>
        )}
        <span class="under">
          {shapeWords(shape, { beds, units: place.units, members: household?.members }).join('; ')}
        </span>
        <span class="under">
          since {day(createdAt)}
          {lastFetch === undefined ? '; not read yet' : `; last read on ${day(lastFetch.at)} by ${lastFetch.by}`}
        </span>
        <span class="under">
          <a class="doing" href={feedPath(garden.id, id, 'change')}>
            Change
          </a>
          <a class="doing" href={feedPath(garden.id, id, 'new-address')}>
            New address
          </a>
          <a class="doing" href={feedPath(garden.id, id, 'revoke')}>
            Revoke
          </a>
        </span>
      </dd>
    </>
  );
};

const NewFeed = ({ garden, entered, unfolded }: { garden: Garden; entered: EnteredFeed; unfolded: boolean }) => (
  <section>
    <h2>A new feed</h2>
    <form method="post" action={feedsPath(garden.id)}>
      <LabelField label={entered.label} />
      <details open={unfolded}>
        <summary>What it shows, how far, and how</summary>
        <ShapeFields entered={entered} garden={garden} />
      </details>
      <button type="submit">Make a feed</button>
    </form>
    <p class="small">One for each person or device: each can be changed or revoked without disturbing the others.</p>
  </section>
);

/** Where a revoked feed stands on the page. */
export function revokedAnchor(feedId: string): string {
  return `revoked-${feedId}`;
}

const Revoked = ({ feeds, garden }: { feeds: readonly Feed[]; garden: Garden }) => {
  const { beds, household, place } = garden;
  const revoked = feeds.flatMap((feed) =>
    feed.revokedAt === undefined ? [] : [{ ...feed, revokedAt: feed.revokedAt }],
  );
  if (revoked.length === 0) return null;
  return (
    <section>
      <h2>Revoked</h2>
      <dl class="feed-list">
        {revoked.map(({ id, label, shape, revokedAt }) => (
          <>
            <dt id={revokedAnchor(id)}>{label}</dt>
            <dd>
              <span class="under">
                {shapeWords(shape, { beds, units: place.units, members: household?.members }).join('; ')}
              </span>
              <span class="under">revoked on {fullDay(dayIn(place.timeZone, revokedAt), place.units)}</span>
              <span class="under">
                <a class="doing" href={feedPath(garden.id, id, 'open-again')}>
                  Open again
                </a>
              </span>
            </dd>
          </>
        ))}
      </dl>
    </section>
  );
};
