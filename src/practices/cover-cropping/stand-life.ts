/**
 * What is known of a stand's life: the days it holds its bed, its work, and the ground it leaves bare.
 */
import type { Day } from '../../measures/days.ts';
import type { Reason, TaskDraft, TaskKey } from '../draft.ts';
import type { ThinStand, Uncovered } from '../practice.ts';
import type { SowWindow } from './sow-window.ts';
import type { StandInBed } from './stand.ts';

/** A stand with its tasks and the days it holds its bed. */
export interface StandPlan {
  at: StandInBed;
  drafts: readonly TaskDraft[];
  /** The first day it may be in the ground; absent for a stand that was never sown. */
  from?: Day;
  /** The last day it is expected to hold the bed; absent while it has no end. */
  ends?: Day;
  /** Whether it is ended by a cut, and so leaves residue to settle or to regrow. */
  cut: boolean;
  /** The task that has to be done before it is over. */
  endKey?: TaskKey;
  /** The first day another cover may be reckoned with, where what came after its cut says so. */
  free?: Day;
  /** Its sowing, while that is still to be done. */
  sow?: SowWindow;
  /** The day that sowing is reckoned with: the one it is pinned to, else the best. */
  sowOn?: Day;
  /** The bare bed it leaves, where it is not sown after all. */
  uncovered?: Uncovered;
  /** The bare ground in it, where it came up thin and is not sown again. */
  thin?: ThinStand;
  /** Why it left the ground bare, where next to nothing came up. */
  failed?: Reason;
}
