/**
 * What a steady day is, and what it hangs on: see steady-days.ts.
 */
import type { DoneMark } from '../garden/garden.ts';
import type { Day } from '../measures/days.ts';
import type { TaskKey } from '../practices/draft.ts';
import type { Hours } from './week-hours.ts';

/** A task's day, and the work a check rides with on it. */
export interface SteadyPlace {
  day: Day;
  ridesWith?: TaskKey;
}

/** What steady days hang on. */
export interface SteadyInput extends Hours {
  /** Pinned days, past ones too: what a passed pin held apart stays apart. */
  pins: Readonly<Record<TaskKey, Day>>;
  done: readonly DoneMark[];
}
