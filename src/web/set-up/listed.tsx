/**
 * A step that gathers things alike in a list: added several at once, changed, taken out one by one or those that are ticked.
 */
import type { Child } from 'hono/jsx';
import { firstFree, slug } from '../../garden/ids.ts';
import type { SetUpDraft } from '../../garden/set-up-draft.ts';
import { capital } from '../../measures/capital.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { setUpPath } from '../addresses/addresses.ts';
import type { FieldProblem } from '../fields/edit-form.ts';
import { type Form, SHOWN_CHARACTERS } from '../requests/form.ts';
import { Fields, NOTHING_TICKED, OnAndBack, outOf, StepForm, TakeOut, TakeOutTicked } from './parts.tsx';
import {
  type AskedFields,
  countProblems,
  isUntouched,
  plainName,
  readFields,
  type StepRead,
  type StepRoom,
  type StepShown,
  twinProblems,
  unchanged,
} from './step.ts';

/** A thing of such a list. */
interface Listed {
  id: string;
  name: string;
}

/** What a sent form says of one thing or of several alike, besides how many and their names. */
export type ReadRow<Row> = { row: Omit<Row, 'id' | 'name'> } | { problems: readonly FieldProblem[] };

/** What is gathered. */
export interface ListedKind<Row extends Listed> {
  step: 'beds' | 'bins';
  word: 'bed' | 'bin';
  /** Most of them in a draft. */
  most: number;
  rowsOf(draft: SetUpDraft): readonly Row[];
  withRows(draft: SetUpDraft, rows: readonly Row[]): SetUpDraft;
  /** The draft without one of them, and without what cannot be without it. */
  without(draft: SetUpDraft, id: string): SetUpDraft;
  /** The fields of new ones, which have `count` and `name` among them, or of the one to be changed. */
  asked(changed: Row | undefined, units: UnitSystem): AskedFields;
  readRow(form: Form, read: Record<string, unknown>, room: StepRoom, was?: Row): ReadRow<Row>;
  /** Whether the step may be left with none. */
  mayBeNone: boolean;
  /** One of them in words. */
  words(row: Row, units: UnitSystem): string;
}

interface Shown<Row extends Listed> {
  kind: ListedKind<Row>;
  room: StepRoom;
}

/** The form that adds or changes. */
export const AddOrChange = <Row extends Listed>({ kind, room, shown }: Shown<Row> & { shown: StepShown }) => {
  const { step, word } = kind;
  const id = shown.sent?.text(word) ?? shown.query.text('change');
  const changed = kind.rowsOf(room.draft).find((row) => row.id === id);
  return (
    <StepForm room={room} step={step} adds={changed === undefined}>
      <h2>{changed === undefined ? `Add ${step}` : `Change ${changed.name}`}</h2>
      {changed !== undefined && <input type="hidden" name={word} value={changed.id} />}
      <Fields room={room} shown={shown} asked={kind.asked(changed, room.units)} />
      <button type="submit" name="do" value={changed === undefined ? 'add' : 'change'}>
        {changed === undefined ? 'Add to the list' : 'Keep the change'}
      </button>
      <OnAndBack step={step} />
    </StepForm>
  );
};

/** What is in the list, each with the ways to change it and to take it out. */
export const ToldList = <Row extends Listed>({ kind, room, children }: Shown<Row> & { children?: Child }) => {
  const rows = kind.rowsOf(room.draft);
  return (
    <StepForm room={room} step={kind.step}>
      <TakeOutTicked of={rows} />
      <ul class="told-list">
        {rows.map((row) => (
          <li>
            <TakeOut of={rows} id={row.id} name={row.name} />
            <span class="under">{kind.words(row, room.units)}</span>
            <span class="row-doings">
              <a class="doing" href={`${setUpPath(room.draftId, kind.step)}?change=${encodeURIComponent(row.id)}`}>
                Change<span class="unseen"> {row.name}</span>
              </a>
              <button type="submit" name="do" value={`out:${row.id}`}>
                Take out<span class="unseen"> {row.name}</span>
              </button>
            </span>
          </li>
        ))}
      </ul>
      {children}
    </StepForm>
  );
};

/** What a form of such a step makes of the draft. */
export function readListed<Row extends Listed>(kind: ListedKind<Row>, form: Form, room: StepRoom): StepRead {
  const asks = form.text('do');
  const out = outOf(form);
  if (out?.length === 0) return { problems: NOTHING_TICKED };
  if (out !== undefined) return { change: (now) => out.reduce(kind.without, now), leads: 'here' };
  const rows = kind.rowsOf(room.draft);
  const was = rows.find(({ id }) => id === form.text(kind.word));
  if (was !== undefined && asks !== 'add') return changing(kind, form, room, was);
  // What stands in the fields is added where it must be meant: there is none yet, or somebody typed something.
  const mayBeEmpty = kind.mayBeNone || rows.length > 0 || asks === 'back';
  if (asks !== 'add' && mayBeEmpty && isUntouched(form, kind.asked(undefined, room.units), room.units))
    return { change: unchanged, leads: 'on' };
  return adding(kind, form, room);
}

function adding<Row extends Listed>(kind: ListedKind<Row>, form: Form, room: StepRoom): StepRead {
  const rows = kind.rowsOf(room.draft);
  const { read, problems } = readFields(form, kind.asked(undefined, room.units), room.units);
  const { count, name, ...rest } = read;
  const told = kind.readRow(form, rest, room);
  const wrong = [
    ...problems,
    ...('problems' in told ? told.problems : []),
    ...countProblems(count, kind.most - rows.length),
    ...(count === 1 ? twinProblems(kind.word, 'Name', name, rows) : []),
  ];
  if (wrong.length > 0 || typeof count !== 'number' || 'problems' in told) return { problems: wrong };
  const called = typeof name === 'string' ? name : '';
  return {
    change: (now) => {
      const there = kind.rowsOf(now);
      const ids = new Set(there.map(({ id }) => id));
      const added = namesFor(kind.word, called, count, there).map((each): Row => {
        const id = firstFree(slug(each), ids);
        ids.add(id);
        return { id, name: each, ...told.row } as Row;
      });
      return kind.withRows(now, [...there, ...added]);
    },
    leads: form.text('do') === 'add' ? 'here' : 'on',
  };
}

function changing<Row extends Listed>(kind: ListedKind<Row>, form: Form, room: StepRoom, was: Row): StepRead {
  const others = kind.rowsOf(room.draft).filter(({ id }) => id !== was.id);
  const { read, problems } = readFields(form, kind.asked(was, room.units), room.units);
  const { name, ...rest } = read;
  const told = kind.readRow(form, rest, room, was);
  const wrong = [
    ...problems,
    ...('problems' in told ? told.problems : []),
    ...twinProblems(kind.word, 'Its name', name, others),
  ];
  if (wrong.length > 0 || 'problems' in told) return { problems: wrong };
  const changed = { id: was.id, name, ...told.row } as Row;
  return {
    change: (now) =>
      kind.withRows(
        now,
        kind.rowsOf(now).map((each) => (each.id === was.id ? changed : each)),
      ),
    leads: form.text('do') === 'change' ? 'here' : 'on',
  };
}

/** Names for so many alike: the one given, where it is free; else that with the first numbers that are. */
function namesFor(word: string, given: string, count: number, there: readonly Listed[]): string[] {
  const taken = new Set(there.map(({ name }) => plainName(name)));
  if (count === 1 && given !== '' && !taken.has(plainName(given))) return [given];
  const base = (given === '' ? capital(word) : given).slice(0, SHOWN_CHARACTERS);
  const names: string[] = [];
  for (let number = 1; names.length < count; number += 1) {
    const name = `${base} ${number}`;
    if (!taken.has(plainName(name))) names.push(name);
  }
  return names;
}
