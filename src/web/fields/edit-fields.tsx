/**
 * The fields of a form about a row of the garden file.
 */
import { limitsOf } from '../../garden/file-limits.ts';
import type { GardenFile } from '../../garden/garden-file.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { type Asked, Control } from './edit-controls.tsx';
import type { FieldProblem } from './edit-form.ts';
import { type AnyField, entriesOf, entryName, type Field, type FieldRows, isRows } from './field.ts';
import type { Texts } from './shown.ts';

/** What every field is drawn with. */
export interface FieldRoom {
  of: keyof GardenFile;
  units: UnitSystem;
  texts: Texts;
  problems: readonly FieldProblem[];
  /** The row the form was filled from. */
  row: object | undefined;
  /** The log that stands open. */
  open?: string | undefined;
}

/** The id of a field on its page. */
export function fieldId(name: string): string {
  return `field-${name.replace(/[^\w-]+/g, '-')}`;
}

/** Every field of a form. */
export const EditFields = ({ fields, room }: { fields: readonly AnyField[]; room: FieldRoom }) => (
  <>
    {fields.map((field) =>
      isRows(field) ? (
        <Rows rows={field} room={room} />
      ) : (
        <OneField field={field} name={field.name} room={room} needed />
      ),
    )}
  </>
);

interface OneFieldProps {
  field: Field;
  /** The name it is sent under. */
  name: string;
  room: FieldRoom;
  /** Whether the browser may say that it is needed: not in a group that can stay empty. */
  needed?: boolean;
}

const OneField = ({ field, name, room, needed = false }: OneFieldProps) => {
  const id = fieldId(name);
  const problems = room.problems.filter((problem) => problem.field === name);
  const about = [
    ...(field.hint === undefined ? [] : [`${id}-hint`]),
    ...(problems.length === 0 ? [] : [`${id}-wrong`]),
  ].join(' ');
  const path = name.replace(/\[\d+\]/g, '');
  const asked: Asked = {
    id,
    name,
    texts: room.texts.get(name) ?? [],
    required: needed && (field.required ?? limitsOf(room.of, path).required),
    'aria-describedby': about === '' ? undefined : about,
    'aria-invalid': problems.length === 0 ? undefined : 'true',
  };
  return (
    <div class="field">
      <Control field={field} asked={asked} units={room.units} />
      {field.hint !== undefined && (
        <p class="small" id={`${id}-hint`}>
          {field.hint}
        </p>
      )}
      {problems.length > 0 && (
        <p class="wrong" id={`${id}-wrong`}>
          {problems.map(({ what, mend }) => `${what} ${mend}`).join(' ')}
        </p>
      )}
    </div>
  );
};

/** A log: a group of fields for each of its entries, and an empty one; folded until somebody wants to see it. */
const Rows = ({ rows, room }: { rows: FieldRows; room: FieldRoom }) => {
  const entries = entriesOf(rows, room.row);
  const sent = [...room.texts].flatMap(([name, texts]) => (texts.join('') === '' ? [] : [placeIn(rows, name)]));
  const count = Math.max(entries.length, ...sent);
  const isWrong = room.problems.some(({ field }) => field !== undefined && placeIn(rows, field) > 0);
  return (
    <details class="log" open={isWrong || count > entries.length || rows.name === room.open}>
      <summary>
        {rows.label}: <span class="small">{entries.length === 0 ? 'none told' : `${entries.length} told`}</span>
      </summary>
      {rows.hint !== undefined && <p class="small">{rows.hint}</p>}
      {Array.from({ length: count + 1 }, (_, at) => (
        <Entry rows={rows} room={room} entries={entries} at={at} />
      ))}
    </details>
  );
};

interface EntryProps {
  rows: FieldRows;
  room: FieldRoom;
  /** The entries there are; the group is that of one more where it stands behind them. */
  entries: readonly object[];
  at: number;
}

const Entry = ({ rows, room, entries, at }: EntryProps) => {
  const isNew = at >= entries.length;
  const gone = entryName(rows, at, 'gone');
  return (
    <fieldset class="log-entry">
      <legend>{isNew ? `Add ${rows.one}` : `${rows.label}, ${at + 1} of ${entries.length}`}</legend>
      {rows.fields(entries[at]).map((field) => (
        <OneField field={field} name={entryName(rows, at, field.name)} room={room} />
      ))}
      {!isNew && (
        <label class="choice">
          <input type="checkbox" name={gone} value="yes" checked={room.texts.get(gone)?.[0] === 'yes'} /> Take it out
        </label>
      )}
    </fieldset>
  );
};

/** One more than the place of the entry a name of a form belongs to; nought for any other name. */
function placeIn({ name: list }: FieldRows, name: string): number {
  const [, within, at] = /^(\w+)\[(\d+)\]\./.exec(name) ?? [];
  return within === list ? Number(at) + 1 : 0;
}
