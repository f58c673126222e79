/**
 * Feeds of members, kept true while the household changes.
 */
import { type FeedShape, memberOfFeed } from '../../calendar/feed-shape.ts';
import type { Garden } from '../../garden/garden.ts';
import type { Member } from '../../garden/household.ts';
import { membersOf } from '../../garden/household-changes.ts';
import type { Feed } from '../../store/feeds.ts';
import type { FeedRoom } from './feeds.ts';

/**
 * After a change: a feed is bound to the member who had its name until then, goes by the name they have now, and says what
 * falls to them now.
 */
export async function followHousehold(room: FeedRoom, [before, after]: readonly [Garden, Garden]): Promise<void> {
  const [were, are] = [before, after].map((garden) => JSON.stringify(membersOf(garden)));
  if (were === are) return;
  await bindFeeds(room, after.id, membersOf(before));
  const names = renamings(before, after);
  if (names.size > 0) await renameInFeeds(room, after.id, names);
  const members = membersOf(before).map((member) => ({ ...member, name: names.get(member.id) ?? member.name }));
  await reviseForMembers(room, { household: { members } }, after);
}

/** Feeds that go by a name alone are given the id of whoever has it; none where nobody has it any more. */
async function bindFeeds(room: FeedRoom, gardenId: string, members: readonly Member[]): Promise<void> {
  const idOf = (called: string): string => members.find(({ name }) => name === called)?.id ?? '';
  await changeAll(room, gardenId, (feed) => {
    const { person, personId, reader, readerId } = feed.shape;
    const bound = {
      ...(person === undefined || personId !== undefined ? {} : { personId: idOf(person) }),
      ...(reader === undefined || readerId !== undefined ? {} : { readerId: idOf(reader) }),
    };
    return Object.keys(bound).length === 0 ? undefined : { ...feed, shape: { ...feed.shape, ...bound } };
  });
}

/** The present name of each member who was called otherwise, by their id. */
function renamings(before: Garden, after: Garden): ReadonlyMap<string, string> {
  return new Map(
    membersOf(before).flatMap(({ id, name }) => {
      const now = membersOf(after).find((member) => member.id === id)?.name ?? name;
      return now === name ? [] : [[id, now] as const];
    }),
  );
}

/**
 * Revises the feeds of whoever sees to other work than before, has come back to the household or has left it: what apps
 * hold of such a feed is no longer what it says, though neither its shape nor the plan may have changed. Work that is
 * given to somebody needs no more than its own revision, which the plan has raised.
 */
async function reviseForMembers(
  room: FeedRoom,
  before: Pick<Garden, 'household'>,
  after: Pick<Garden, 'id' | 'household'>,
): Promise<void> {
  const said = (garden: Pick<Garden, 'household'>, shape: FeedShape) => {
    const member = memberOfFeed(shape, membersOf(garden));
    return JSON.stringify(member && [member.practices, member.beds]);
  };
  const now = room.clock.now();
  await changeAll(room, after.id, (feed) => {
    if (said(before, feed.shape) === said(after, feed.shape)) return undefined;
    return { ...feed, shapeRevision: feed.shapeRevision + 1, shapedAt: now, changedAt: now };
  });
}

/** Nothing that a calendar shows of a task changes by a name: the feeds are given it without a revision. */
async function renameInFeeds(room: FeedRoom, gardenId: string, names: ReadonlyMap<string, string>): Promise<void> {
  const changedAt = room.clock.now();
  await changeAll(room, gardenId, (feed) => {
    const { personId = '', readerId = '' } = feed.shape;
    const [isTo, readBy] = [names.get(personId), names.get(readerId)];
    if (isTo !== undefined) return { ...feed, shape: { ...feed.shape, person: isTo }, changedAt };
    return readBy === undefined ? undefined : { ...feed, shape: { ...feed.shape, reader: readBy } };
  });
}

/** A revoked feed may be opened again, and is then what it would have become. */
async function changeAll(
  { store }: Pick<FeedRoom, 'store'>,
  gardenId: string,
  change: (feed: Feed) => Feed | undefined,
): Promise<void> {
  for (const feed of await store.feeds(gardenId)) {
    const changed = change(feed);
    if (changed !== undefined) await store.followInFeed({ gardenId, feedId: feed.id }, changed);
  }
}
