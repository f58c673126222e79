/**
 * Taking an entry back: what it would do, shown before it is done.
 */
import { toldOtherwise } from '../digest/told-otherwise.ts';
import type { DoneTask, Fact } from '../garden/facts.ts';
import { membersOf } from '../garden/household-changes.ts';
import type { LedgerEntry } from '../garden/ledger.ts';
import { KNOWN_BY } from '../garden/mended-file.ts';
import { InputRefused } from '../garden/problem.ts';
import { projectGarden, standingEntries, undoneEntries } from '../garden/project.ts';
import type { RowList, StoredEdit } from '../garden/stored-edit.ts';
import type { Day } from '../measures/days.ts';
import type { Plan, PlannedTask } from '../schedule/plan.ts';
import type { AmountChange, TaskMove } from './steward.ts';

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

/** The beds, plantings, stands, piles, wishes and tasks a fact is about. */
export function touchedBy(fact: Fact): Set<string> | 'all' {
  switch (fact.kind) {
    case 'garden-imported':
    case 'entry-undone':
      return 'all';
    case 'pile-read':
    case 'compost-not-ready':
      return new Set([fact.pileId]);
    case 'disease-found':
    case 'mulch-planned':
      return new Set([fact.bedId]);
    case 'stand-planned':
      return new Set([fact.bedId, fact.standId, ...(fact.instead ?? [])]);
    case 'stage-seen':
    case 'regrowth-seen':
      return new Set([fact.standId]);
    case 'stand-looked':
      return new Set([fact.standId, ...(fact.task ? [fact.task.key] : [])]);
    case 'stand-dropped':
      return new Set([fact.bedId, fact.standId]);
    case 'plantings-planned':
      return new Set([
        ...[...fact.plantings, ...fact.dropped].flatMap(({ id, bedId }) => [id, bedId]),
        ...(fact.coversDropped ?? []).flatMap(({ standId, bedId }) => [standId, bedId]),
      ]);
    case 'crop-wished':
    case 'wish-dropped':
      return new Set([wishName(fact.cropId, fact.season)]);
    case 'member-kept':
      return new Set([
        `member ${fact.member.id}`,
        `called ${fact.member.name}`,
        ...(fact.formerName ? [`called ${fact.formerName}`] : []),
      ]);
    case 'member-gone':
    case 'mail-stopped':
      return new Set([`member ${fact.id}`, `called ${fact.name}`]);
    case 'task-assigned':
      return new Set([...fact.tasks.map(({ key }) => key), ...(fact.to ? [`called ${fact.to}`] : [])]);
    case 'garden-mended':
      return new Set(fact.edits.flatMap(touchedByEdit));
    case 'cold-night-told':
      return new Set([rowName('coldNights', { ...fact })]);
    case 'away-told':
      return new Set([rowName('away', { ...fact })]);
    case 'soil-squeezed':
      return new Set([rowName('soilSqueezes', { ...fact })]);
    case 'people-told':
      return new Set(['the household']);
    case 'weather-logged':
      return new Set(fact.days.map(({ day, kind }) => `weather ${day} ${kind}`));
    case 'tasks-skipped':
    case 'put-off':
      return new Set(fact.tasks.map(({ key }) => key));
    case 'day-pinned':
    case 'day-unpinned':
      return new Set([fact.key]);
    case 'tasks-done':
      return new Set(fact.tasks.flatMap(({ key, subject, makes }) => [key, subject.id, ...makes.flatMap(idsOf)]));
    default:
      return fact satisfies never;
  }
}

/** What an edit is about: an item with what it is in, or what the row names. */
function touchedByEdit(edit: StoredEdit): string[] {
  switch (edit.how) {
    case 'added':
    case 'gone':
      return [edit.id, ...named(edit.row), ...called(edit.row.name)];
    case 'changed': {
      const names = edit.fields.flatMap(({ key, was, is }) => (key === 'name' ? [...called(was), ...called(is)] : []));
      return [edit.id, ...named(edit.goesBy), ...names];
    }
    case 'row':
      return [edit.was, edit.row].flatMap((row) => (row ? [...named(row), rowName(edit.list, row)] : []));
    case 'part-changed':
    case 'part-replaced':
      return [`the ${edit.part}`];
    case 'days':
    case 'days-gone':
      return edit.days.map(({ day, kind }) => `weather ${day} ${kind}`);
    default:
      return edit satisfies never;
  }
}

function named(row: Readonly<Record<string, unknown>> = {}): string[] {
  return [row.bed, row.bin].filter((id) => typeof id === 'string');
}

/** A name that one bed or bin has at a time. */
function called(name: unknown): string[] {
  return typeof name === 'string' ? [`named ${name}`] : [];
}

/** A row without an id by what it is known by; a wish as the facts of wishes call it. */
function rowName(list: RowList, row: Readonly<Record<string, unknown>>): string {
  if (list === 'wishes') return wishName(String(row.crop), row.year);
  return [list, ...KNOWN_BY[list].map((key) => row[key] ?? '')].join(' ');
}

function wishName(cropId: string, season: unknown = ''): string {
  return `wish ${cropId} ${season}`;
}

function idsOf(effect: DoneTask['makes'][number]): string[] {
  return Object.entries(effect).flatMap(([name, value]) => (name.endsWith('Id') ? [String(value)] : []));
}

/** What moves, comes, goes or is told otherwise between a plan and the one a change would make of it. */
export function movesBetween(before: Plan, after: Plan): TaskMove[] {
  const open = (plan: Plan) =>
    new Map(plan.tasks.filter(({ state }) => state !== 'skipped').map((task) => [task.key, task]));
  const [was, will] = [open(before), open(after)];
  const keys = [...new Set([...was.keys(), ...will.keys()])];
  return keys.flatMap((key) => {
    const [from, to] = [was.get(key), will.get(key)];
    const amounts = from && to ? amountChanges(from, to) : [];
    const otherwise = from && to && toldOtherwise(from, to);
    if (from?.day === to?.day && from?.state === to?.state && amounts.length === 0 && otherwise === undefined)
      return [];
    const title = ((otherwise && from) ?? to ?? from)?.title ?? key;
    const days = { ...(from ? { from: from.day } : {}), ...(to ? { to: to.day } : {}) };
    const reasons = (to ?? from)?.reasons ?? [];
    return [
      {
        key,
        title,
        ...days,
        reasons,
        ...(amounts.length === 0 ? {} : { amounts }),
        ...(otherwise ? { otherwise } : {}),
      },
    ];
  });
}

/** What is wanted in another amount than before, by what is to hand. */
function amountChanges(before: PlannedTask, after: PlannedTask): AmountChange[] {
  const measured = ({ supplies }: PlannedTask) =>
    new Map(supplies.flatMap(({ what, amount }) => (amount === undefined ? [] : [[what, amount] as const])));
  const [was, will] = [measured(before), measured(after)];
  return [...new Set([...was.keys(), ...will.keys()])].flatMap((what) => {
    const [from, to] = [was.get(what), will.get(what)];
    if (from?.value === to?.value && from?.unit === to?.unit) return [];
    return [{ what, ...(from ? { from } : {}), ...(to ? { to } : {}) }];
  });
}
