/**
 * What a practice is: from facts and climate to drafts, in one fixed pass. A practice sees what those before it found
 * and never imports another.
 */
import type { Climate } from '../climate/climate.ts';
import type { Garden } from '../garden/garden.ts';
import type { Day } from '../measures/days.ts';
import type { PracticeName, Reason, RuleId, TaskDraft } from './draft.ts';

/** All a practice may look at. */
export interface PracticeInput {
  garden: Garden;
  climate: Climate;
  today: Day;
  /** The last day worked out: a year and a little from today. */
  until: Day;
}

/** What earlier practices hand to later ones. */
export interface Findings {
  /** First days on which covers are to be sown, by bed: a topdressing goes on before them. */
  coverSowings: readonly { bedId: string; key: string; earliest: Day; latest: Day }[];
  /** Finished compost on hand, and what will be ready when. */
  compostSupply: readonly { pileId: string; litres: number; ready: Day; finished: boolean }[];
}

/** What a practice brings back. */
export interface PracticeResult {
  drafts: readonly TaskDraft[];
  found?: Partial<Findings>;
}

/** Writes one kind of reason as a sentence; may hold marked amounts and days. */
export type Sentence = (reason: Reason) => string;

export interface Practice {
  name: PracticeName;
  work(input: PracticeInput, found: Findings): PracticeResult;
  /** A sentence for every rule the practice gives as a reason. */
  sentences: Readonly<Record<RuleId, Sentence>>;
}
