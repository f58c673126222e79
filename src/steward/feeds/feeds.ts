/**
 * Feeds made and changed.
 */
import { PLAIN_SHAPE, sameShape } from '../../calendar/feed-shape.ts';
import { newFeedToken } from '../../calendar/token.ts';
import type { Feed } from '../../store/feeds.ts';
import type { Shelves, Store } from '../../store/store.ts';
import type { NewLook, Steward } from '../doings/steward.ts';
import type { Clock } from '../planning/planner.ts';
import type { ServedFeeds } from './served-feeds.ts';

/** What feeds are kept with. */
export interface FeedRoom {
  store: Shelves;
  clock: Clock;
}

/**
 * Makes a feed, plain unless it is given a shape.
 *
 * @throws {InputRefused} when there is no such garden, or it was put away
 */
export async function addFeed({ store, clock }: FeedRoom, gardenId: string, look: NewLook): Promise<Feed> {
  await store.factsVersion(gardenId);
  const count = (await store.feeds(gardenId)).length + 1;
  const { label = '', shape = PLAIN_SHAPE } = look;
  const address = { id: `feed-${count}`, gardenId, token: newFeedToken(), createdAt: clock.now() };
  const feed = { ...address, label, shape, shapeRevision: 0 };
  await store.addFeed(feed);
  return feed;
}

/**
 * Gives an open feed another label or shape. A shape that is another one revises every event of the feed, since what apps
 * hold of them is no longer what the feed says.
 *
 * @returns the feed as it is now, or nothing when there is no such open feed
 */
async function changeFeed(
  { store, clock }: FeedRoom,
  feedName: { gardenId: string; feedId: string },
  look: NewLook,
): Promise<Feed | undefined> {
  const open = await openFeed(store, feedName);
  if (open === undefined) return undefined;
  const { label = open.label, shape = open.shape } = look;
  const shaped = !sameShape(shape, open.shape);
  if (!shaped && label === open.label) return open;
  const now = clock.now();
  const revised = shaped ? { shape, shapeRevision: open.shapeRevision + 1, shapedAt: now } : {};
  const changed = { ...open, label, changedAt: now, ...revised };
  return (await store.changeFeed(feedName, changed)) ? changed : undefined;
}

/**
 * Gives an open feed another address.
 *
 * @returns the feed as it is now, or nothing when there is no such open feed
 * @throws {InputRefused} when there is no such garden, or it was put away
 */
async function rotateFeed(
  { store, clock }: FeedRoom,
  feedName: { gardenId: string; feedId: string },
): Promise<Feed | undefined> {
  await store.factsVersion(feedName.gardenId);
  const rotated = await store.rotateFeed(feedName, { token: newFeedToken(), at: clock.now() });
  return rotated ? openFeed(store, feedName) : undefined;
}

async function openFeed(store: Shelves, { gardenId, feedId }: { gardenId: string; feedId: string }) {
  return (await store.feeds(gardenId)).find(({ id, revokedAt }) => id === feedId && revokedAt === undefined);
}

type FeedDoings = 'feeds' | 'addFeed' | 'changeFeed' | 'revokeFeed' | 'reopenFeed' | 'rotateFeed' | 'feedBody';

/** What a steward does with feeds. */
export function feedsIn(
  { store, clock }: { store: Store; clock: Clock },
  served: ServedFeeds,
): Pick<Steward, FeedDoings> {
  const room = { store, clock };
  return {
    async feeds(gardenId) {
      await served.written();
      return store.feeds(gardenId);
    },
    addFeed: (gardenId, label, shape) => addFeed(room, gardenId, { label, ...(shape === undefined ? {} : { shape }) }),
    changeFeed: (gardenId, feedId, look) => changeFeed(room, { gardenId, feedId }, look),
    revokeFeed: (gardenId, feedId) => store.revokeFeed(gardenId, feedId, clock.now()),
    reopenFeed: (gardenId, feedId) => store.reopenFeed({ gardenId, feedId }, clock.now()),
    rotateFeed: (gardenId, feedId) => rotateFeed(room, { gardenId, feedId }),
    feedBody: (token, by) => served.answer(token, by),
  };
}
