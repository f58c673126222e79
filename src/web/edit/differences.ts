/**
 * What differs between two rows, field by field, in words.
 */
import { without } from '../../garden/file-difference.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { type AnyField, entriesOf, type Field, type FieldRows, isRows, saidOf } from '../fields/field.ts';
import { wordsOfValue } from '../fields/shown.ts';

/** A field that says something else. */
export interface FieldDifference {
  label: string;
  /** What it said, and what it says; absent where it said nothing. */
  from?: string;
  to?: string;
}

/** A row as its fields tell it. */
export interface AskedRow {
  fields: readonly AnyField[];
  row: object | undefined;
}

/** The differences between a row and what is to take its place. */
export function rowDifferences(was: AskedRow, will: AskedRow, units: UnitSystem): FieldDifference[] {
  return will.fields.flatMap((field) => {
    const before = was.fields.find(({ name }) => name === field.name) ?? field;
    if (isRows(field)) return isRows(before) ? logDifferences([before, was.row], [field, will.row], units) : [];
    if (isRows(before)) return [];
    const from = wordsOfValue(before, saidOf(before, was.row), units);
    const to = wordsOfValue(field, saidOf(field, will.row), units);
    const same = JSON.stringify(saidOf(before, was.row)) === JSON.stringify(saidOf(field, will.row)) || from === to;
    return same ? [] : [difference(field.label, from, to)];
  });
}

type Log = [field: FieldRows, row: object | undefined];

function logDifferences(was: Log, will: Log, units: UnitSystem): FieldDifference[] {
  const [before, after] = [was, will].map(([field, row]) =>
    entriesOf(field, row).map((each) => entryInWords(field, each, units)),
  );
  const [label, gone, come] = [will[0].label, without(before ?? [], after ?? []), without(after ?? [], before ?? [])];
  return [
    ...gone.map((words) => difference(label, words, undefined)),
    ...come.map((words) => difference(label, undefined, words)),
  ];
}

/** An entry of a log on one line. */
function entryInWords(rows: FieldRows, entry: object, units: UnitSystem): string {
  return rows
    .fields(entry)
    .flatMap((field: Field) => {
      const value = saidOf(field, entry);
      if (field.as === 'check') return value === true ? [field.label] : [];
      return wordsOfValue(field, value, units) ?? [];
    })
    .join(', ');
}

function difference(label: string, from: string | undefined, to: string | undefined): FieldDifference {
  return { label, ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) };
}
