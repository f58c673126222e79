import { describe, expect, it } from 'vitest';
import { PLAIN_SHAPE } from '../../src/calendar/feed-shape.ts';
import type { PracticeName } from '../../src/garden/practice-names.ts';
import { seenByIcalJs } from '../calendar/read-feed.ts';
import { northernFile } from './gardens.ts';
import { type Household, household, later } from './household.ts';

const onlyNorth = { ...PLAIN_SHAPE, beds: ['north'] };

async function bodyOf({ steward }: Household, token: string): Promise<string> {
  return (await steward.feedBody(token))?.body ?? '';
}

describe('a shaped feed', () => {
  it('shows some of what the plain feed shows, under the same names and of the same revision', async () => {
    const house = await household();
    const plain = await house.steward.addFeed(house.garden, 'Everything');
    const shaped = await house.steward.addFeed(house.garden, 'North', onlyNorth);
    const all = seenByIcalJs(await bodyOf(house, plain.token));
    const some = seenByIcalJs(await bodyOf(house, shaped.token));
    expect(some.length).toBeGreaterThan(0);
    expect(some.length).toBeLessThan(all.length);
    for (const event of some) expect(all).toContainEqual(event);
    expect(await bodyOf(house, shaped.token)).toContain('\r\nNAME:Hollow Lane: North\r\n');
  });

  it('of to-dos has no event but its notice', async () => {
    const house = await household();
    const { token } = await house.steward.addFeed(house.garden, 'Do', { ...PLAIN_SHAPE, todos: true });
    const body = await bodyOf(house, token);
    expect(body).toContain('BEGIN:VTODO');
    expect(body).not.toContain('BEGIN:VEVENT');
  });
});

describe('changing a feed', () => {
  it('keeps its address, and revises what it shows when its shape is another one', async () => {
    const house = await household();
    const { steward, garden, clock } = house;
    const feed = await steward.addFeed(garden, 'Shed');
    const before = await steward.feedBody(feed.token);
    later(clock);
    const shape = { ...PLAIN_SHAPE, alarm: { when: 'evening', hour: 20 } } as const;
    const changed = await steward.changeFeed(garden, feed.id, { shape });
    expect(changed).toMatchObject({ token: feed.token, shapeRevision: 1, shapedAt: clock.moment });
    const after = await steward.feedBody(feed.token);
    expect(after?.changedAt).toBe(clock.moment);
    expect(after?.etag).not.toBe(before?.etag);
    const was = seenByIcalJs(before?.body ?? '');
    const now = seenByIcalJs(after?.body ?? '');
    expect(now.map(({ uid, sequence }) => [uid, sequence])).toEqual(
      was.map(({ uid, sequence }) => [uid, sequence + 1]),
    );
  });

  it('back to a plain shape goes on counting', async () => {
    const house = await household();
    const { steward, garden } = house;
    const feed = await steward.addFeed(garden, 'Shed', onlyNorth);
    await steward.changeFeed(garden, feed.id, { shape: PLAIN_SHAPE });
    const plain = await steward.addFeed(garden, 'Plain');
    const sequences = async (token: string) => seenByIcalJs(await bodyOf(house, token)).map(({ sequence }) => sequence);
    expect(await sequences(feed.token)).toEqual((await sequences(plain.token)).map((sequence) => sequence + 1));
  });

  it('of its label alone revises no event', async () => {
    const house = await household();
    const { steward, garden, clock } = house;
    const feed = await steward.addFeed(garden, 'Shed', onlyNorth);
    const before = await bodyOf(house, feed.token);
    later(clock);
    expect(await steward.changeFeed(garden, feed.id, { label: 'Kitchen' })).toMatchObject({ label: 'Kitchen' });
    const after = await bodyOf(house, feed.token);
    expect(after).toContain('\r\nNAME:Hollow Lane: Kitchen\r\n');
    expect(seenByIcalJs(after)).toEqual(seenByIcalJs(before));
  });

  it('into what it is already does nothing', async () => {
    const { steward, garden, clock } = await household();
    const feed = await steward.addFeed(garden, 'Shed', onlyNorth);
    later(clock);
    expect(await steward.changeFeed(garden, feed.id, { label: 'Shed', shape: { ...onlyNorth } })).toEqual(feed);
  });

  it('that is revoked or never was is not done', async () => {
    const { steward, garden } = await household();
    const feed = await steward.addFeed(garden, 'Shed');
    await steward.revokeFeed(garden, feed.id);
    expect(await steward.changeFeed(garden, feed.id, { label: 'New' })).toBeUndefined();
    expect(await steward.changeFeed(garden, 'feed-9', { label: 'New' })).toBeUndefined();
  });

  it('to another address keeps label and shape', async () => {
    const { steward, garden } = await household();
    const feed = await steward.addFeed(garden, 'Shed', onlyNorth);
    const rotated = await steward.rotateFeed(garden, feed.id);
    expect(rotated).toEqual({ ...feed, token: rotated?.token });
    expect(rotated?.token).not.toBe(feed.token);
  });
});

describe('the feed of a person', () => {
  const members = (...list: { name: string; practices?: PracticeName[] }[]) =>
    northernFile({ household: { people: 2, members: list } });
  const ofIda = { ...PLAIN_SHAPE, person: 'Ida', by: 'day' } as const;

  it('is revised when they are given other work, and no other feed is', async () => {
    const house = await household(members({ name: 'Ida', practices: ['composting'] }, { name: 'Jonas' }));
    const { steward, garden, clock } = house;
    const idas = await steward.addFeed(garden, 'Ida', ofIda);
    await steward.addFeed(garden, 'Jonas', { ...ofIda, person: 'Jonas' });
    const before = seenByIcalJs(await bodyOf(house, idas.token));
    later(clock);
    const file = members({ name: 'Ida', practices: ['cover-cropping', 'composting'] }, { name: 'Jonas' });
    await steward.importGarden({ file, prefer: 'reported' }, 'ada');
    expect(await steward.feeds(garden)).toMatchObject([
      { shapeRevision: 1, shapedAt: clock.moment, changedAt: clock.moment },
      { shapeRevision: 0 },
    ]);
    expect((await steward.feedBody(idas.token))?.changedAt).toBe(clock.moment);
    const after = new Map(seenByIcalJs(await bodyOf(house, idas.token)).map((event) => [event.uid, event]));
    expect(after.size).toBeGreaterThan(before.length);
    for (const { uid, sequence } of before) expect(after.get(uid)?.sequence).toBeGreaterThan(sequence);
  });

  it('is revised when they leave, and again when that is taken back', async () => {
    const house = await household(members({ name: 'Ida' }));
    const { steward, garden, clock } = house;
    const { token } = await steward.addFeed(garden, 'Ida', ofIda);
    const before = seenByIcalJs(await bodyOf(house, token)).map(({ uid, title }) => [uid, title]);
    later(clock);
    await steward.importGarden({ file: northernFile(), prefer: 'reported' }, 'ada');
    expect(seenByIcalJs(await bodyOf(house, token))).toMatchObject([
      { title: 'Hollow Lane: Ida is no longer in the household' },
    ]);
    later(clock);
    await steward.undo(garden, undefined, 'ada');
    expect((await steward.feeds(garden))[0]).toMatchObject({ shapeRevision: 2, changedAt: clock.moment });
    expect(seenByIcalJs(await bodyOf(house, token)).map(({ uid, title }) => [uid, title])).toEqual(before);
  });
});
