/**
 * Feeds of members, kept true while the household changes.
 */
import type { Garden } from '../garden/garden.ts';
import { membersOf } from '../garden/household-changes.ts';
import type { Feed } from '../store/feeds.ts';
import type { FeedRoom } from './feeds.ts';

/** After a change: a member's feeds go by the name they have now, and say what falls to them now. */
export async function followHousehold(room: FeedRoom, [before, after]: readonly [Garden, Garden]): Promise<void> {
  const names = renamings(before, after);
  if (names.size > 0) await renameInFeeds(room, after.id, names);
  const members = membersOf(before).map((member) => ({ ...member, name: names.get(member.name) ?? member.name }));
  await reviseForMembers(room, { household: { members } }, after);
}

/** The present name of each member who was called otherwise, by the name they had. */
function renamings(before: Garden, after: Garden): ReadonlyMap<string, string> {
  return new Map(
    membersOf(before).flatMap(({ id, name }) => {
      const now = membersOf(after).find((member) => member.id === id)?.name ?? name;
      return now === name ? [] : [[name, now] as const];
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
  const said = (garden: Pick<Garden, 'household'>, person: string | undefined) => {
    const member = membersOf(garden).find(({ name }) => name === person);
    return JSON.stringify(member && [member.practices, member.beds]);
  };
  const now = room.clock.now();
  await changeAll(room, after.id, (feed) => {
    const { person } = feed.shape;
    if (said(before, person) === said(after, person)) return undefined;
    return { ...feed, shapeRevision: feed.shapeRevision + 1, shapedAt: now, changedAt: now };
  });
}

/** Nothing that a calendar shows of a task changes by a name: the feeds are given it without a revision. */
async function renameInFeeds(room: FeedRoom, gardenId: string, names: ReadonlyMap<string, string>): Promise<void> {
  const changedAt = room.clock.now();
  await changeAll(room, gardenId, (feed) => {
    const { person = '', reader = '' } = feed.shape;
    const [isTo, readBy] = [names.get(person), names.get(reader)];
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
