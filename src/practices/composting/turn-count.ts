/**
 * Which turn of a pile comes next: those it had are counted, and those that were skipped fall out one by one.
 */
import type { Garden, Pile } from '../../garden/garden.ts';
import { addDays, type Day, latestOf } from '../../measures/days.ts';
import type { TaskKey } from '../draft.ts';
import { lastMoved } from './pile-life.ts';
import { CALENDAR_DAYS, type PassedTurn } from './turn.ts';

/** A turn of a pile that was skipped since it was last moved. */
export interface SkippedTurn {
  count: number;
  on: Day;
  /** The turn before it, where that was skipped too. */
  passed?: PassedTurn;
}

/** The name of a turn, counted from one. */
export function turnKey({ id }: Pile, count: number): TaskKey {
  return `pile-turn/pile:${id}/turn:${count}`;
}

/**
 * The count of the next turn, the one before it where that was skipped, and those skipped since the pile was last moved.
 * A count that was settled is never used again: a turn made after a skipped one bears a higher number than there are turns.
 */
export function turnToCome(
  { done, skipped }: Pick<Garden, 'done' | 'skipped'>,
  pile: Pile,
): { count: number; passed?: PassedTurn; skips: readonly SkippedTurn[] } {
  const made = new Set(done.map(({ key }) => key));
  const skips: SkippedTurn[] = [];
  let passed: PassedTurn | undefined;
  let count = pile.turns.length + 1;
  for (; ; count += 1) {
    const key = turnKey(pile, count);
    const on = made.has(key) ? undefined : skipped[key];
    if (on !== undefined && on < lastMoved(pile)) continue;
    if (on !== undefined) {
      skips.push({ count, on, ...(passed === undefined ? {} : { passed }) });
      passed = { on, from: latestOf(on, addDays(passed?.from ?? lastMoved(pile), CALENDAR_DAYS.low)) };
    } else if (!made.has(key)) break;
  }
  return { count, ...(passed === undefined ? {} : { passed }), skips };
}
