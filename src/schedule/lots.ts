/**
 * Lots: the same job on one day is one calendar entry, whose id outlives moves, splits and merges.
 */
import type { Day } from '../measures/days.ts';
import type { TaskDraft, TaskKey } from '../practices/draft.ts';
import { hourName, hourOn } from './hour.ts';
import type { Entry, Plan, RetiredLot, TaskState } from './plan.ts';

/** A task ready to be gathered. */
export interface LotMember {
  draft: TaskDraft;
  day: Day;
  state: TaskState;
  ridesWith?: TaskKey;
  /** The member of the household it was given to. */
  assignedTo?: string;
}

/** One calendar entry's tasks: the work in bed order, then the checks riding along. */
export interface Lot {
  lotId: string;
  day: Day;
  state: TaskState;
  members: readonly LotMember[];
}

/** The lots known so far: those of the plan last published, and those that have left it. */
export type KnownLots = Pick<Plan, 'entries' | 'retired'>;

type Group = Omit<Lot, 'lotId'>;

/**
 * Gathers tasks into lots and gives each its id: that of the published entry its work comes from, else that of an entry
 * that left and now comes back, else a new one.
 *
 * On a split the larger part keeps the id, unless it is just what an entry that left was: then it takes that one's id
 * back. A tie goes to the part that no other entry mostly went into, then to the one with the lowest bed id. On a merge
 * the older id wins.
 */
export function lotsOf(members: readonly LotMember[], published?: KnownLots): Lot[] {
  const groups = groupsOf(members);
  const { entries = [], retired = [] } = published ?? {};
  const ids = heirs(groups, published);
  const taken = new Set([...entries, ...retired].map(({ lotId }) => lotId));
  for (const group of groups) {
    const id = ids.get(group) ?? returning(group, retired, new Set(ids.values()))?.lotId ?? freshId(group, taken);
    ids.set(group, id);
    taken.add(id);
  }
  return groups.map((group) => ({ lotId: ids.get(group) ?? '', ...group }));
}

/** The groups that inherit a published entry's id. Older entries choose first. */
function heirs(groups: readonly Group[], published: KnownLots | undefined): Map<Group, string> {
  const ids = new Map<Group, string>();
  const { entries = [], retired = [] } = published ?? {};
  const claims = [...entries].sort(byAge).map((entry) => ({ lotId: entry.lotId, parts: partsOf(entry, groups) }));
  claims.forEach(({ lotId, parts }, index) => {
    const others = new Set(claims.slice(index + 1).map((claim) => claim.parts[0]?.group));
    const free = parts.filter(({ group }) => !ids.has(group));
    const own = free.filter(({ group }) => !retired.some((lot) => isJust(group, lot)));
    const wanted = own.length > 0 ? own : free;
    const even = wanted.filter(({ share }) => share === wanted[0]?.share);
    const heir = even.find(({ group }) => !others.has(group)) ?? even[0];
    if (heir !== undefined) ids.set(heir.group, lotId);
  });
  return ids;
}

/** Groups that hold some of a lot's work, the one with most of it first, then the one with the lowest bed id. */
function partsOf(lot: Pick<Entry, 'kind' | 'keys'>, groups: readonly Group[]): { group: Group; share: number }[] {
  return groups
    .map((group) => ({ group, share: shareOf(group, lot) }))
    .filter(({ share }) => share > 0)
    .sort((a, b) => b.share - a.share || (firstName(a.group) < firstName(b.group) ? -1 : 1));
}

/** How many tasks of a lot's own kind a group of that kind holds: what only rides along counts for nothing. */
function shareOf({ members }: Group, { kind, keys }: Pick<Entry, 'kind' | 'keys'>): number {
  if (members[0]?.draft.kind !== kind) return 0;
  return members.filter(({ draft }) => draft.kind === kind && keys.includes(draft.key)).length;
}

/** Whether a group holds the tasks of a lot that left and no others. */
function isJust(group: Group, lot: RetiredLot): boolean {
  const { keys } = lot;
  const held = group.members.every(({ draft }) => keys.includes(draft.key));
  return held && group.members.length === keys.length && shareOf(group, lot) > 0;
}

/** The lot that left whose tasks a group mostly holds, unless its id is in use again. */
function returning(group: Group, retired: readonly RetiredLot[], used: ReadonlySet<string>): RetiredLot | undefined {
  return retired
    .filter((lot) => !used.has(lot.lotId) && shareOf(group, lot) > 0)
    .sort(
      (a, b) =>
        Number(isJust(group, b)) - Number(isJust(group, a)) || shareOf(group, b) - shareOf(group, a) || byAge(a, b),
    )[0];
}

function byAge(a: Pick<Entry, 'createdAt' | 'lotId'>, b: Pick<Entry, 'createdAt' | 'lotId'>): number {
  if (a.createdAt !== b.createdAt) return a.createdAt < b.createdAt ? -1 : 1;
  return a.lotId < b.lotId ? -1 : 1;
}

function firstName({ members: [first] }: Group): string {
  return first === undefined ? '' : orderName(first.draft);
}

function freshId(group: Group, taken: ReadonlySet<string>): string {
  const base = group.members[0]?.draft.key ?? '';
  if (!taken.has(base)) return base;
  let count = 2;
  while (taken.has(`${base}~${count}`)) count += 1;
  return `${base}~${count}`;
}

function groupsOf(members: readonly LotMember[]): Group[] {
  const groups = new Map<string, LotMember[]>();
  const home = new Map<TaskKey, string>();
  const sorted = [...members].sort((a, b) => (orderName(a.draft) < orderName(b.draft) ? -1 : 1));
  for (const member of sorted.filter(({ ridesWith }) => ridesWith === undefined)) {
    const name = groupName(member);
    home.set(member.draft.key, name);
    groups.set(name, [...(groups.get(name) ?? []), member]);
  }
  for (const rider of sorted.filter(({ ridesWith }) => ridesWith !== undefined)) {
    const name = home.get(rider.ridesWith ?? '') ?? groupName(rider);
    groups.set(name, [...(groups.get(name) ?? []), rider]);
  }
  return [...groups.entries()]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([, group]) => {
      const [first] = group;
      return first === undefined ? [] : [{ day: first.day, state: first.state, members: group }];
    });
}

/** What tasks gathered into one entry have in common: job, day and hour, and where they stand. */
function groupName({ draft, day, state }: LotMember): string {
  return `${day}|${draft.job.id}|${state}|${hourName(hourOn(draft, day))}`;
}

/** Bed order: by the bed, pile or stand a task is about, then by its key. */
function orderName(draft: TaskDraft): string {
  const { subject } = draft;
  return `${'bedId' in subject ? subject.bedId : subject.id} ${draft.key}`;
}
