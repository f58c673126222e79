/**
 * What was said today, as far as the days that entries are held to hang on it.
 */
import type { Fact } from '../garden/facts.ts';
import type { LedgerEntry } from '../garden/ledger.ts';
import { standingEntries } from '../garden/project.ts';
import { type Day, earliestOf } from '../measures/days.ts';
import type { SaidToday } from '../schedule/held.ts';
import { takenEntry, takingsBack } from './undo.ts';

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
    .map(({ fact }) => fact.kind);
  const edited = kinds.some((kind) => !APART.includes(kind));
  const settled = kinds.some((kind) => kind === 'tasks-done' || kind === 'tasks-skipped');
  const back = takingsBack(ledger)
    .filter(({ recordedOn }) => recordedOn === today)
    .map((entry) => takenEntry(ledger, entry).recordedOn);
  const [first, ...rest] = back;
  return { edited, settled, ...(first === undefined ? {} : { takenBackTo: earliestOf(first, ...rest) }) };
}
