/**
 * Weeks that want more than they give, eased: work that can wait or be done before goes to a week with room, where need
 * be by a chain of moves. Nothing leaves its window or its order, and no day that suits less well is taken.
 */
import { addDays, type Day, daysBetween, earliestOf, latestOf, weekStart } from '../measures/days.ts';
import type { TaskDraft, TaskKey } from '../practices/draft.ts';
import { chosenDay, LOOK_AHEAD_WEEKS } from './day-choice.ts';
import { closedAfter, type DayOf, roomOf, waitsOf } from './room.ts';
import type { SteadyInput, SteadyPlace } from './steady-place.ts';
import type { WeekLoad } from './week-load.ts';
import type { OrderedWindow } from './windows.ts';
import { type Span, unfitness } from './work-days.ts';

/** Moves tried for one plan at most, so that a garden far over its hours is planned in time. House default. */
const MOVES_TRIED = 5000;

/** Moves in a chain that may come through a week more than once, such as two that change places. House default. */
const SHORT_CHAIN = 3;

/** What is levelled: places are changed in place, and the load with them. */
export interface Table {
  input: SteadyInput;
  drafts: ReadonlyMap<TaskKey, TaskDraft>;
  places: Map<TaskKey, SteadyPlace>;
  windows: ReadonlyMap<TaskKey, OrderedWindow>;
  dayOf: DayOf;
  load: WeekLoad;
}

/** Work moved as one: an entry's tasks, or one of them. */
interface Unit extends Span {
  work: readonly TaskDraft[];
  day: Day;
  preferred: Day;
}

interface Move {
  unit: Unit;
  day: Day;
}

/** Eases the weeks that are over, the earliest first. */
export function levelWeeks(table: Table): void {
  new Levelling(table).run();
}

class Levelling {
  readonly #table: Table;
  readonly #followers: ReadonlyMap<TaskKey, readonly Follower[]>;
  readonly #riders = new Map<TaskKey, TaskDraft[]>();
  /** Weeks out of which nothing more can go as things stand. */
  #stuck = new Set<Day>();
  #movesLeft = MOVES_TRIED;
  /** Every task's turn, and the tasks of each week. */
  readonly #turns: ReadonlyMap<TaskKey, number>;
  readonly #weeks = new Map<Day, Set<TaskKey>>();

  constructor(table: Table) {
    this.#table = table;
    this.#followers = followersOf(table.drafts);
    this.#turns = new Map([...table.places.keys()].map((key, turn) => [key, turn]));
    for (const [key, { day, ridesWith }] of table.places) {
      this.#inWeek(day).add(key);
      const rider = table.drafts.get(key);
      if (ridesWith === undefined || rider === undefined) continue;
      this.#riders.set(ridesWith, [...(this.#riders.get(ridesWith) ?? []), rider]);
    }
  }

  run(): void {
    const { load } = this.#table;
    let before = Number.POSITIVE_INFINITY;
    while (load.overMinutes < before) {
      before = load.overMinutes;
      for (const monday of load.overfullWeeks()) {
        while (load.overIn(monday) > 0 && this.#easesAtAll(monday)) this.#stuck = new Set();
      }
    }
  }

  /** By a chain as long as it takes, through each week once; else by a short one that may come through a week again. */
  #easesAtAll(monday: Day): boolean {
    const { overMinutes } = this.#table.load;
    return this.#eases(monday, overMinutes) || this.#easesShort(monday, overMinutes, SHORT_CHAIN);
  }

  /**
   * Moves one unit out of a week so that all weeks together are less over than they were, moving on what then stands in
   * its way. What closes last goes first.
   */
  #eases(monday: Day, overMinutes: number): boolean {
    this.#stuck.add(monday);
    const moves = this.#moves(monday);
    return (
      moves.some((move) => this.#does(move, overMinutes)) ||
      moves.some(
        (move) =>
          !this.#stuck.has(weekStart(move.day)) &&
          this.#does(move, overMinutes, () => this.#eases(weekStart(move.day), overMinutes)),
      )
    );
  }

  #easesShort(monday: Day, overMinutes: number, length: number): boolean {
    return this.#moves(monday).some((move) =>
      this.#does(move, overMinutes, () => length > 1 && this.#easesShort(weekStart(move.day), overMinutes, length - 1)),
    );
  }

  /** Makes a move, and takes it back where neither it nor what follows leaves less over than there was. */
  #does({ unit, day }: Move, overMinutes: number, follows: () => boolean = () => false): boolean {
    if (this.#movesLeft <= 0) return false;
    this.#movesLeft -= 1;
    const along = this.#riding(unit.work);
    this.#move(unit.work, unit.day, day);
    if (this.#table.load.overMinutes < overMinutes || follows()) return true;
    this.#move(unit.work, day, unit.day);
    for (const { rider, host, place } of along) this.#seat(rider, host, place);
    return false;
  }

  #moves(monday: Day): Move[] {
    return this.#units(monday).flatMap((unit) => this.#targets(unit).map((day) => ({ unit, day })));
  }

  /** What can leave a week: its entries whole, then each of their tasks by itself; in both what closes last first. */
  #units(monday: Day): Unit[] {
    const lots = new Map<string, TaskDraft[]>();
    for (const key of this.#keysIn(monday)) {
      const draft = this.#table.drafts.get(key);
      const { day, ridesWith } = this.#table.places.get(key) ?? {};
      if (draft === undefined || day === undefined || ridesWith !== undefined) continue;
      const name = `${day} ${draft.job.id}`;
      lots.set(name, [...(lots.get(name) ?? []), draft]);
    }
    const whole = [...lots.values()];
    const single = whole.filter(({ length }) => length > 1).flatMap((lot) => lot.map((draft) => [draft]));
    return [whole, single].flatMap((some) => some.flatMap((work) => this.#unit(work) ?? []).sort(byClosing));
  }

  /** The days a unit may go to by its windows and by what stands before and after it. Nothing where it must stay. */
  #unit(work: readonly TaskDraft[]): Unit | undefined {
    const [first] = work;
    const day = first && this.#table.places.get(first.key)?.day;
    if (first === undefined || day === undefined) return undefined;
    let unit: Unit = { work, day, from: '', to: '9999-12-31', preferred: first.window.preferred };
    for (const draft of work) {
      const { from, to } = this.#span(draft) ?? { from: day, to: day };
      const preferred = latestOf(unit.preferred, draft.window.preferred);
      unit = { ...unit, from: latestOf(unit.from, from), to: earliestOf(unit.to, to), preferred };
    }
    return unit.from < unit.to ? unit : undefined;
  }

  #span(draft: TaskDraft): Span | undefined {
    const { places, windows, dayOf, input } = this.#table;
    const day = places.get(draft.key)?.day ?? '';
    if (input.pins[draft.key] !== undefined) return undefined;
    const ordered = closedAfter(draft, windows.get(draft.key) ?? draft.window, dayOf);
    const room = roomOf(draft, ordered, waitsOf(draft, dayOf));
    if (room === undefined) return undefined;
    let from = latestOf(room.from, addDays(draft.window.preferred, -7 * LOOK_AHEAD_WEEKS));
    let { to } = room;
    for (const { key, minDays, maxDays } of this.#followers.get(draft.key) ?? []) {
      const next = dayOf(key);
      if (next === undefined) continue;
      to = earliestOf(to, addDays(next, -minDays));
      if (maxDays !== undefined) from = latestOf(from, addDays(next, -maxDays));
    }
    return day >= from && day <= to ? { from, to } : undefined;
  }

  /** A day in each other week that a unit may go to and that suits no less; weeks with room for an entry first. */
  #targets({ work, day, from, to, preferred }: Unit): Day[] {
    const { input, load } = this.#table;
    const days: Day[] = [];
    for (let monday = weekStart(from); monday <= to; monday = addDays(monday, 7)) {
      if (monday === weekStart(day)) continue;
      const span = { from: latestOf(from, monday), to: earliestOf(to, addDays(monday, 6)), preferred };
      const there = chosenDay(span, work, load, input);
      const unfit = unfitness(there, input);
      if (unfit < 2 && unfit <= unfitness(day, input)) days.push(there);
    }
    const apart = (each: Day): number => Math.abs(daysBetween(each, preferred));
    const crowded = (each: Day): number => Number(load.isCrowdedFor(each, work));
    return days.sort((a, b) => crowded(a) - crowded(b) || apart(a) - apart(b));
  }

  #move(work: readonly TaskDraft[], from: Day, to: Day): void {
    const { load } = this.#table;
    for (const draft of work) {
      load.remove(from, draft);
      load.add(to, draft);
      this.#keep(draft.key, { day: to });
      for (const rider of this.#riders.get(draft.key) ?? []) this.#moveRider(rider, draft, to);
    }
  }

  /** The checks that ride with work, or did, and their places as they are. */
  #riding(work: readonly TaskDraft[]): { rider: TaskDraft; host: TaskDraft; place: SteadyPlace }[] {
    return work.flatMap((host) =>
      (this.#riders.get(host.key) ?? []).flatMap((rider) => {
        const place = this.#table.places.get(rider.key);
        return place === undefined ? [] : [{ rider, host, place }];
      }),
    );
  }

  /** A check goes along with its work where it may, and else is left on the day it had. */
  #moveRider(rider: TaskDraft, host: TaskDraft, to: Day): void {
    const { day = to } = this.#table.places.get(rider.key) ?? {};
    const span = this.#span(rider);
    const joins = span !== undefined && to >= span.from && to <= span.to;
    this.#seat(rider, host, joins ? { day: to, ridesWith: host.key } : { day });
  }

  /** Puts a check in a place, with the work it rides with or by itself, and takes it from where it was. */
  #seat(rider: TaskDraft, host: TaskDraft, place: SteadyPlace): void {
    const { places, load } = this.#table;
    const jobIn = ({ ridesWith }: SteadyPlace): string | undefined =>
      ridesWith === undefined ? undefined : host.job.id;
    const was = places.get(rider.key);
    if (was !== undefined) load.remove(was.day, rider, jobIn(was));
    load.add(place.day, rider, jobIn(place));
    this.#keep(rider.key, place);
  }

  #keep(key: TaskKey, place: SteadyPlace): void {
    const { places } = this.#table;
    const was = places.get(key);
    if (was !== undefined) this.#inWeek(was.day).delete(key);
    places.set(key, place);
    this.#inWeek(place.day).add(key);
  }

  #inWeek(day: Day): Set<TaskKey> {
    const monday = weekStart(day);
    const known = this.#weeks.get(monday) ?? new Set<TaskKey>();
    this.#weeks.set(monday, known);
    return known;
  }

  /** The tasks of a week in their turn. */
  #keysIn(monday: Day): TaskKey[] {
    const turn = (key: TaskKey): number => this.#turns.get(key) ?? 0;
    return [...this.#inWeek(monday)].sort((a, b) => turn(a) - turn(b));
  }
}

/** A task that waits for another. */
type Follower = TaskDraft['after'][number];

/** For every task those that wait for it, with their own keys. */
function followersOf(drafts: ReadonlyMap<TaskKey, TaskDraft>): Map<TaskKey, Follower[]> {
  const followers = new Map<TaskKey, Follower[]>();
  for (const draft of drafts.values()) {
    for (const wait of draft.after) {
      followers.set(wait.key, [...(followers.get(wait.key) ?? []), { ...wait, key: draft.key }]);
    }
  }
  return followers;
}

function byClosing(a: Unit, b: Unit): number {
  if (a.to !== b.to) return a.to > b.to ? -1 : 1;
  return (a.work[0]?.key ?? '') < (b.work[0]?.key ?? '') ? -1 : 1;
}
