/**
 * What a practice hands on: a task that is wanted, with the window it may fall in and why, before anyone has put it
 * on a day.
 */
import type { Confidence, Odds } from '../climate/odds.ts';
import type { Effect } from '../garden/effects.ts';
import type { Subject } from '../garden/garden.ts';
import type { PracticeName } from '../garden/practice-names.ts';
import type { SourceId } from '../handbook/shapes/row.ts';
import type { Day, Instant } from '../measures/days.ts';
import type { Quantity } from '../measures/quantity.ts';

/** What a task *is*, never when: "cover-cut/stand:s-17". Survives every re-planning. */
export type TaskKey = string;

/** The days a task may fall on, both ends included: earliest ≤ preferred ≤ latest. */
export interface Window {
  earliest: Day;
  preferred: Day;
  latest: Day;
}

/** Id of a rule; the practice that uses it holds its sentence. */
export type RuleId = string;

/** Where a reason's figure comes from. */
export type ReasonSource =
  | SourceId
  | 'common practice'
  | 'from memory'
  | 'house default'
  | "the garden's own plan"
  | "the garden's climate";

/**
 * Why a date is what it is: the rule, what it saw and the limit it held that against. Data, never prose. Keys of
 * `saw` end in their unit where they have one (`tempC`, `depthMm`, `areaM2`, `litres`, `weeks`, `percent`, `days`).
 */
export interface Reason {
  rule: RuleId;
  saw: Readonly<Record<string, number | Day | string>>;
  limit?: number | Day;
  source: ReasonSource;
}

/** Something to have at hand. */
export interface Supply {
  what: string;
  amount?: Quantity;
  /** The same amount in things a gardener counts: "3 barrow loads". */
  also?: string;
}

/** What must be so on the day. */
export type Condition = 'soil-fit' | 'dry-day' | 'above-freezing' | 'before-sunset' | 'calm-day';

/** A task before it has a day. Texts may hold marked amounts (see measures/quantity). */
export interface TaskDraft {
  key: TaskKey;
  practice: PracticeName;
  kind: string;
  /** What makes two drafts the same job, and the job's name without its subject: "Clear and leave the roots". */
  job: { id: string; title: string };
  subject: Subject;
  /** `check` rides inside that day's work on the same subject where there is some. */
  weight: 'work' | 'deadline' | 'check';
  title: string;
  steps: readonly string[];
  /** What can hurt whoever does it stands first. */
  cautions: readonly string[];
  supplies: readonly Supply[];
  window: Window;
  /** The hour of a task that has one, such as covering before sunset; its window is then that one day. */
  at?: { from: Instant; minutes: number };
  ifMissed: 'still do' | 'replace' | 'drop';
  /** What is lost or what to do instead once the window has closed, in words. */
  missedNote: string;
  /**
   * What to ask of somebody who does not know the garden where the work cannot wait for the household to come home;
   * absent where it can.
   */
  minder?: string;
  effortMinutes: number;
  /** The part of it that is spent once, however many are done together: fetching tools, one order for all. */
  onceMinutes?: number;
  needs: readonly Condition[];
  /**
   * What it waits for. With `maxDays` it comes no later than so many days after that, however wide its window. Where
   * `yields` is set the order gives way before the window does: bloom waits for no dry soil.
   */
  after: readonly { key: TaskKey; minDays: number; maxDays?: number; yields?: true }[];
  /** How it is done all the same where an order that yields was not kept. */
  yieldNote?: string;
  confidence: Confidence;
  odds?: Odds;
  /** What `odds` are of, in words that begin small: "the last spring freeze of ⟦0 tempC⟧". There wherever they are. */
  oddsOf?: string;
  reasons: readonly Reason[];
  /** What marking it done makes true. */
  makes: readonly Effect[];
}
