/**
 * Taking an entry back: what it would do, shown before it is done.
 */
import type { Fact } from '../../garden/facts.ts';
import { membersOf } from '../../garden/household-changes.ts';
import type { LedgerEntry } from '../../garden/ledger.ts';
import { InputRefused } from '../../garden/problem.ts';
import { projectGarden, standingEntries, undoneEntries } from '../../garden/project.ts';
import type { Day } from '../../measures/days.ts';
import { touchedBy } from './touched-by.ts';

/**
 * The entry to take back: the one asked for, or the newest fact that can be. A taking-back can itself be taken back, when
 * it is asked for by its number.
 *
 * @returns nothing when none is asked for and none can be taken back
 * @throws {InputRefused} when the one asked for does not stand, is the garden's only file, or would give somebody a name
 *   that another has by now
 */
export function entryToUndo(ledger: readonly LedgerEntry[], wanted: number | undefined): LedgerEntry | undefined {
  const standing = standingEntries(ledger);
  const files = standing.filter(({ fact }) => fact.kind === 'garden-imported');
  const facts = standing.filter((entry) => files.length > 1 || entry !== files[0]);
  if (wanted === undefined) return facts.at(-1);
  const asked = [...facts, ...takingsBack(ledger)].find((row) => row.entry === wanted);
  if (asked !== undefined) refuseNamesake(ledger, asked);
  if (asked !== undefined && projectGarden(withUndone(ledger, asked, asked.recordedOn)) !== undefined) return asked;
  const known = facts.map((row) => row.entry).slice(-5);
  throw new InputRefused('It cannot be undone.', [
    {
      where: `entry ${wanted}`,
      what: ledger.some((row) => row.entry === wanted)
        ? undoneEntries(ledger).has(wanted)
          ? 'is taken back already.'
          : 'holds the garden itself.'
        : 'does not exist.',
      mend: known.length === 0 ? 'Nothing can be undone yet.' : `The newest that can be undone: ${known.join(', ')}.`,
    },
  ]);
}

/**
 * What somebody would be called again while another has the name: it stands for one person.
 *
 * @throws {InputRefused} naming it
 */
function refuseNamesake(ledger: readonly LedgerEntry[], entry: LedgerEntry): void {
  const theirs = memberIn(takenEntry(ledger, entry).fact);
  if (theirs === undefined) return;
  const alone = ledger.filter(({ fact }) => [undefined, theirs].includes(memberIn(fact)));
  const [now, after] = [ledger, withUndone(alone, entry, entry.recordedOn)].map((entries) => {
    const garden = projectGarden(entries);
    return garden === undefined ? [] : membersOf(garden);
  });
  const name = after?.find(({ id }) => id === theirs)?.name;
  if (now?.every((member) => member.id === theirs || member.name !== name)) return;
  const mend = 'Give them another name first, on the Household page.';
  throw new InputRefused('It cannot be undone.', [
    { where: 'the name', what: `"${name}" is somebody else now.`, mend },
  ]);
}

/** The id of the member whom a fact tells of. */
function memberIn(fact: Fact): string | undefined {
  if (fact.kind === 'member-kept') return fact.member.id;
  return fact.kind === 'member-gone' || fact.kind === 'mail-stopped' ? fact.id : undefined;
}

/** The takings-back that stand. */
export function takingsBack(ledger: readonly LedgerEntry[]): LedgerEntry[] {
  const undone = undoneEntries(ledger);
  return ledger.filter(({ entry, fact }) => fact.kind === 'entry-undone' && !undone.has(entry));
}

/** The ledger as it would be with one entry taken back on a day. */
export function withUndone(
  ledger: readonly LedgerEntry[],
  { entry, ...rest }: LedgerEntry,
  recordedOn: Day,
): LedgerEntry[] {
  const number = (ledger.at(-1)?.entry ?? 0) + 1;
  return [...ledger, { ...rest, recordedOn, entry: number, fact: { kind: 'entry-undone', entry } }];
}

/** Later entries about the same things: they stay, and are listed so that nobody is surprised. */
export function leaningOn(ledger: readonly LedgerEntry[], entry: LedgerEntry): LedgerEntry[] {
  const touched = touchedBy(takenEntry(ledger, entry).fact);
  return standingEntries(ledger).filter(
    (later) => later.entry > entry.entry && (touched === 'all' || meets(touchedBy(later.fact), touched)),
  );
}

/** What an entry is about: of a taking-back, the one it took back; of any other, itself. */
export function takenEntry(ledger: readonly LedgerEntry[], entry: LedgerEntry): LedgerEntry {
  const { fact } = entry;
  const taken = fact.kind === 'entry-undone' ? ledger.find((row) => row.entry === fact.entry) : undefined;
  return taken === undefined ? entry : takenEntry(ledger, taken);
}

function meets(later: Set<string> | 'all', touched: ReadonlySet<string>): boolean {
  return later === 'all' || [...later].some((name) => touched.has(name));
}
