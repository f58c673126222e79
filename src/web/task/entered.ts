/**
 * What a form of a task came back with, where something was wrong with it.
 */
import type { TaskKey } from '../../practices/draft.ts';
import type { EnteredGiving } from './assigning.ts';

/** What a form came back with. */
export interface Entered {
  on: string;
  /** What was typed as an amount, by the name of its field. */
  amounts: Readonly<Record<string, string>>;
  keys: readonly TaskKey[];
  day: string;
  /** What was chosen of a young stand. */
  covered?: string;
  weedy?: string;
  /** Whom it was to be given to. */
  giving?: EnteredGiving | undefined;
}
