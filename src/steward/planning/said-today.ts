/**
 * What was said today, as far as the days that entries are held to hang on it.
 */
import type { Fact } from '../../garden/facts.ts';
import type { LedgerEntry } from '../../garden/ledger.ts';
import { standingEntries } from '../../garden/project.ts';
import type { StoredEdit } from '../../garden/stored-edit.ts';
import { type Day, earliestOf } from '../../measures/days.ts';
import type { TaskKey } from '../../practices/draft.ts';
import type { SaidToday } from '../../schedule/held.ts';
import type { TakenBack } from '../../schedule/taken-back.ts';
import { takenEntry, takingsBack } from '../ledger/undo.ts';

/** Facts that give no work another window of themselves: weather, the household's mail and marks, and what placing sees to. */
const APART: readonly Fact['kind'][] = [
  'weather-logged',
  'tasks-done',
  'tasks-skipped',
  'put-off',
  'day-pinned',
  'day-unpinned',
  'task-assigned',
  'member-kept',
  'member-gone',
  'mail-stopped',
];

/** Read from the ledger alone, so that what is taken back today leaves the plan as if it had never been said. */
export function saidToday(ledger: readonly LedgerEntry[], today: Day): SaidToday {
  const kinds = standingEntries(ledger)
    .filter(({ recordedOn }) => recordedOn === today)
    .map(({ fact }) => (isOfWeather(fact) ? 'weather-logged' : fact.kind));
  const edited = kinds.some((kind) => !APART.includes(kind));
  const settled = kinds.some((kind) => kind === 'tasks-done' || kind === 'tasks-skipped');
  const back = takingsBack(ledger)
    .filter(({ recordedOn }) => recordedOn === today)
    .map((entry) => takenEntry(ledger, entry));
  const takenBack = takenBackOf(back);
  return { edited, settled, ...(takenBack === undefined ? {} : { takenBack }) };
}

/** Whether a fact tells of the garden's weather alone. */
function isOfWeather(fact: Fact): boolean {
  return fact.kind === 'garden-mended' && fact.edits.every(({ how }) => how === 'days' || how === 'days-gone');
}

function takenBackOf(entries: readonly LedgerEntry[]): TakenBack | undefined {
  const [first, ...rest] = entries.map(({ recordedOn }) => recordedOn);
  if (first === undefined) return undefined;
  const about = entries.map(({ fact }) => tasksNamed(fact));
  return {
    since: earliestOf(first, ...rest),
    about: about.includes('all') ? 'all' : about.flatMap((keys) => (keys === 'all' ? [] : keys)),
  };
}

/** The tasks a fact names; all where it says how the household works, which no window shows. */
function tasksNamed(fact: Fact): readonly TaskKey[] | 'all' {
  switch (fact.kind) {
    case 'garden-imported':
    case 'away-told':
      return 'all';
    case 'garden-mended':
      return fact.edits.some(saysHowTheyWork) ? 'all' : [];
    case 'tasks-done':
    case 'tasks-skipped':
    case 'put-off':
      return fact.tasks.map(({ key }) => key);
    case 'day-pinned':
    case 'day-unpinned':
      return [fact.key];
    case 'stand-looked':
    case 'regrowth-seen':
      return fact.task === undefined ? [] : [fact.task.key];
    default:
      return [];
  }
}

/** Whether an edit is of the days and hours of work, or of the days away. */
function saysHowTheyWork(edit: StoredEdit): boolean {
  if (edit.how === 'row') return edit.list === 'away';
  return edit.how === 'part-changed' && edit.part === 'garden';
}
