/**
 * Setting a garden up: the draft of it, what it comes to so far, and the garden it becomes.
 */
import type { Climate } from '../../climate/climate.ts';
import type { Garden } from '../../garden/garden.ts';
import type { LedgerEntry } from '../../garden/ledger.ts';
import type { Problem } from '../../garden/problem.ts';
import type { SetUpDraft, SetUpStep } from '../../garden/set-up-draft.ts';
import type { Station } from '../../handbook/stations.ts';
import type { Day } from '../../measures/days.ts';
import type { Plan } from '../../schedule/plan.ts';
import type { KeptDraft, ListedDraft } from '../../store/drafts.ts';

/** A garden that is not there, with a plan made on trial. */
export interface TrialGarden {
  garden: Garden;
  climate: Climate;
  plan: Plan;
  ledger: readonly LedgerEntry[];
}

/** What a draft comes to as it stands. */
export interface DraftOutlook {
  /** The garden's day, in its own zone where that is known. */
  today: Day;
  /** The climate; absent while place or climate are not told, or where none can be worked out. */
  climate?: Climate;
  /** The garden with a plan made on trial; absent while something it cannot be made without is missing. */
  trial?: TrialGarden;
  /** Steps a garden cannot be made without and that are still to be told. */
  missing: readonly SetUpStep[];
  /** What of it is hardly meant, where there is a trial; texts may hold marked amounts and days. */
  doubts?: readonly Problem[];
  /** Why no climate, or no plan, can be worked out. */
  problems: readonly Problem[];
}

/** The garden a draft became, and its first feed. */
export interface MadeGarden {
  gardenId: string;
  feedId: string;
}

/** What a steward does with drafts. */
export interface SetUpDoings {
  /** Gardens being set up, the one last changed first; one that cannot be read is among them, without what was told. */
  drafts(): Promise<ListedDraft[]>;
  /** One of them, also one that has become a garden. */
  draft(id: string): Promise<KeptDraft | undefined>;
  /** Begins one. */
  beginDraft(): Promise<KeptDraft>;
  /** Keeps what was told; nothing where there is no such draft, or it has become a garden. */
  changeDraft(id: string, change: (draft: SetUpDraft) => SetUpDraft): Promise<KeptDraft | undefined>;
  /** Throws one away; false where there is none that has not become a garden. */
  throwAwayDraft(id: string): Promise<boolean>;
  /** What it comes to as it stands; nothing is kept. */
  draftOutlook(draft: SetUpDraft): Promise<DraftOutlook>;
  /**
   * Makes the garden, with one feed. Asked twice it makes one, and hands out the same again.
   *
   * @throws {InputRefused} where something is missing or cannot be used; nothing is kept
   */
  makeGarden(draftId: string, by: string): Promise<MadeGarden>;
  /** The built-in table of weather stations. */
  stations(): Promise<readonly Station[]>;
}
