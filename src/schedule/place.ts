/**
 * Drafts put on days: inside the window, on work days where there are any, in order. A task keeps the day it is held to,
 * else its steady day, while that is still to come and nothing it waits for is late; otherwise it is given the best day
 * left.
 */
import { addDays, type Day, daysBetween, earliestOf, latestOf } from '../measures/days.ts';
import type { TaskDraft, TaskKey } from '../practices/draft.ts';
import type { Room } from './gather.ts';
import { dayWithCompany, easingOf, heldCompany, heldTogether, keptIn } from './held.ts';
import { PlacingOrder } from './placing-order.ts';
import type { Clash, TaskState } from './plan.ts';
import { putOffIn } from './put-off.ts';
import { closedAfter, type DayOf, dayOfTasks, placeOf, roomOf, waitsOf, workByPlace } from './room.ts';
import { nearestVisit, steadyPlaces, type Visit } from './steady-days.ts';
import type { SteadyInput, SteadyPlace } from './steady-place.ts';
import { WeekLoad } from './week-load.ts';
import { daysLeft, type OrderedWindow, orderedWindows } from './windows.ts';
import { bestDay, isAway, type Span } from './work-days.ts';

/** What placing has to reckon with besides the drafts. */
export interface Placing extends SteadyInput {
  today: Day;
  /** Days that tasks were put off past; none where it is absent. */
  putOff?: Readonly<Record<TaskKey, Day>>;
  /** Days published for the next days, kept while window, order, home and pins allow. */
  held?: Readonly<Record<TaskKey, Day>>;
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

/** Days after its window that a task which still wants doing is kept in sight. House default. */
export const STILL_DO_DAYS = 60;
/** Days after its window that a lost task is still named. House default: two weekly lists. */
export const NAMED_LOST_DAYS = 14;

/** The last day on which a task that should still be done after its window is kept in sight. */
export function lastDayInSight({ window }: Pick<TaskDraft, 'window'>): Day {
  return addDays(window.latest, STILL_DO_DAYS);
}

/** Puts every draft on a day. Drafts already done or skipped must be left out by the caller. */
export function place(drafts: readonly TaskDraft[], placing: Placing): { placed: Placed[]; clashes: Clash[] } {
  const sorted = [...drafts].sort((a, b) => (a.key < b.key ? -1 : 1));
  const pins = Object.fromEntries(Object.entries(placing.pins).filter(([, day]) => day >= placing.today));
  // Steady days do not know what was put off, so that the same work on other beds stays where it is.
  const steady = steadyPlaces(sorted, placing);
  const asked = sorted.map((draft) => putOffIn(draft, placing.putOff ?? {}));
  let held = heldTogether(asked, steady, placing);
  for (;;) {
    const table = new PlacingTable(asked, { ...placing, pins, held });
    table.putAll(steady);
    const easing = easingOf(held, steady, { today: placing.today, overfull: table.overfullWeeks() });
    if (easing.length === 0) return table.result();
    held = Object.fromEntries(Object.entries(held).filter(([key]) => !easing.includes(key)));
  }
}

class PlacingTable {
  readonly #placing: Placing;
  readonly #drafts: ReadonlyMap<TaskKey, TaskDraft>;
  readonly #windows: ReadonlyMap<TaskKey, OrderedWindow>;
  readonly #placed = new Map<TaskKey, Placed>();
  readonly #dayOf: DayOf;
  readonly #clashes: Clash[] = [];
  readonly #workAt: ReadonlyMap<string, readonly TaskKey[]>;
  readonly #load: WeekLoad;
  readonly #counted = new Map<TaskKey, { day: Day; jobId: string }>();
  #company: ReadonlyMap<TaskKey, readonly Day[]> = new Map();

  /**
   * @param drafts in the order of their keys
   * @param placing with only the pins that hold: those of today and later
   */
  constructor(drafts: readonly TaskDraft[], placing: Placing) {
    this.#placing = placing;
    this.#load = new WeekLoad(placing.done, placing);
    this.#drafts = new Map(drafts.map((draft) => [draft.key, draft]));
    this.#dayOf = dayOfTasks(placing.done, this.#placed);
    this.#workAt = workByPlace(drafts);
    const live = drafts.filter((draft) => !this.#hasLapsed(draft));
    this.#windows = orderedWindows(live, ({ key, window }) => daysLeft(window, placing.pins[key], placing));
  }

  /**
   * Puts every draft on its day, all it waits for before it. Late work looks for another day once the rest has its own,
   * what must be done soonest first, so that what can wait finds its week full; checks come when work has its days.
   */
  putAll(steady: ReadonlyMap<TaskKey, SteadyPlace>): void {
    this.#company = heldCompany(this.#drafts, steady, this.#placing.held);
    this.#expect(steady);
    const order = new PlacingOrder(steady, this.#drafts, this.#placing.today);
    for (let key = order.next(); key !== undefined; key = order.next()) {
      const place = steady.get(key);
      if (place !== undefined) this.#put(key, place);
    }
  }

  /** Counts the work whose steady day is still to come, before any that is late looks for another. */
  #expect(steady: ReadonlyMap<TaskKey, SteadyPlace>): void {
    for (const [key, { day, ridesWith }] of steady) {
      const draft = this.#drafts.get(key);
      if (draft === undefined || day < this.#placing.today) continue;
      const host = ridesWith === undefined ? undefined : this.#drafts.get(ridesWith);
      const heldTo = host === undefined ? this.#placing.held?.[key] : this.#placing.held?.[host.key];
      this.#count(draft, heldTo ?? day, host);
    }
  }

  /** The Mondays of weeks that hold more than they give. */
  overfullWeeks(): Day[] {
    return this.#load.overfullWeeks();
  }

  result(): { placed: Placed[]; clashes: Clash[] } {
    const clashes = this.#clashes.sort((a, b) => (a.key < b.key ? -1 : 1));
    return { placed: [...this.#placed.values()], clashes };
  }

  #put(key: TaskKey, steady: SteadyPlace): void {
    const draft = this.#drafts.get(key);
    if (draft === undefined) return;
    const waits = waitsOf({ after: draft.after.filter(({ yields }) => !yields) }, this.#dayOf);
    const pin = this.#placing.pins[key];
    if (pin !== undefined) this.#putPinned(draft, pin, waits);
    else if (this.#hasLapsed(draft)) this.#putLapsed(draft, waits);
    else this.#putOpen(draft, steady, waits);
  }

  #hasLapsed({ key, window }: TaskDraft): boolean {
    return this.#placing.pins[key] === undefined && window.latest < this.#placing.today;
  }

  #putPinned(draft: TaskDraft, day: Day, waits: readonly Day[]): void {
    const { earliest, latest } = draft.window;
    const warnings = [
      ...(day < earliest || day > latest
        ? [`Pinned outside its window, which runs from ⟦${earliest}⟧ to ⟦${latest}⟧.`]
        : []),
      ...(isAway(day, this.#placing.away) ? [`Pinned to ⟦${day}⟧, when nobody is at home.`] : []),
    ];
    const pinWarning = warnings.length === 0 ? {} : { pinWarning: warnings.join(' ') };
    this.#placed.set(draft.key, { draft, day, state: 'open', pinned: true, ...pinWarning });
    const from = latestOf(day, ...waits);
    if (from > day) this.#clash(draft, `It is pinned to ⟦${day}⟧, but what it waits for holds it up until ⟦${from}⟧.`);
  }

  /** Puts a task whose window has closed where it can still be seen; what is long lost is let go. */
  #putLapsed(draft: TaskDraft, waits: readonly Day[]): void {
    const { today } = this.#placing;
    const { latest } = draft.window;
    const lapsed = { draft, state: 'lapsed' as const, pinned: false };
    if (draft.ifMissed === 'still do') {
      if (today <= lastDayInSight(draft))
        this.#placed.set(draft.key, { ...lapsed, day: this.#lateDay(draft, latestOf(today, ...waits)) });
    } else if (daysBetween(latest, today) <= NAMED_LOST_DAYS) this.#placed.set(draft.key, { ...lapsed, day: latest });
  }

  /** The next work day from a day on, for what is done late or not at all; none on which it would be let go by then. */
  #lateDay(draft: TaskDraft, from: Day): Day {
    const room = { draft, from, to: latestOf(from, lastDayInSight(draft)), preferred: from };
    return this.#held(room) ?? this.#bestDay(draft, room);
  }

  /** The day a draft is held to, where its room still allows it. */
  #held(room: Room): Day | undefined {
    const day = keptIn(room, this.#placing.held?.[room.draft.key], this.#placing);
    if (day !== undefined) this.#count(room.draft, day);
    return day;
  }

  #bestDay(draft: TaskDraft, span: Span & { preferred: Day }): Day {
    this.#uncount(draft);
    const day = bestDay(span, this.#placing, (at) => this.#load.isFullFor(at, [draft]));
    this.#count(draft, day);
    return day;
  }

  /** Counts a draft on a day, alone or with the work it rides with, and no longer where it was counted before. */
  #count(draft: TaskDraft, day: Day, host?: TaskDraft): void {
    this.#uncount(draft);
    const jobId = (host ?? draft).job.id;
    this.#load.add(day, draft, jobId);
    this.#counted.set(draft.key, { day, jobId });
  }

  #uncount(draft: TaskDraft): void {
    const { day, jobId } = this.#counted.get(draft.key) ?? {};
    if (day !== undefined) this.#load.remove(day, draft, jobId);
    this.#counted.delete(draft.key);
  }

  #putOpen(draft: TaskDraft, steady: SteadyPlace, waits: readonly Day[]): void {
    const ordered = closedAfter(draft, this.#windows.get(draft.key) ?? draft.window, this.#dayOf);
    const open = { draft: this.#closed(draft), state: 'open' as const, pinned: false };
    const room = this.#roomYielding(draft, ordered, waits) ?? roomOf(draft, ordered, waits);
    if (room === undefined) {
      const from = latestOf(ordered.earliest, ...waits);
      this.#clash(draft, `It cannot be done before ⟦${from}⟧, and its window closes on ⟦${draft.window.latest}⟧.`);
      this.#placed.set(draft.key, { ...open, day: draft.ifMissed === 'still do' ? this.#lateDay(draft, from) : from });
    } else if (draft.weight === 'check') this.#placed.set(draft.key, { ...open, ...this.#checkPlace(room, steady) });
    else this.#placed.set(draft.key, { ...open, day: this.#dayIn(room, steady) });
  }

  /**
   * The room after everything a draft waits for. Where only what yields would close it, that is told, and there is none:
   * the draft then keeps its own window.
   */
  #roomYielding(draft: TaskDraft, ordered: OrderedWindow, waits: readonly Day[]): Room | undefined {
    const yielding = waitsOf({ after: draft.after.filter(({ yields }) => yields) }, this.#dayOf);
    if (yielding.length === 0) return undefined;
    const room = roomOf(draft, ordered, [...waits, ...yielding]);
    if (room === undefined && roomOf(draft, ordered, waits) !== undefined) {
      const [from] = [...yielding].sort().reverse();
      const what = `It should wait until ⟦${from}⟧, and its window closes on ⟦${draft.window.latest}⟧.`;
      this.#clashes.push({ key: draft.key, title: draft.title, what, orderYields: true });
    }
    return room;
  }

  /** A draft with the window it is told by: closed after the day of what it waits for, where it may not come much later. */
  #closed(draft: TaskDraft): TaskDraft {
    const { earliest, preferred } = draft.window;
    const latest = latestOf(earliest, closedAfter(draft, draft.window, this.#dayOf).latest);
    if (latest === draft.window.latest) return draft;
    return { ...draft, window: { earliest, preferred: earliestOf(preferred, latest), latest } };
  }

  /** The day held to, else the steady day while it can still be kept, else the best day left. */
  #dayIn(room: Room, { day }: SteadyPlace): Day {
    const held = this.#held(room);
    if (held !== undefined) return held;
    if (day < room.from || day > room.to) return this.#bestDay(room.draft, room);
    return dayWithCompany(room, day, this.#company.get(room.draft.key) ?? [], this.#placing);
  }

  /**
   * A check follows the work it rides with, else keeps its own day; late, it looks for the next visit. One held to a day
   * stays there, unless it was to ride with work that has left that day.
   */
  #checkPlace(room: Room, steady: SteadyPlace): SteadyPlace {
    const { held = {} } = this.#placing;
    const visits = this.#visits(room.draft);
    const host = visits.find(({ key }) => key === steady.ridesWith);
    const own = keptIn(room, held[room.draft.key], this.#placing);
    const stays = own !== undefined && !(host !== undefined && host.day !== own && held[host.key] === own);
    if (!stays) {
      if (host !== undefined && host.day >= room.from && host.day <= room.to) return riding(host);
      const next = steady.day < room.from ? nearestVisit(room, visits, this.#placing) : undefined;
      if (next !== undefined) return riding(next);
    }
    const day = stays ? own : this.#dayIn(room, steady);
    const there = visits.filter((visit) => visit.day === day);
    const company = there.find(({ key }) => key === host?.key) ?? there[0];
    return company === undefined ? { day } : riding(company);
  }

  #visits(check: TaskDraft): Visit[] {
    return (this.#workAt.get(placeOf(check)) ?? []).flatMap((key) => {
      const work = this.#placed.get(key);
      return work?.state === 'open' ? [{ key, day: work.day }] : [];
    });
  }

  #clash({ key, title }: TaskDraft, what: string): void {
    this.#clashes.push({ key, title, what });
  }
}

function riding({ key, day }: Visit): SteadyPlace {
  return { day, ridesWith: key };
}
