/**
 * The same job on several beds gathered into one day where their windows allow and no bed is the worse for it.
 */
import { clampDay, type Day, daysBetween, earliestOf, latestOf } from '../measures/days.ts';
import type { TaskDraft } from '../practices/draft.ts';
import { type Household, leastUnfitness, type Span } from './work-days.ts';

/** Days by which two beds' preferred days may differ and still be done on one. House default. */
export const GATHER_DAYS = 10;

/** The days a draft may be put on, and the one that suits it best. */
export interface Room extends Span {
  draft: TaskDraft;
  preferred: Day;
}

/** Rooms to be put on one day. */
export interface Cluster extends Span {
  rooms: readonly Room[];
  preferred: Day;
}

/**
 * Rooms of one job gathered: those of a cluster share at least one day, have preferred days within
 * {@link GATHER_DAYS}, counted from the first they were wanted on, and lose no work day by going together. The latest of their preferred days is the cluster's.
 */
export function gathered(rooms: readonly Room[], household: Household): Cluster[] {
  const clusters: Cluster[] = [];
  for (const room of [...rooms].sort(byPreference)) {
    const home = clusters.findIndex((cluster) => suits(cluster, room, household));
    const cluster = clusters[home];
    const { from, to, preferred } = room;
    if (cluster === undefined) clusters.push({ rooms: [room], from, to, preferred });
    else clusters[home] = joined(cluster, room);
  }
  return clusters;
}

function byPreference(a: Room, b: Room): number {
  if (a.preferred !== b.preferred) return a.preferred < b.preferred ? -1 : 1;
  if (a.to !== b.to) return a.to < b.to ? -1 : 1;
  return a.draft.key < b.draft.key ? -1 : 1;
}

function suits(cluster: Cluster, room: Room, household: Household): boolean {
  const shared = overlap(cluster, room);
  if (shared.from > shared.to) return false;
  if (daysBetween(soonestWish(cluster), room.preferred) > GATHER_DAYS) return false;
  const together = leastUnfitness(shared, household);
  return together === leastUnfitness(cluster, household) && together === leastUnfitness(room, household);
}

/** The first of the days its members would best be done on, those that time away or an order holds up included. */
function soonestWish({ rooms, preferred }: Cluster): Day {
  return earliestOf(preferred, ...rooms.map((room) => earliestOf(room.preferred, room.draft.window.preferred)));
}

function joined(cluster: Cluster, room: Room): Cluster {
  const { from, to } = overlap(cluster, room);
  const preferred = clampDay(latestOf(cluster.preferred, room.preferred), from, to);
  return { rooms: [...cluster.rooms, room], from, to, preferred };
}

function overlap(a: Span, b: Span): Span {
  return { from: latestOf(a.from, b.from), to: earliestOf(a.to, b.to) };
}
