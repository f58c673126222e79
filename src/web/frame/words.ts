/**
 * Standings and confidence as the pages write them; days and hours are the weekly list's own words.
 */
import type { PlannedTask, TaskState } from '../../schedule/plan.ts';

/** Where a task stands, in a word or two. */
export function standing(task: Pick<PlannedTask, 'state' | 'ifMissed'>): string {
  if (task.state === 'lapsed') return task.ifMissed === 'still do' ? 'late' : 'missed';
  return STATE_WORDS[task.state];
}

const STATE_WORDS: Readonly<Record<Exclude<TaskState, 'lapsed'>, string>> = {
  open: 'open',
  done: 'done',
  skipped: 'skipped',
};

/** What skipping work means; a turn is the one of its kind that comes again by itself. */
export function skipMeans(tasks: readonly Pick<PlannedTask, 'kind'>[]): string {
  const turns = tasks.filter(({ kind }) => kind === 'turn-pile').length;
  const gone = 'It leaves the plan and every calendar, and is not asked for again.';
  const later =
    'Only this turn falls out: the next is asked for about a week from today, or when what the pile shows asks.';
  if (turns === 0) return gone;
  return turns === tasks.length ? later : `${gone} Of turning a pile, only this turn falls out.`;
}

/** Names in a row: "Ida", "Ida and Jonas", "Ida, Jonas and Runa". */
export function inARow(names: readonly string[]): string {
  const last = names.at(-1) ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} and ${last}`;
}

/** How well a date is known. */
export const CONFIDENCE_WORDS: Readonly<Record<PlannedTask['confidence'], string>> = {
  recorded: 'Recorded: it stands on days that were written down for this garden.',
  modelled: 'Modelled: worked out by a published rule, year by year, from measured weather.',
  derived: 'Derived: worked out by rule from published figures and the garden’s own plan.',
  assumed: 'Assumed: a figure nobody has measured here stands in. Trust what you see over the date.',
};
