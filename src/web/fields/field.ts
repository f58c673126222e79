/**
 * What a form asks of a row of the garden file.
 */

/** How a field is asked for and read. Measures are shown and typed in the reader's units, and kept in SI. */
export type FieldAs =
  | 'text'
  | 'day'
  | 'month-day'
  | 'time'
  | 'whole'
  | 'number'
  | MeasureAs
  | 'choice'
  | 'many'
  | 'check';

/** Fields that hold an amount with a unit: `height` above the sea or below it, `warmth` a difference of temperatures. */
export type MeasureAs = 'length' | 'height' | 'depth' | 'area' | 'volume' | 'temp' | 'warmth' | 'grams';

/** One of the things that can be chosen. */
export interface Option {
  value: string;
  words: string;
  /** What more is to know of it, beneath it; where all stand open. */
  more?: string;
  /** The heading it stands under. */
  group?: string;
}

/** A field of a form. */
export interface Field {
  /** The key of the row it is about, or a word of the form's own; with dots where the key is within another. */
  name: string;
  label: string;
  hint?: string;
  as: FieldAs;
  /** What can be chosen, of a `choice` or `many`. */
  options?: readonly Option[];
  /** What the row says, in the file's own unit; the row's value under this name where it is left out. */
  value?: unknown;
  /** A right value, in the file's own unit, for whoever gave a wrong one. */
  example?: number | string;
  /** Whether it has to be given; told by the file's schema where it is left out. */
  required?: boolean;
  /** Set where a box that is not ticked leaves the key out, in place of saying no. */
  unticked?: 'absent';
  /** Set where what is chosen is kept as a number. */
  isNumber?: true;
  /** Set where a day can only have happened: one to come is refused. */
  past?: true;
  /** Set where all that can be chosen stands open, each with a button of its own. */
  open?: true;
}

/** A log within a row: entries of the same fields, each of which can be changed and taken out, and one more added. */
export interface FieldRows {
  name: string;
  label: string;
  hint?: string;
  as: 'rows';
  /** One entry in words: "a look". */
  one: string;
  /** What the row says; the row's list under this name where it is left out. */
  value?: readonly unknown[];
  /** The fields of an entry. One alone, of the name `on`, where the log is a list of plain days. */
  fields(entry: object | undefined): readonly Field[];
  /** Set where an entry is nothing but the value of its one field. */
  plain?: true;
  /** An entry as the file has it, of what its fields say, where the two are not the same. */
  entryIn?(read: Readonly<Record<string, unknown>>): object;
}

/** Anything a form asks for. */
export type AnyField = Field | FieldRows;

/** Whether a field is a log. */
export function isRows(field: AnyField): field is FieldRows {
  return field.as === 'rows';
}

/** What a row says of a field. */
export function saidOf(field: AnyField, row: object | undefined): unknown {
  if (Object.hasOwn(field, 'value')) return field.value;
  return field.name
    .split('.')
    .reduce<unknown>(
      (held, key) => (typeof held === 'object' && held !== null ? Reflect.get(held, key) : undefined),
      row,
    );
}

/** The entries of a log, each as an object its fields can be asked of. */
export function entriesOf(field: FieldRows, row: object | undefined): object[] {
  const held = saidOf(field, row);
  if (!Array.isArray(held)) return [];
  return held.map((entry: unknown) =>
    typeof entry === 'object' && entry !== null ? entry : { [field.fields(undefined)[0]?.name ?? 'on']: entry },
  );
}

/** The name of an entry's field in a form, which is also its place in the row. */
export function entryName(rows: FieldRows, at: number, name: string): string {
  return `${rows.name}[${at}].${name}`;
}
