/**
 * How many entries a week holds, so that work that can wait is not put into one that is full.
 */
import type { DoneMark } from '../garden/garden.ts';
import { type Day, weekStart } from '../measures/days.ts';

/**
 * Entries a week holds before work that may go elsewhere does: two short of one a day, so that what cannot wait finds
 * room. House default.
 */
export const FULL_WEEK_ENTRIES = 5;

/** The entries of each week: one for every job on every day. */
export class WeekLoad {
  readonly #entries = new Map<Day, Set<string>>();

  /** @param done work done already, which fills the week it was done in */
  constructor(done: readonly DoneMark[]) {
    for (const { on, job } of done) this.add(on, job.id);
  }

  /** Counts a job on a day. */
  add(day: Day, jobId: string): void {
    const week = weekStart(day);
    this.#entries.set(week, (this.#entries.get(week) ?? new Set()).add(entry(day, jobId)));
  }

  /** Whether a job on a day would be one entry too many for its week. */
  isFullFor(day: Day, jobId: string): boolean {
    const held = this.#entries.get(weekStart(day));
    return held !== undefined && held.size >= FULL_WEEK_ENTRIES && !held.has(entry(day, jobId));
  }
}

function entry(day: Day, jobId: string): string {
  return `${day} ${jobId}`;
}
