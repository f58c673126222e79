/**
 * The fields of a form about a row of the garden file.
 */
import type { Child } from 'hono/jsx';
import { limitsOf } from '../../garden/file-limits.ts';
import type { GardenFile } from '../../garden/garden-file.ts';
import { dayOf } from '../../measures/days.ts';
import { MONTHS } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { FieldProblem } from '../edit/edit-form.ts';
import { type AnyField, entriesOf, entryName, type Field, type FieldRows, isRows, type Option } from '../edit/field.ts';
import { unitOfField } from '../edit/measures.ts';
import type { Texts } from '../edit/shown.ts';

/** What every field is drawn with. */
export interface FieldRoom {
  of: keyof GardenFile;
  units: UnitSystem;
  texts: Texts;
  problems: readonly FieldProblem[];
  /** The row the form was filled from. */
  row: object | undefined;
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

interface Asked {
  id: string;
  name: string;
  texts: readonly string[];
  required: boolean;
  'aria-describedby': string | undefined;
  'aria-invalid': 'true' | undefined;
}

const Control = ({ field, asked, units }: { field: Field; asked: Asked; units: UnitSystem }) => {
  const { texts, ...named } = asked;
  const [text = ''] = texts;
  const unit = unitOfField(field, units);
  switch (field.as) {
    case 'check':
      return (
        <label class="choice">
          <input type="checkbox" {...named} required={undefined} value="yes" checked={text === 'yes'} /> {field.label}
        </label>
      );
    case 'many':
      return (
        <Choices field={field} asked={asked}>
          {(field.options ?? []).map((option) => (
            <Tick type="checkbox" name={asked.name} option={option} checked={texts.includes(option.value)} />
          ))}
        </Choices>
      );
    case 'choice':
      return field.open ? (
        <Choices field={field} asked={asked}>
          {(field.options ?? []).map((option) => (
            <Tick type="radio" name={asked.name} option={option} checked={text === option.value} />
          ))}
        </Choices>
      ) : (
        <label>
          {field.label}{' '}
          <select {...named}>
            {(!asked.required || text === '') && <option value="">{asked.required ? 'choose' : '–'}</option>}
            <Options options={field.options ?? []} chosen={text} />
          </select>
        </label>
      );
    case 'month-day':
      return <MonthDay field={field} asked={asked} />;
    default:
      return (
        <label>
          {field.label}
          {unit === undefined ? '' : `, ${unit.label}`} <input {...inputKind(field)} {...named} value={text} />
        </label>
      );
  }
};

function inputKind({ as }: Field): { type: string; inputmode?: 'numeric' | 'decimal' } {
  if (as === 'day') return { type: 'date' };
  if (as === 'time') return { type: 'time' };
  if (as === 'whole') return { type: 'text', inputmode: 'numeric' };
  return as === 'text' ? { type: 'text' } : { type: 'text', inputmode: 'decimal' };
}

const Choices = ({ field, asked, children }: { field: Field; asked: Asked; children: Child }) => (
  <fieldset class="choices" id={asked.id} aria-describedby={asked['aria-describedby']}>
    <legend>{field.label}</legend>
    {children}
  </fieldset>
);

const Tick = ({ option, checked, ...named }: { type: string; name: string; option: Option; checked: boolean }) => (
  <label class="choice">
    <input {...named} value={option.value} checked={checked} /> {option.words}
  </label>
);

/** Choices under their headings, in the order the headings first come. */
const Options = ({ options, chosen }: { options: readonly Option[]; chosen: string }) => {
  const groups = [...new Set(options.map(({ group }) => group))];
  return (
    <>
      {groups.map((group) => {
        const within = options.filter((option) => option.group === group);
        const shown = within.map(({ value, words }) => (
          <option value={value} selected={value === chosen}>
            {words}
          </option>
        ));
        return group === undefined ? shown : <optgroup label={group}>{shown}</optgroup>;
      })}
    </>
  );
};

const MonthDay = ({ field, asked }: { field: Field; asked: Asked }) => {
  const [month = '', dayOfMonth = ''] = (asked.texts[0] ?? '').split('-');
  return (
    <fieldset class="month-day" id={asked.id} aria-describedby={asked['aria-describedby']}>
      <legend>{field.label}</legend>
      <label>
        Month{' '}
        <select name={`${asked.name}:month`}>
          <option value="">–</option>
          {MONTHS.map((name, at) => {
            const value = String(at + 1).padStart(2, '0');
            return (
              <option value={value} selected={value === month}>
                {name}
              </option>
            );
          })}
        </select>
      </label>
      <label>
        Day{' '}
        <select name={`${asked.name}:day`}>
          <option value="">–</option>
          {Array.from({ length: 31 }, (_, at) => dayOf(2000, 1, at + 1).slice(-2)).map((value) => (
            <option value={value} selected={value === dayOfMonth}>
              {Number(value)}
            </option>
          ))}
        </select>
      </label>
    </fieldset>
  );
};

/** A log: a group of fields for each of its entries, and an empty one; folded until somebody wants to see it. */
const Rows = ({ rows, room }: { rows: FieldRows; room: FieldRoom }) => {
  const entries = entriesOf(rows, room.row);
  const sent = [...room.texts].flatMap(([name, texts]) => (texts.join('') === '' ? [] : [placeIn(rows, name)]));
  const count = Math.max(entries.length, ...sent);
  const isWrong = room.problems.some(({ field }) => field !== undefined && placeIn(rows, field) > 0);
  return (
    <details class="log" open={isWrong || count > entries.length}>
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
