/**
 * Which turn of a pile comes next: those it had are counted, and those that were skipped fall out one by one.
 */
import type { Garden, Pile } from '../../garden/garden.ts';
import type { Day } from '../../measures/days.ts';
import type { TaskKey } from '../draft.ts';
import { lastMoved } from './pile-life.ts';

/** A turn of a pile that was skipped since it was last moved. */
export interface SkippedTurn {
  count: number;
  on: Day;
  /** The day the turn before it was skipped on; absent where that one was made. */
  passed?: Day;
}

/** The name of a turn, counted from one. */
export function turnKey({ id }: Pile, count: number): TaskKey {
  return `pile-turn/pile:${id}/turn:${count}`;
}

/**
 * The count of the next turn, the day the one before it was skipped on, and those skipped since the pile was last moved.
 * A count that was settled is never used again: a turn made after a skipped one bears a higher number than there are turns.
 */
export function turnToCome(
  { done, skipped }: Pick<Garden, 'done' | 'skipped'>,
  pile: Pile,
): { count: number; passed?: Day; skips: readonly SkippedTurn[] } {
  const made = new Set(done.map(({ key }) => key));
  const skips: SkippedTurn[] = [];
  let count = pile.turns.length + 1;
  for (; ; count += 1) {
    const [key, before] = [turnKey(pile, count), skips.at(-1)?.on];
    const on = made.has(key) ? undefined : skipped[key];
    if (on !== undefined && on < lastMoved(pile)) continue;
    if (on !== undefined) skips.push({ count, on, ...(before === undefined ? {} : { passed: before }) });
    else if (!made.has(key)) break;
  }
  const passed = skips.at(-1)?.on;
  return { count, ...(passed === undefined ? {} : { passed }), skips };
}
