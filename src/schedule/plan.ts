/**
 * The plan: every task on its day, gathered into calendar entries, with what changed since the plan before.
 */

import type { PracticeName } from '../garden/practice-names.ts';
import type { Day, Instant } from '../measures/days.ts';
import type { Reason, TaskDraft, TaskKey, Window } from '../practices/draft.ts';
import type { Hour } from './hour.ts';
import type { Unfitness } from './work-days.ts';

/**
 * Where a task stands. `lapsed`: its window closed with nobody saying it was done; its `ifMissed` says what happens
 * now.
 */
export type TaskState = 'open' | 'done' | 'skipped' | 'lapsed';

/** A draft on its day. */
export interface PlannedTask extends TaskDraft {
  day: Day;
  state: TaskState;
  pinned: boolean;
  /** Set when a pinned day lies outside the window: kept, and said. */
  pinWarning?: string;
  /** The member of the household it was given to; absent while it is nobody's in particular. */
  assignedTo?: string;
  /** The calendar entry it rides in. */
  lotId: string;
  /** Revision of that entry: 0 when first published, raised when anything a calendar shows of it changes. */
  sequence: number;
  /** When that entry last changed. */
  changedAt: Instant;
}

/**
 * One line in a calendar: the same job on one day, on one bed or several, with the checks that ride along. `lotId` is
 * the base of its UID and outlives every move.
 */
export interface Entry {
  lotId: string;
  day: Day;
  /** The hour its tasks share, where they have one. */
  at?: Hour;
  title: string;
  practice: PracticeName;
  kind: string;
  state: TaskState;
  /** Keys of its tasks, work first, then the checks riding along; each in bed order. */
  keys: readonly TaskKey[];
  effortMinutes: number;
  sequence: number;
  createdAt: Instant;
  changedAt: Instant;
  /** The content the sequence stands for; equal content means an unchanged entry. */
  content: string;
}

/**
 * A calendar entry that has left the plan, remembered so that it comes back as itself and with a later revision, never an
 * older one. An undo brings entries back.
 */
export interface RetiredLot {
  lotId: string;
  kind: string;
  keys: readonly TaskKey[];
  sequence: number;
  createdAt: Instant;
  /** The day it was first missing. */
  on: Day;
}

/** A day that calendar entries have moved away from, or left the plan on: see left-days.ts. */
export interface LeftDay {
  day: Day;
  /** Revisions of the day so far that its present entries do not count. */
  revisions: number;
  /** When the last entry left it. */
  at: Instant;
}

/** A day published for a task, and held to from the next day on: see held.ts. */
export interface HeldDay {
  key: TaskKey;
  day: Day;
  /** The day on which it was published. */
  since: Day;
  /** The day that suited the task best then. */
  given: Day;
  /** The day on which the task was put elsewhere; absent while it is still held to. */
  left?: Day;
  /** The task's window, as the first plan of today found it. */
  window: Window;
  /** How ill the day suited the household when the plan was last made. */
  unfitness: Unfitness;
}

/** What a new plan did to a task of the plan before. */
export interface Change {
  key: TaskKey;
  title: string;
  kind: 'added' | 'moved' | 'reworded' | 'dropped';
  from?: Day;
  to?: Day;
  because: readonly Reason[];
  at: Instant;
  /** The garden's own day of that moment; absent in plans from before it was kept. */
  on?: Day;
}

/** Work that could not keep both its window and its order, named instead of hidden. */
export interface Clash {
  key: TaskKey;
  title: string;
  what: string;
  /** Set where the task keeps its window and the order of the work gives way. */
  orderYields?: true;
}

/** A week that wants more than the household gives, though all that can move has moved. */
export interface Overload {
  monday: Day;
  /** Minutes of its entries, done and still to do, and minutes kept for the garden in it; in the week of today from today on. */
  wantedMinutes: number;
  givenMinutes: number;
  /** Work still to do that has a day at home in a later week, and that which has none or is pinned. */
  canWait: readonly TaskKey[];
  cannotWait: readonly TaskKey[];
  /** The last day at home of what can wait, by task. */
  until: Readonly<Record<TaskKey, Day>>;
}

/** The year's plan of one garden: a function of its facts, its climate, what was last published and today. */
export interface Plan {
  gardenId: string;
  today: Day;
  /** Version of the facts it was made from: ledger and weather together. */
  factsVersion: number;
  /** When its entries last changed in any way. */
  revisedAt: Instant;
  tasks: readonly PlannedTask[];
  entries: readonly Entry[];
  /** Entries that left in the last {@link RETIRED_KEPT_DAYS} days; absent when there are none. */
  retired?: readonly RetiredLot[];
  /** Days that entries have left, up to {@link DONE_KEPT_DAYS} days back, by day; absent when there are none. */
  left?: readonly LeftDay[];
  /** Days published and held to, and those left lately that are still to come; absent when there are none. */
  held?: readonly HeldDay[];
  /** Changes of the last {@link CHANGES_KEPT_DAYS} days, newest first. */
  changes: readonly Change[];
  clashes: readonly Clash[];
  /** Weeks of the next eight that want more than they give; absent when there are none. */
  overloads?: readonly Overload[];
}

/** Days a change stays in the plan for "what moved and why". House default: two weekly lists. */
export const CHANGES_KEPT_DAYS = 14;

/** Days an entry that left is remembered. House default: as long as a calendar may still hold it, the feed's year. */
export const RETIRED_KEPT_DAYS = 366;

/** Days for which done work stays in the plan. House default: the span a household still talks about. */
export const DONE_KEPT_DAYS = 60;
