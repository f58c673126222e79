/**
 * Lots: the same job on one day is one calendar entry, whose id outlives moves, splits and merges.
 */
import type { Day } from '../measures/days.ts';
import type { TaskDraft, TaskKey } from '../practices/draft.ts';
import type { Entry, TaskState } from './plan.ts';

/** A task ready to be gathered. */
export interface LotMember {
  draft: TaskDraft;
  day: Day;
  state: TaskState;
  ridesWith?: TaskKey;
}

/** One calendar entry's tasks: the work in bed order, then the checks riding along. */
export interface Lot {
  lotId: string;
  day: Day;
  state: TaskState;
  members: readonly LotMember[];
}

type Group = Omit<Lot, 'lotId'>;

/**
 * Gathers tasks into lots and gives each its id: that of the published entry most of it comes from, else a new one.
 *
 * On a split the larger part keeps the id (a tie goes to the part with the lowest bed id); on a merge the older id wins.
 */
export function lotsOf(members: readonly LotMember[], published: readonly Entry[]): Lot[] {
  const groups = groupsOf(members);
  const ids = new Map<Group, string>();
  const older = [...published].sort((a, b) =>
    a.createdAt === b.createdAt ? (a.lotId < b.lotId ? -1 : 1) : a.createdAt < b.createdAt ? -1 : 1,
  );
  for (const entry of older) {
    const heir = heirOf(entry, groups);
    if (heir !== undefined && !ids.has(heir)) ids.set(heir, entry.lotId);
  }
  const taken = new Set([...published.map(({ lotId }) => lotId)]);
  return groups.map((group) => {
    const lotId = ids.get(group) ?? freshId(group, taken);
    taken.add(lotId);
    return { lotId, ...group };
  });
}

/** The group that holds most of an entry's tasks; a tie goes to the group whose first member sorts lowest. */
function heirOf(entry: Entry, groups: readonly Group[]): Group | undefined {
  const keys = new Set(entry.keys);
  const shares = groups
    .map((group) => ({ group, share: group.members.filter(({ draft }) => keys.has(draft.key)).length }))
    .filter(({ share }) => share > 0);
  shares.sort((a, b) => b.share - a.share || (firstName(a.group) < firstName(b.group) ? -1 : 1));
  return shares[0]?.group;
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
    const name = `${member.day}|${member.draft.job.id}|${member.state}`;
    home.set(member.draft.key, name);
    groups.set(name, [...(groups.get(name) ?? []), member]);
  }
  for (const rider of sorted.filter(({ ridesWith }) => ridesWith !== undefined)) {
    const name = home.get(rider.ridesWith ?? '') ?? `${rider.day}|${rider.draft.job.id}|${rider.state}`;
    groups.set(name, [...(groups.get(name) ?? []), rider]);
  }
  return [...groups.entries()]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([, group]) => {
      const [first] = group;
      return first === undefined ? [] : [{ day: first.day, state: first.state, members: group }];
    });
}

/** Bed order: by the bed, pile or stand a task is about, then by its key. */
function orderName(draft: TaskDraft): string {
  const { subject } = draft;
  return `${subject.type === 'stand' ? subject.bedId : subject.id} ${draft.key}`;
}
