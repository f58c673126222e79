import { describe, expect, test } from 'vitest';
import { PLAIN_SHAPE } from '../../src/calendar/feed-shape.ts';
import type { Feed } from '../../src/store/feeds.ts';
import { NOON } from './entries.ts';
import { stockedStore } from './stocked.ts';

const LATER = '2027-05-01T08:00:00.000Z';

function feed(id: string, more: Partial<Feed> = {}): Feed {
  const shaped = { shape: PLAIN_SHAPE, shapeRevision: 0 };
  return { id, gardenId: 'plot', label: 'Kitchen phone', token: `token-${id}`, createdAt: NOON, ...shaped, ...more };
}

function named(feedId: string) {
  return { gardenId: 'plot', feedId };
}

describe('feeds', () => {
  test('are listed oldest first, with their addresses', async () => {
    const store = await stockedStore();
    await store.addFeed(feed('b', { createdAt: LATER }));
    await store.addFeed(feed('a'));
    expect(await store.feeds('plot')).toStrictEqual([feed('a'), feed('b', { createdAt: LATER })]);
  });

  test('are found by their token', async () => {
    const store = await stockedStore();
    await store.addFeed(feed('a'));
    expect(await store.findFeedAddress('token-a')).toStrictEqual({ feed: feed('a') });
    expect(await store.findFeedAddress('token-A')).toBeUndefined();
    expect(await store.findFeedAddress('')).toBeUndefined();
  });

  test('a revoked one is found as closed, and stays in the list', async () => {
    const store = await stockedStore();
    await store.addFeed(feed('a'));
    await store.addFeed(feed('b'));
    expect(await store.revokeFeed('plot', 'a', LATER)).toBe(true);
    const revoked = feed('a', { revokedAt: LATER });
    expect(await store.findFeedAddress('token-a')).toStrictEqual({ feed: revoked, closedAt: LATER });
    expect(await store.findFeedAddress('token-b')).toStrictEqual({ feed: feed('b') });
    expect(await store.feeds('plot')).toStrictEqual([feed('a', { revokedAt: LATER }), feed('b')]);
  });

  test('revoking twice, or what is not there, says so and keeps the first moment', async () => {
    const store = await stockedStore();
    await store.addFeed(feed('a'));
    await store.revokeFeed('plot', 'a', NOON);
    expect(await store.revokeFeed('plot', 'a', LATER)).toBe(false);
    expect(await store.revokeFeed('plot', 'z', LATER)).toBe(false);
    expect((await store.feeds('plot'))[0]?.revokedAt).toBe(NOON);
  });

  test('a revoked one is opened again at the token it had; an open one, or one that never was, is not', async () => {
    const store = await stockedStore();
    await store.addFeed(feed('a'));
    await store.revokeFeed('plot', 'a', NOON);
    expect(await store.reopenFeed({ gardenId: 'plot', feedId: 'a' }, LATER)).toBe(true);
    expect(await store.findFeedAddress('token-a')).toStrictEqual({ feed: feed('a', { changedAt: LATER }) });
    expect(await store.reopenFeed({ gardenId: 'plot', feedId: 'a' }, LATER)).toBe(false);
    expect(await store.reopenFeed({ gardenId: 'plot', feedId: 'z' }, LATER)).toBe(false);
  });

  test('one garden cannot revoke or list those of another', async () => {
    const store = await stockedStore();
    await store.createGarden({ id: 'yard', name: 'Yard', createdAt: NOON });
    await store.addFeed(feed('a'));
    expect(await store.revokeFeed('yard', 'a', LATER)).toBe(false);
    expect(await store.feeds('yard')).toEqual([]);
    expect(await store.findFeedAddress('token-a')).toStrictEqual({ feed: feed('a') });
  });

  test('no two share a token', async () => {
    const store = await stockedStore();
    await store.addFeed(feed('a'));
    await expect(store.addFeed(feed('b', { token: 'token-a' }))).rejects.toThrow(/UNIQUE/);
  });

  test('adding one does not make the plan stale', async () => {
    const store = await stockedStore();
    await store.addFeed(feed('a'));
    expect(await store.factsVersion('plot')).toBe(0);
  });

  test('one with a new address is found at the old one as closed', async () => {
    const store = await stockedStore();
    await store.addFeed(feed('a'));
    expect(await store.rotateFeed(named('a'), { token: 'anew', at: LATER })).toBe(true);
    const now = feed('a', { token: 'anew' });
    expect(await store.findFeedAddress('token-a')).toStrictEqual({ feed: now, closedAt: LATER });
    expect(await store.findFeedAddress('anew')).toStrictEqual({ feed: now });
    expect(await store.feeds('plot')).toStrictEqual([now]);
  });

  test('a revoked one, or one that is not there, gets no new address', async () => {
    const store = await stockedStore();
    await store.addFeed(feed('a'));
    await store.revokeFeed('plot', 'a', NOON);
    expect(await store.rotateFeed(named('a'), { token: 'anew', at: LATER })).toBe(false);
    expect(await store.rotateFeed(named('z'), { token: 'anew', at: LATER })).toBe(false);
    expect(await store.findFeedAddress('anew')).toBeUndefined();
  });

  test('each remembers its last reading', async () => {
    const store = await stockedStore();
    await store.addFeed(feed('a'));
    await store.addFeed(feed('b'));
    const fetch = { at: LATER, by: 'Evolution' };
    await store.noteFetches([
      { ...named('a'), ...fetch },
      { ...named('z'), ...fetch },
    ]);
    expect(await store.feeds('plot')).toStrictEqual([feed('a', { lastFetch: fetch }), feed('b')]);
  });

  test('each keeps one text, the latest', async () => {
    const store = await stockedStore();
    await store.addFeed(feed('a'));
    expect(await store.feedText(named('a'))).toBeUndefined();
    for (const body of ['first', 'second']) await store.saveFeedText(named('a'), { body, changedAt: LATER });
    expect(await store.feedText(named('a'))).toStrictEqual({ body: 'second', changedAt: LATER });
  });

  test('one for a garden that is not there is refused', async () => {
    const store = await stockedStore();
    await expect(store.addFeed(feed('a', { gardenId: 'plto' }))).rejects.toThrow(/FOREIGN KEY/);
  });
});

describe('a shape', () => {
  const shape = { ...PLAIN_SHAPE, beds: ['north'], alarm: { when: 'morning', hour: 6 }, by: 'day' } as const;

  test('is kept with its feed, and changed with its revision and its moment', async () => {
    const store = await stockedStore();
    await store.addFeed(feed('a', { shape }));
    expect(await store.findFeedAddress('token-a')).toStrictEqual({ feed: feed('a', { shape }) });
    const change = { label: 'Shed', shape: PLAIN_SHAPE, shapeRevision: 1, shapedAt: LATER, changedAt: LATER };
    expect(await store.changeFeed({ gardenId: 'plot', feedId: 'a' }, change)).toBe(true);
    expect(await store.findFeedAddress('token-a')).toStrictEqual({ feed: feed('a', change) });
  });

  test('of a revoked feed, or one that never was, is not changed', async () => {
    const store = await stockedStore();
    await store.addFeed(feed('a', { revokedAt: LATER }));
    for (const feedId of ['a', 'b']) {
      expect(await store.changeFeed({ gardenId: 'plot', feedId }, feed('a', { shape }))).toBe(false);
    }
    expect((await store.feeds('plot'))[0]?.shape).toEqual(PLAIN_SHAPE);
  });
});
