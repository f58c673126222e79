/**
 * The ledger: facts in the order they were accepted, never changed and never taken out. What stands is the fold of
 * the entries that have not been undone.
 */
import type { Day, Instant } from '../measures/days.ts';
import type { Fact } from './facts.ts';

/** One accepted change: who, when and what. */
export interface LedgerEntry {
  /** 1 for a garden's first entry, then one more each. */
  entry: number;
  recordedAt: Instant;
  /** The garden's own day on which it was recorded. */
  recordedOn: Day;
  by: string;
  fact: Fact;
}
