import { describe, expect, test } from 'vitest';
import type { Feed } from '../../src/store/feeds.ts';
import { NOON } from './entries.ts';
import { stockedStore } from './stocked.ts';

const LATER = '2027-05-01T08:00:00.000Z';

function feed(id: string, more: Partial<Feed> = {}): Feed {
  return { id, gardenId: 'plot', label: 'Kitchen phone', token: `token-${id}`, createdAt: NOON, ...more };
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
    expect(await store.findFeedByToken('token-a')).toStrictEqual(feed('a'));
    expect(await store.findFeedByToken('token-A')).toBeUndefined();
    expect(await store.findFeedByToken('')).toBeUndefined();
  });

  test('a revoked one is not found any more but stays in the list', async () => {
    const store = await stockedStore();
    await store.addFeed(feed('a'));
    await store.addFeed(feed('b'));
    expect(await store.revokeFeed('plot', 'a', LATER)).toBe(true);
    expect(await store.findFeedByToken('token-a')).toBeUndefined();
    expect(await store.findFeedByToken('token-b')).toBeDefined();
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

  test('one garden cannot revoke or list those of another', async () => {
    const store = await stockedStore();
    await store.createGarden({ id: 'yard', name: 'Yard', createdAt: NOON });
    await store.addFeed(feed('a'));
    expect(await store.revokeFeed('yard', 'a', LATER)).toBe(false);
    expect(await store.feeds('yard')).toEqual([]);
    expect(await store.findFeedByToken('token-a')).toBeDefined();
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

  test('one for a garden that is not there is refused', async () => {
    const store = await stockedStore();
    await expect(store.addFeed(feed('a', { gardenId: 'plto' }))).rejects.toThrow(/FOREIGN KEY/);
  });
});
