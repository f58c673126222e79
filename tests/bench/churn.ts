/**
 * How much a plan moves while a season goes by: the demo garden planned again every morning and after every evening's
 * marks, through the year its record is borrowed from.
 */
import { performance } from 'node:perf_hooks';
import { addDays, type Day } from '../../src/measures/days.ts';
import { HELD_DAYS } from '../../src/schedule/held.ts';
import { livedDemo, type Move, movesIn } from '../demo-data/lived-year.ts';

const [FROM, DAYS] = ['2027-01-01', 365];
/** Times an entry may move before it counts as restless. */
const RESTLESS_MOVES = 2;

/** Prints how many tasks moved a day, how many of them inside the next days and why. */
export function reportChurn(): void {
  const startedMs = performance.now();
  const byDay = new Map<Day, Move[]>();
  let plans = 0;
  for (const replan of livedDemo(FROM, DAYS)) {
    plans += 1;
    byDay.set(replan.today, [...(byDay.get(replan.today) ?? []), ...movesIn(replan)]);
  }
  const moves = [...byDay.values()].flat();
  const drawn = moves.filter(({ late }) => !late);
  const inside = drawn.filter((move) => move.inside);
  const counts = Array.from({ length: DAYS }, (_, n) => onTime(byDay.get(addDays(FROM, n))).length).sort(
    (a, b) => a - b,
  );
  const at = (share: number): number => counts[Math.floor(share * DAYS)] ?? 0;
  console.log(`The demo garden lived from ${FROM} for ${DAYS} days, ${plans} plans, each task counted by itself:`);
  console.log(
    `  moves a day: median ${at(0.5)}, 95th percentile ${at(0.95)}, most ${counts.at(-1)}, in all ${drawn.length}`,
  );
  console.log(`  moved because their day had passed without a mark: ${moves.length - drawn.length}`);
  console.log(
    `  moves of what was published for the next ${HELD_DAYS} days: ${inside.length}, with a reason ${reasoned(inside)}`,
  );
  console.log(`  why: ${tally(inside.map(whyOf))}`);
  console.log(
    `  later moves: ${drawn.length - inside.length}; why: ${tally(drawn.filter((move) => !move.inside).map(whyOf))}`,
  );
  console.log(`  entries that moved more than twice: ${restless(drawn)}`);
  console.log(`  time: ${Math.round((performance.now() - startedMs) / 1000)} s`);
}

function onTime(moves: readonly Move[] = []): Move[] {
  return moves.filter(({ late }) => !late);
}

function reasoned(moves: readonly Move[]): number {
  return moves.filter(({ change }) => change !== undefined && change.because.length > 0).length;
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
