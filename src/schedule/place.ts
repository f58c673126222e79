/**
 * Drafts put on days: inside the window, on work days where there are any, in order, the same job on several beds
 * gathered into one day where their windows allow.
 */
import type { Away, DoneMark } from '../garden/garden.ts';
import {
  addDays,
  clampDay,
  type Day,
  daysBetween,
  earliestOf,
  latestOf,
  type Weekday,
  weekdayOf,
} from '../measures/days.ts';
import type { TaskDraft, TaskKey } from '../practices/draft.ts';
import type { Clash, TaskState } from './plan.ts';
import { type OrderedWindow, orderedWindows } from './windows.ts';

/** What placing has to reckon with besides the drafts. */
export interface Placing {
  today: Day;
  workDays: readonly Weekday[];
  away: readonly Away[];
  pins: Readonly<Record<TaskKey, Day>>;
  done: readonly DoneMark[];
}

/** A draft on its day. */
export interface Placed {
  draft: TaskDraft;
  day: Day;
  state: Extract<TaskState, 'open' | 'lapsed'>;
  pinned: boolean;
  pinWarning?: string;
  /** The work task of the same subject a check rides with. */
  ridesWith?: TaskKey;
}

/** Days by which two beds' preferred days may differ and still be done on one. House default. */
export const GATHER_DAYS = 10;
/** Days after its window that a task which still wants doing is kept in sight. House default. */
export const STILL_DO_DAYS = 60;
/** Days after its window that a lost task is still named. House default: two weekly lists. */
export const NAMED_LOST_DAYS = 14;

/** Puts every draft on a day. Drafts already done or skipped must be left out by the caller. */
export function place(drafts: readonly TaskDraft[], placing: Placing): { placed: Placed[]; clashes: Clash[] } {
  const windows = orderedWindows(drafts);
  const table = new PlacingTable(placing, windows);
  const work = drafts.filter((draft) => draft.weight !== 'check');
  const depths = [...new Set(work.map((draft) => windows.get(draft.key)?.depth ?? 0))].sort((a, b) => a - b);
  for (const depth of depths) {
    const level = work.filter((draft) => windows.get(draft.key)?.depth === depth);
    for (const job of groupByJob(level)) table.placeJob(job);
  }
  const checks = drafts.filter((draft) => draft.weight === 'check');
  for (const check of checks.sort(byDepthThenKey(windows))) table.placeCheck(check);
  return { placed: table.all(), clashes: table.clashes };
}

function byDepthThenKey(windows: ReadonlyMap<TaskKey, OrderedWindow>) {
  return (a: TaskDraft, b: TaskDraft): number =>
    (windows.get(a.key)?.depth ?? 0) - (windows.get(b.key)?.depth ?? 0) || (a.key < b.key ? -1 : 1);
}

function groupByJob(drafts: readonly TaskDraft[]): TaskDraft[][] {
  const jobs = new Map<string, TaskDraft[]>();
  for (const draft of drafts) jobs.set(draft.job.id, [...(jobs.get(draft.job.id) ?? []), draft]);
  return [...jobs.entries()].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, group]) => group);
}

/** A span of days a draft may still be put on, today and what it waits for taken into account. */
interface Room {
  draft: TaskDraft;
  from: Day;
  to: Day;
  preferred: Day;
}

class PlacingTable {
  readonly clashes: Clash[] = [];
  readonly #placed = new Map<TaskKey, Placed>();
  readonly #placing: Placing;
  readonly #windows: ReadonlyMap<TaskKey, OrderedWindow>;
  readonly #doneOn: ReadonlyMap<TaskKey, Day>;

  constructor(placing: Placing, windows: ReadonlyMap<TaskKey, OrderedWindow>) {
    this.#placing = placing;
    this.#windows = windows;
    this.#doneOn = new Map(placing.done.map(({ key, on }) => [key, on]));
  }

  all(): Placed[] {
    return [...this.#placed.values()];
  }

  placeJob(job: readonly TaskDraft[]): void {
    const rooms: Room[] = [];
    for (const draft of job) {
      if (this.#pin(draft) || this.#lapse(draft)) continue;
      rooms.push(this.#room(draft));
    }
    for (const cluster of gathered(rooms)) {
      const day = this.#dayFor(cluster.from, cluster.to, cluster.preferred);
      for (const { draft } of cluster.rooms) this.#put({ draft, day, state: 'open', pinned: false });
    }
  }

  /** A check goes on a day on which its subject is visited anyway, else on a day of its own. */
  placeCheck(draft: TaskDraft): void {
    if (this.#pin(draft) || this.#lapse(draft)) return;
    const room = this.#room(draft);
    const visit = this.#visits(draft)
      .filter(({ day }) => day >= room.from && day <= room.to)
      .sort((a, b) => apart(a.day, room.preferred) - apart(b.day, room.preferred) || (a.day < b.day ? -1 : 1))[0];
    if (visit) this.#put({ draft, day: visit.day, state: 'open', pinned: false, ridesWith: visit.draft.key });
    else this.#put({ draft, day: this.#dayFor(room.from, room.to, room.preferred), state: 'open', pinned: false });
  }

  #visits(check: TaskDraft): Placed[] {
    const where = placeOf(check);
    return this.all().filter(
      ({ draft, state }) => draft.weight === 'work' && state === 'open' && placeOf(draft) === where,
    );
  }

  #put(placed: Placed): void {
    this.#placed.set(placed.draft.key, placed);
  }

  #pin(draft: TaskDraft): boolean {
    const day = this.#placing.pins[draft.key];
    if (day === undefined) return false;
    const { earliest, latest } = draft.window;
    const outside = day < earliest || day > latest;
    this.#put({
      draft,
      day,
      state: 'open',
      pinned: true,
      ...(outside ? { pinWarning: `Pinned outside its window, which runs from ⟦${earliest}⟧ to ⟦${latest}⟧.` } : {}),
    });
    return true;
  }

  /** Puts a task whose window has closed where it can still be seen; what is long lost is let go. */
  #lapse(draft: TaskDraft): boolean {
    const { today } = this.#placing;
    const { latest } = draft.window;
    if (latest >= today) return false;
    const late = daysBetween(latest, today);
    if (draft.ifMissed === 'still do') {
      const day = this.#dayFor(today, addDays(today, 6), today);
      if (late <= STILL_DO_DAYS) this.#put({ draft, day, state: 'lapsed', pinned: false });
    } else if (late <= NAMED_LOST_DAYS) this.#put({ draft, day: latest, state: 'lapsed', pinned: false });
    return true;
  }

  #room(draft: TaskDraft): Room {
    const window = this.#windows.get(draft.key) ?? { ...draft.window, depth: 0 };
    const waits = draft.after.flatMap(({ key, minDays }) => this.#freeFrom(key, minDays));
    const from = latestOf(window.earliest, this.#placing.today, ...waits);
    const to = window.latest;
    if (from > to) {
      const what = `It cannot be done before ⟦${from}⟧, and its window closes on ⟦${to}⟧.`;
      this.clashes.push({ key: draft.key, title: draft.title, what });
      return { draft, from, to: from, preferred: from };
    }
    return { draft, from, to, preferred: clampDay(draft.window.preferred, from, to) };
  }

  #freeFrom(key: TaskKey, minDays: number): Day[] {
    const day = this.#doneOn.get(key) ?? this.#placed.get(key)?.day;
    return day === undefined ? [] : [addDays(day, minDays)];
  }

  /** The work day nearest to a preferred one in a span; failing that a day at home; failing that the preferred day. */
  #dayFor(from: Day, to: Day, preferred: Day): Day {
    let best: { day: Day; cost: number } | undefined;
    for (let day = from; day <= to; day = addDays(day, 1)) {
      const cost = this.#cost(day) + apart(day, preferred);
      if (best === undefined || cost < best.cost) best = { day, cost };
    }
    return best?.day ?? preferred;
  }

  /** Any work day beats any other day at home, and any day at home beats a day away. */
  #cost(day: Day): number {
    if (this.#placing.away.some(({ from, to }) => day >= from && day <= to)) return 2_000_000;
    return this.#placing.workDays.includes(weekdayOf(day)) ? 0 : 1_000_000;
  }
}

/** Where a task is done: a bed, a bin's pile or the garden at large. */
function placeOf({ subject }: TaskDraft): string {
  if (subject.type === 'stand') return `bed:${subject.bedId}`;
  return `${subject.type}:${subject.id}`;
}

function apart(a: Day, b: Day): number {
  return Math.abs(daysBetween(a, b));
}

interface Cluster {
  rooms: Room[];
  from: Day;
  to: Day;
  preferred: Day;
}

/** Rooms of one job gathered so that each cluster shares at least one day and nearly one preference. */
function gathered(rooms: readonly Room[]): Cluster[] {
  const clusters: Cluster[] = [];
  const ordered = [...rooms].sort((a, b) =>
    a.to === b.to ? (a.draft.key < b.draft.key ? -1 : 1) : a.to < b.to ? -1 : 1,
  );
  for (const room of ordered) {
    const home = clusters.find(
      ({ from, to, rooms: [first] }) =>
        latestOf(from, room.from) <= earliestOf(to, room.to) &&
        first !== undefined &&
        apart(first.preferred, room.preferred) <= GATHER_DAYS,
    );
    if (home === undefined) clusters.push({ rooms: [room], from: room.from, to: room.to, preferred: room.preferred });
    else {
      home.rooms.push(room);
      home.from = latestOf(home.from, room.from);
      home.to = earliestOf(home.to, room.to);
      home.preferred = clampDay(latestOf(home.preferred, room.preferred), home.from, home.to);
    }
  }
  return clusters;
}
