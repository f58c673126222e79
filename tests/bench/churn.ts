/**
 * How much a plan moves while a season goes by: the demo garden planned again every morning and after every evening's
 * marks, through days of the year its record is borrowed from.
 */
import { performance } from 'node:perf_hooks';
import { addDays, type Day } from '../../src/measures/days.ts';
import { HELD_DAYS } from '../../src/schedule/held.ts';
import { livedDemo, type Move, movesIn } from '../demo-data/lived-year.ts';
import { type Cause, causeOf, isReasoned } from '../demo-data/move-cause.ts';

/** Times an entry may move before it counts as restless. */
const RESTLESS_MOVES = 2;

/** A move, with what made it necessary. */
type Caused = Move & { cause: Cause };

/** Prints how many tasks moved a day, how many of them inside the next days and why. */
export function reportChurn(from: Day, days: number): void {
  const startedMs = performance.now();
  const byDay = new Map<Day, Caused[]>();
  let plans = 0;
  for (const replan of livedDemo(from, days)) {
    plans += 1;
    const moves = movesIn(replan).map((move) => ({ ...move, cause: causeOf(move, replan) }));
    byDay.set(replan.today, [...(byDay.get(replan.today) ?? []), ...moves]);
  }
  const moves = [...byDay.values()].flat();
  const drawn = moves.filter(({ late }) => !late);
  const inside = drawn.filter((move) => move.inside);
  const counts = Array.from({ length: days }, (_, n) => onTime(byDay.get(addDays(from, n))).length).sort(
    (a, b) => a - b,
  );
  const at = (share: number): number => counts[Math.floor(share * days)] ?? 0;
  console.log(`The demo garden lived from ${from} for ${days} days, ${plans} plans, each task counted by itself:`);
  console.log(
    `  moves a day: median ${at(0.5)}, 95th percentile ${at(0.95)}, most ${counts.at(-1)}, in all ${drawn.length}`,
  );
  console.log(`  moved because their day had passed without a mark: ${moves.length - drawn.length}`);
  console.log(
    `  moves of what was published for the next ${HELD_DAYS} days: ${inside.length}, told with a reason other than load and company ${inside.filter(isReasoned).length}`,
  );
  console.log(`  their cause, looked up in the two plans: ${tally(inside.map(({ cause }) => cause))}`);
  console.log(`  what is told of them: ${tally(inside.map(whyOf))}`);
  console.log(
    `  later moves: ${drawn.length - inside.length}; why: ${tally(drawn.filter((move) => !move.inside).map(whyOf))}`,
  );
  console.log(`  entries that moved more than twice: ${restless(drawn)}`);
  console.log(`  time: ${Math.round((performance.now() - startedMs) / 1000)} s`);
}

function onTime(moves: readonly Move[] = []): Move[] {
  return moves.filter(({ late }) => !late);
}

function whyOf({ change }: Move): string {
  return change?.because.map(({ rule }) => rule).join(' and ') ?? 'not told';
}

function tally(words: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const word of words) counts.set(word, (counts.get(word) ?? 0) + 1);
  return (
    [...counts]
      .sort(([, a], [, b]) => b - a)
      .map(([word, count]) => `${word} ${count}`)
      .join(', ') || 'none'
  );
}

/** Entries, not tasks: an entry moves once however many beds it has. */
function restless(moves: readonly Move[]): number {
  const days = new Map<string, Set<string>>();
  for (const { before, after } of moves)
    days.set(before.lotId, (days.get(before.lotId) ?? new Set()).add(`${before.day} ${after.day}`));
  return [...days.values()].filter(({ size }) => size > RESTLESS_MOVES).length;
}
