/**
 * The day each task has as long as nothing is late. It is worked out without knowing today, so that an entry published
 * for a day to come does not move merely because today did.
 */
import { addDays, type Day, daysBetween, latestOf } from '../measures/days.ts';
import type { TaskDraft, TaskKey } from '../practices/draft.ts';
import { chosenDay } from './day-choice.ts';
import { type Cluster, gathered, type Room } from './gather.ts';
import { levelWeeks } from './levelling.ts';
import { closedAfter, type DayOf, dayOfTasks, placeOf, roomOf, waitsOf, workByPlace } from './room.ts';
import type { SteadyInput, SteadyPlace } from './steady-place.ts';
import { WeekLoad } from './week-load.ts';
import { atHome, type OrderedWindow, orderedWindows } from './windows.ts';
import { type Household, isAway, leastUnfitness } from './work-days.ts';

/**
 * Steady places by key, in an order in which every task comes after all it waits for.
 *
 * @param drafts in the order of their keys
 */
export function steadyPlaces(drafts: readonly TaskDraft[], input: SteadyInput): Map<TaskKey, SteadyPlace> {
  return new SteadyTable(drafts, input).filled();
}

class SteadyTable {
  readonly #input: SteadyInput;
  readonly #drafts: ReadonlyMap<TaskKey, TaskDraft>;
  readonly #windows: ReadonlyMap<TaskKey, OrderedWindow>;
  readonly #places = new Map<TaskKey, SteadyPlace>();
  readonly #dayOf: DayOf;
  readonly #load: WeekLoad;
  /** Keys of work by the place it leads to. */
  readonly #workAt: ReadonlyMap<string, readonly TaskKey[]>;

  constructor(drafts: readonly TaskDraft[], input: SteadyInput) {
    this.#input = input;
    this.#load = new WeekLoad(input.done, input);
    this.#drafts = new Map(drafts.map((draft) => [draft.key, draft]));
    this.#windows = orderedWindows(drafts, ({ key, window }) => {
      const pin = input.pins[key];
      return pin === undefined ? atHome(window, input) : { earliest: pin, latest: pin };
    });
    this.#dayOf = dayOfTasks(input.done, this.#places);
    this.#workAt = workByPlace(drafts);
  }

  /**
   * Whole groups go first, those with the least room before the others, so that what cannot wait finds its week free;
   * then checks, by now most work they may ride with has its day; then parts of groups.
   */
  filled(): Map<TaskKey, SteadyPlace> {
    const all = [...this.#drafts.values()];
    const groups = byJob(all.filter(({ weight }) => weight !== 'check'))
      .flatMap((job) => this.#groups(job))
      .sort((a, b) => daysBetween(a.from, a.to) - daysBetween(b.from, b.to))
      .map(({ rooms }) => rooms.map(({ draft }) => draft));
    const checks = all.filter(({ weight }) => weight === 'check');
    while (this.#places.size < this.#drafts.size) {
      const whole = groups.find((group) => this.#left(group).length > 0 && this.#ready(group).length === group.length);
      if (whole !== undefined) {
        this.#placeTogether(this.#left(whole));
        continue;
      }
      const readyChecks = this.#left(this.#ready(checks));
      const part = () => groups.map((group) => this.#left(this.#ready(group))).find(({ length }) => length > 0);
      if (readyChecks.length > 0) this.#placeChecks(readyChecks);
      else this.#placeTogether(part() ?? []);
    }
    if (this.#load.overMinutes > 0) this.#level();
    return this.#places;
  }

  /** Eases weeks that are over their hours. A check whose work went elsewhere looks for another visit. */
  #level(): void {
    levelWeeks({
      input: this.#input,
      drafts: this.#drafts,
      places: this.#places,
      windows: this.#windows,
      dayOf: this.#dayOf,
      load: this.#load,
    });
    for (const [key, { day, ridesWith }] of this.#places) {
      const check = this.#drafts.get(key);
      if (check?.weight === 'check' && ridesWith === undefined && this.#input.pins[key] === undefined)
        this.#seat(check, day);
    }
  }

  /** Puts a check that has a day of its own with work that now stands on a day that suits it. */
  #seat(check: TaskDraft, day: Day): void {
    const room = this.#room(check, waitsOf(check, this.#dayOf));
    const host = room && nearestVisit(room, this.#visits(check), this.#input);
    if (host === undefined || this.#holdsUp(check, host.day)) return;
    this.#load.remove(day, check);
    this.#ride(check, host);
  }

  /** Whether something that waits for a task would come too soon after it on a day. */
  #holdsUp({ key }: TaskDraft, day: Day): boolean {
    return [...this.#drafts.values()].some(({ key: next, after }) =>
      after.some((wait) => wait.key === key && addDays(day, wait.minDays) > (this.#places.get(next)?.day ?? day)),
    );
  }

  /** Drafts of one job that would go well together were it only for their windows. */
  #groups(job: readonly TaskDraft[]): Cluster[] {
    return gathered(
      job.flatMap((draft) => this.#room(draft, []) ?? []),
      this.#input,
    );
  }

  #left(drafts: readonly TaskDraft[]): TaskDraft[] {
    return drafts.filter(({ key }) => !this.#places.has(key));
  }

  #ready(drafts: readonly TaskDraft[]): TaskDraft[] {
    return drafts.filter(({ after }) => after.every(({ key }) => !this.#drafts.has(key) || this.#places.has(key)));
  }

  /** A pinned draft counts in its group as if it were not, so that pinning one bed leaves the others where they are. */
  #room(draft: TaskDraft, waits: readonly Day[]): Room | undefined {
    const { earliest: from, latest: to, preferred } = draft.window;
    const pinned = this.#input.pins[draft.key] !== undefined;
    return pinned ? { draft, from, to, preferred } : roomOf(draft, this.#window(draft), waits);
  }

  #window(draft: TaskDraft): OrderedWindow {
    return closedAfter(draft, this.#windows.get(draft.key) ?? draft.window, this.#dayOf);
  }

  #placeTogether(drafts: readonly TaskDraft[]): void {
    const rooms: Room[] = [];
    for (const draft of drafts) {
      const waits = waitsOf(draft, this.#dayOf);
      const room = this.#room(draft, waits);
      if (room === undefined) this.#put(draft, latestOf(this.#window(draft).earliest, ...waits));
      else rooms.push(room);
    }
    for (const cluster of gathered(rooms, this.#input)) {
      const work = cluster.rooms.map(({ draft }) => draft);
      const day = chosenDay(cluster, work, this.#load, this.#input);
      for (const { draft } of cluster.rooms) this.#put(draft, this.#input.pins[draft.key] ?? day);
    }
  }

  #put(draft: TaskDraft, day: Day): void {
    this.#places.set(draft.key, { day });
    this.#load.add(day, draft);
  }

  /** A check goes on a day on which its place is visited anyway; those that find none are gathered like work. */
  #placeChecks(checks: readonly TaskDraft[]): void {
    const alone: TaskDraft[] = [];
    for (const check of checks) {
      const room =
        this.#input.pins[check.key] === undefined ? this.#room(check, waitsOf(check, this.#dayOf)) : undefined;
      const host = room && nearestVisit(room, this.#visits(check), this.#input);
      if (host === undefined) alone.push(check);
      else this.#ride(check, host);
    }
    for (const job of byJob(alone)) this.#placeTogether(job);
  }

  #ride(check: TaskDraft, host: Visit): void {
    this.#places.set(check.key, { day: host.day, ridesWith: host.key });
    this.#load.add(host.day, check, this.#drafts.get(host.key)?.job.id);
  }

  #visits(check: TaskDraft): Visit[] {
    return (this.#workAt.get(placeOf(check)) ?? []).flatMap((key) => {
      const day = this.#places.get(key)?.day;
      return day === undefined ? [] : [{ key, day }];
    });
  }
}

/** Work at a place, on its day. */
export interface Visit {
  key: TaskKey;
  day: Day;
}

/**
 * The visit inside a room that is nearest to its preferred day; of two as near the earlier, then the lower key. Work
 * that stands on a day away is no visit for a check that somebody at home could make.
 */
export function nearestVisit(room: Room, visits: readonly Visit[], household: Household): Visit | undefined {
  const apart = ({ day }: Visit): number => Math.abs(daysBetween(day, room.preferred));
  const someoneHome = leastUnfitness(room, household) < 2;
  return visits
    .filter(({ day }) => day >= room.from && day <= room.to && !(someoneHome && isAway(day, household.away)))
    .sort((a, b) => apart(a) - apart(b) || (a.day === b.day ? (a.key < b.key ? -1 : 1) : a.day < b.day ? -1 : 1))[0];
}

function byJob(drafts: readonly TaskDraft[]): TaskDraft[][] {
  const jobs = new Map<string, TaskDraft[]>();
  for (const draft of drafts) jobs.set(draft.job.id, [...(jobs.get(draft.job.id) ?? []), draft]);
  return [...jobs.entries()].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, group]) => group);
}
