/**
 * A taking-back that would leave rows of a garden in contradiction: refused, with what to change first.
 */
import { type RowReader, rowInWords } from '../../digest/row-words.ts';
import { rowsOf } from '../../garden/edit.ts';
import { gardenFileOf } from '../../garden/export-garden-file.ts';
import type { Garden } from '../../garden/garden.ts';
import type { GardenFile } from '../../garden/garden-file.ts';
import type { LedgerEntry } from '../../garden/ledger.ts';
import { heldFile } from '../../garden/member-ids.ts';
import { InputRefused, type Problem } from '../../garden/problem.ts';
import { projectGarden } from '../../garden/project.ts';
import { checkGardenFile } from '../../garden/read-garden-file.ts';
import type { TriedOut } from '../planning/planner.ts';
import { crowdedProblems } from './crowded.ts';
import { readerOf } from './row-reader.ts';

/**
 * Refuses a ledger whose garden does not hold together, as far as the one before it did.
 *
 * @param after the ledger with an entry taken back
 * @throws {InputRefused} naming each row that another contradicts
 */
export function refuseContradiction(before: Garden, after: readonly LedgerEntry[]): void {
  const garden = projectGarden(after);
  if (garden === undefined) return;
  const file = gardenFileOf(garden);
  const problems = problemsOf(file, after);
  if (problems.length === 0) return;
  const known = new Set(problemsOf(gardenFileOf(before), after).map(({ what }) => what));
  refuseUndo(
    problems.filter(({ what }) => !known.has(what)),
    garden,
  );
}

/**
 * Refuses a garden left with two crops in one bed at once, where it had them not before.
 *
 * @param after the garden as it would be, and its climate
 * @throws {InputRefused} naming each such crop
 */
export function refuseCrowding(before: Garden, { garden, climate }: Pick<TriedOut, 'garden' | 'climate'>): void {
  refuseUndo(crowdedProblems(gardenFileOf(garden), garden, climate, before), garden);
}

function refuseUndo(problems: readonly Problem[], garden: Garden): void {
  if (problems.length === 0) return;
  const [file, reader] = [gardenFileOf(garden), readerOf(garden)];
  throw new InputRefused(
    'It cannot be undone.',
    problems.map((problem) => inWords(problem, file, reader)),
  );
}

function problemsOf(file: GardenFile, ledger: readonly LedgerEntry[]): readonly Problem[] {
  try {
    checkGardenFile(file, heldFile(ledger));
    return [];
  } catch (error) {
    if (error instanceof InputRefused) return error.problems;
    throw error;
  }
}

/** A problem under the name of the row it is about. */
function inWords({ where, what, mend }: Problem, file: GardenFile, reader: RowReader): Problem {
  const [, list = '', at] = /^(\w+)\[(\d+)\]/.exec(where) ?? [];
  const row = rowsOf(file, list)[Number(at)];
  if (row === undefined) return { where, what, mend };
  return { where: rowInWords(list, row, reader), what, mend: `Change that first, then take this back. ${mend}` };
}
