/**
 * Feeds of members, kept true while the household changes.
 */
import type { Fact } from '../garden/facts.ts';
import type { Garden } from '../garden/garden.ts';
import { membersOf } from '../garden/household-changes.ts';
import type { LedgerEntry } from '../garden/ledger.ts';
import type { Feed } from '../store/feeds.ts';
import type { FeedRoom } from './feeds.ts';

/** Somebody's name before and after. */
export interface Renaming {
  from: string;
  to: string;
}

/** After a change: a member's feeds go by the name they have now, and say what falls to them now. */
export async function followHousehold(
  room: FeedRoom,
  [before, after]: readonly [Garden, Garden],
  renaming: Renaming | undefined,
): Promise<void> {
  if (renaming !== undefined) await renameInFeeds(room, after.id, renaming);
  await reviseForMembers(room, renaming === undefined ? before : renamedIn(before, renaming), after);
}

/** The new name that a fact gives a member; of a taking-back, the name that it gives back. */
export function renamingBy(fact: Fact, ledger: readonly LedgerEntry[]): Renaming | undefined {
  if (fact.kind === 'member-kept') {
    const { member, formerName = member.name } = fact;
    return formerName === member.name ? undefined : { from: formerName, to: member.name };
  }
  if (fact.kind !== 'entry-undone') return undefined;
  const undone = ledger.find(({ entry }) => entry === fact.entry);
  const back = undone && renamingBy(undone.fact, ledger);
  return back && { from: back.to, to: back.from };
}

/**
 * Revises the feeds of whoever sees to other work than before, has come back to the household or has left it: what apps
 * hold of such a feed is no longer what it says, though neither its shape nor the plan may have changed. Work that is
 * given to somebody needs no more than its own revision, which the plan has raised.
 */
export async function reviseForMembers(
  room: FeedRoom,
  before: Pick<Garden, 'household'> | undefined,
  after: Pick<Garden, 'id' | 'household'>,
): Promise<void> {
  const said = (garden: Pick<Garden, 'household'> | undefined, person: string | undefined) => {
    const member = garden && membersOf(garden).find(({ name }) => name === person);
    return JSON.stringify(member && [member.practices, member.beds]);
  };
  const now = room.clock.now();
  await changeOpen(room, after.id, (feed) => {
    const { person } = feed.shape;
    if (said(before, person) === said(after, person)) return undefined;
    return { ...feed, shapeRevision: feed.shapeRevision + 1, shapedAt: now, changedAt: now };
  });
}

/** Nothing that a calendar shows of a task changes by a name: the feeds are given it without a revision. */
async function renameInFeeds(room: FeedRoom, gardenId: string, { from, to }: Renaming): Promise<void> {
  const now = room.clock.now();
  await changeOpen(room, gardenId, (feed) => {
    const { person, reader } = feed.shape;
    if (person === from) return { ...feed, shape: { ...feed.shape, person: to }, changedAt: now };
    return reader === from ? { ...feed, shape: { ...feed.shape, reader: to } } : undefined;
  });
}

function renamedIn(garden: Garden, { from, to }: Renaming): Pick<Garden, 'household'> {
  const members = membersOf(garden).map((member) => (member.name === from ? { ...member, name: to } : member));
  return { household: { ...garden.household, members } };
}

async function changeOpen(
  { store }: Pick<FeedRoom, 'store'>,
  gardenId: string,
  change: (feed: Feed) => Feed | undefined,
): Promise<void> {
  for (const feed of await store.feeds(gardenId)) {
    const changed = feed.revokedAt === undefined ? change(feed) : undefined;
    if (changed !== undefined) await store.changeFeed({ gardenId, feedId: feed.id }, changed);
  }
}
