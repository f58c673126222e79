/**
 * What was said today, as far as the days that entries are held to hang on it.
 */
import type { LedgerEntry } from '../garden/ledger.ts';
import { standingEntries } from '../garden/project.ts';
import { type Day, earliestOf } from '../measures/days.ts';
import type { SaidToday } from '../schedule/held.ts';
import { takenEntry, takingsBack } from './undo.ts';

/** Read from the ledger alone, so that what is taken back today leaves the plan as if it had never been said. */
export function saidToday(ledger: readonly LedgerEntry[], today: Day): SaidToday {
  const edited = standingEntries(ledger).some(
    ({ recordedOn, fact }) => recordedOn === today && fact.kind !== 'weather-logged',
  );
  const back = takingsBack(ledger)
    .filter(({ recordedOn }) => recordedOn === today)
    .map((entry) => takenEntry(ledger, entry).recordedOn);
  const [first, ...rest] = back;
  return { edited, ...(first === undefined ? {} : { takenBackTo: earliestOf(first, ...rest) }) };
}
