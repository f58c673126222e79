import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { createSteward } from '../../src/steward/create-steward.ts';
import { feedTextOf } from '../../src/steward/feeds/feed-text.ts';
import { databaseIn, openStore } from '../../src/store/store.ts';
import { NORTH_TODAY, northernFile } from './gardens.ts';
import { clockAt, household, later, MORNING, openTask } from './household.ts';

/** A household with a feed, and the feed's text as it stands. */
async function withFeed(file = northernFile(), path?: string) {
  const house = await household(file, MORNING, path);
  const feed = await house.steward.addFeed(house.garden, 'Phone');
  const body = async () => {
    const text = await house.steward.feedBody(feed.token);
    if (text === undefined) throw new Error('The feed is not there.');
    return text;
  };
  return { ...house, feed, body };
}

/** SEQUENCE by UID, read without any calendar library. */
function sequences(body: string): Map<string, number> {
  const events = body.replace(/\r\n /g, '').split('BEGIN:VEVENT').slice(1);
  const line = (event: string, name: string): string =>
    new RegExp(`^${name}:(.*)$`, 'm').exec(event)?.[1]?.trim() ?? '';
  return new Map(events.map((event) => [line(event, 'UID'), Number(line(event, 'SEQUENCE'))]));
}

describe("a feed's text", () => {
  it('is the same octets each time it is read', async () => {
    const { body, clock } = await withFeed();
    const first = await body();
    later(clock, 90);
    expect(await body()).toEqual(first);
  });

  it('is the same octets after the database was closed and opened again', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'loamtide-steward-'));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    const { body, clock, steward, feed } = await withFeed(northernFile(), databaseIn(folder));
    const first = await body();
    await steward.close();
    later(clock, 90);
    const store = await openStore({ file: databaseIn(folder), now: clock.now() });
    const reopened = createSteward({ store, clock: clockAt(clock.now()) });
    expect(await reopened.feedBody(feed.token)).toEqual(first);
    await reopened.close();
  });

  it('is the same octets on the next day when nothing came, went or moved', async () => {
    const { body, clock } = await withFeed(northernFile({ plantings: [], coverStands: [], piles: [], beds: [bed] }));
    const first = await body();
    clock.moment = '2027-04-21T05:00:00.000Z';
    expect(await body()).toEqual(first);
  });

  it('raises SEQUENCE for what moved and for nothing else', async () => {
    const { steward, garden, body, clock } = await withFeed();
    const before = sequences((await body()).body);
    const { key } = openTask((await steward.view(garden)).plan, 'clear-bed');
    later(clock);
    const plan = await steward.pin(garden, key, '2027-04-30', 'ada');
    const after = sequences((await body()).body);
    const risen = [...after].filter(([uid, sequence]) => sequence !== before.get(uid));
    const stamped = plan.entries.filter(({ changedAt }) => changedAt === clock.moment);
    expect(risen).toHaveLength(stamped.length);
    expect(stamped.flatMap(({ keys }) => keys)).toContain(key);
    expect([...after.values()].reduce((sum, sequence) => sum + sequence, 0)).toBe(
      plan.entries.reduce((sum, { sequence }) => sum + sequence, 0),
    );
  });

  it('is dated by the plan when the plan changes', async () => {
    const { steward, garden, body, clock } = await withFeed();
    const first = await body();
    expect(first.changedAt).toBe(MORNING);
    later(clock);
    await steward.pin(garden, openTask((await steward.view(garden)).plan, 'clear-bed').key, '2027-04-30', 'ada');
    const next = await body();
    expect([next.changedAt, next.etag === first.etag]).toEqual([clock.moment, false]);
  });

  it('is dated by the beginning of the day on which an entry came into it or left it', async () => {
    const { steward, garden, clock } = await withFeed();
    const { key } = openTask((await steward.view(garden)).plan, 'clear-bed');
    later(clock);
    await steward.markDone(garden, [key], NORTH_TODAY, 'ada');
    const view = await steward.view(garden);
    const done = view.plan.entries.filter(({ state }) => state === 'done');
    const on = (today: string) => feedTextOf({ ...view, plan: { ...view.plan, entries: done, today } });
    expect(on('2027-05-20').body).toContain('Done: ');
    expect(on('2027-05-21').body).not.toContain('Done: ');
    expect(on('2027-05-20').changedAt).toBe(view.plan.revisedAt);
    expect(on('2027-05-21').changedAt).toBe('2027-05-21T05:00:00.000Z');
  });

  it('is dated by today while it holds nothing but its notice, which goes with the days', async () => {
    const { steward, garden } = await withFeed();
    const view = await steward.view(garden);
    const empty = feedTextOf({ ...view, plan: { ...view.plan, entries: [], today: '2027-04-24' } });
    expect(empty.changedAt).toBe('2027-04-24T05:00:00.000Z');
  });
});

const bed = { id: 'wall', name: 'wall bed', lengthM: 3, widthM: 1.2 };

describe('a feed address', () => {
  it('is its own for each feed, and gives the same text', async () => {
    const { steward, garden, feed, body } = await withFeed();
    const other = await steward.addFeed(garden, 'Tablet');
    expect(other.token).not.toBe(feed.token);
    expect(await steward.feedBody(other.token)).toEqual(await body());
    expect((await steward.feeds(garden)).map(({ label }) => label)).toEqual(['Phone', 'Tablet']);
  });

  it('gives only a notice once it is revoked, and nothing to a stranger', async () => {
    const { steward, garden, feed } = await withFeed();
    expect(await steward.revokeFeed(garden, feed.id)).toBe(true);
    expect((await steward.feedBody(feed.token))?.body.match(/BEGIN:VEVENT/g)).toHaveLength(1);
    expect(await steward.feedBody('')).toBeUndefined();
    expect(await steward.feedBody(`${feed.token}x`)).toBeUndefined();
    expect([await steward.revokeFeed(garden, feed.id), await steward.revokeFeed(garden, 'feed-9')]).toEqual([
      false,
      false,
    ]);
  });

  it('says the same as ever once it is opened again, and is newer than the notice', async () => {
    const { steward, garden, clock } = await household();
    const feed = await steward.addFeed(garden, 'Phone');
    const before = await steward.feedBody(feed.token);
    later(clock);
    await steward.revokeFeed(garden, feed.id);
    const notice = await steward.feedBody(feed.token);
    later(clock);
    expect(await steward.reopenFeed(garden, feed.id)).toBe(true);
    const again = await steward.feedBody(feed.token);
    expect(again?.body).toBe(before?.body);
    expect((again?.changedAt ?? '') > (notice?.changedAt ?? '')).toBe(true);
    expect(await steward.reopenFeed(garden, feed.id)).toBe(false);
  });

  it('is revoked alone: the others go on', async () => {
    const { steward, garden, feed, body } = await withFeed();
    const other = await steward.addFeed(garden, 'Tablet');
    const text = await body();
    await steward.revokeFeed(garden, feed.id);
    expect(await steward.feedBody(other.token)).toEqual(text);
    const third = await steward.addFeed(garden, 'Wall');
    expect(new Set([feed.id, other.id, third.id]).size).toBe(3);
  });

  it('stands nowhere in the text', async () => {
    const { feed, body } = await withFeed();
    expect((await body()).body).not.toContain(feed.token);
  });
});
