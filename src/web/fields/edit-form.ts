/**
 * A form about a row, read: what was typed becomes a row of the garden file, and everything that is wrong is told at its
 * field.
 */
import { limitsOf } from '../../garden/file-limits.ts';
import type { GardenFile } from '../../garden/garden-file.ts';
import type { Problem } from '../../garden/problem.ts';
import type { Day } from '../../measures/days.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { Form } from '../requests/form.ts';
import { type AnyField, entriesOf, entryName, type Field, type FieldRows, isRows, saidOf } from './field.ts';
import { readField } from './read-field.ts';
import type { Texts } from './shown.ts';

/** A problem with the field it lies on, where it lies on one. */
export interface FieldProblem extends Problem {
  field?: string;
  /** Set where it is about the row as a whole. */
  isOwn?: true;
}

/** The row a form was filled from, as it was asked and as it was shown. */
export interface FilledFrom {
  row: object | undefined;
  fields: readonly AnyField[];
  texts: Texts;
}

interface EditFormParts {
  form: Form;
  /** The units the form was shown in. */
  units: UnitSystem;
  /** Days after it are still to come; absent where no garden stands yet. */
  today?: Day;
  /** The list or part of the file that the row belongs to. */
  of: keyof GardenFile;
  from: FilledFrom;
}

/** Said of a day to come where there can be none. */
const TO_COME = { what: 'That day is still to come.', mend: 'Give a day up to today; tell it once it has happened.' };

/** A form as sent. */
export class EditForm {
  readonly problems: FieldProblem[] = [];
  /** Where things of the row are asked for, by their path in it, where that is another name than the path. */
  readonly places = new Map<string, string>();
  readonly units: UnitSystem;
  readonly #parts: EditFormParts;

  constructor(parts: EditFormParts) {
    this.#parts = parts;
    this.units = parts.units;
  }

  /** The one text of a field, without space around it; empty when it was not sent. */
  text(name: string): string {
    return this.#parts.form.text(name);
  }

  /** Everything that was typed or chosen in a field. */
  texts(name: string): string[] {
    return this.#parts.form
      .list(name)
      .map((text) => text.trim())
      .filter((text) => text !== '');
  }

  /** Says what is wrong with a field, under its label. */
  refuse(field: Pick<Field, 'name' | 'label'>, what: string, mend: string): void {
    this.problems.push({ field: field.name, where: field.label, what, mend });
  }

  /** The values of some fields, by their names; nothing under a name where the field is empty or wrong. */
  read(fields: readonly AnyField[]): Record<string, unknown> {
    const read: Record<string, unknown> = {};
    for (const field of fields) {
      read[field.name] = isRows(field) ? this.#entries(field) : this.#value(field, field.name, true);
    }
    return read;
  }

  /** A row with what its fields say; what they do not ask for stays as it was. */
  row(fields: readonly AnyField[], old: object | undefined): Record<string, unknown> {
    const row: Record<string, unknown> = { ...old };
    for (const [name, value] of Object.entries(this.read(fields))) setAt(row, name.split('.'), value);
    return row;
  }

  /** A field's value: that of the row it was filled from where nobody touched it, so that no unit rounds it. */
  #value(field: Field, name: string, isNeeded: boolean): unknown {
    const { form, from, of, units, today } = this.#parts;
    const texts = sentTexts(form, field, name);
    const before = from.texts.get(name);
    if (before !== undefined && before.length > 0 && sameTexts(texts, before)) return valueFrom(from, name);
    const path = name.replace(/\[\d+\]/g, '');
    const limits = limitsOf(of, path);
    const required = isNeeded && (field.required ?? limits.required);
    const { value, problem } = readField({ field, texts, units, limits: { ...limits, required } });
    if (problem !== undefined) this.problems.push({ ...problem, field: name, where: field.label });
    if (field.past && today !== undefined && typeof value === 'string' && value > today)
      this.problems.push({ ...TO_COME, field: name, where: field.label });
    return value;
  }

  /** The entries of a log, without those that are ticked to be taken out and the empty one. */
  #entries(rows: FieldRows): unknown[] {
    const entries: unknown[] = [];
    for (let at = 0; at < this.#count(rows); at += 1) {
      const before = entriesOf(rows, this.#parts.from.row)[at];
      const fields = rows.fields(before);
      if (this.text(entryName(rows, at, 'gone')) === 'yes') continue;
      const isEmpty = fields.every((field) => {
        return sentTexts(this.#parts.form, field, entryName(rows, at, field.name)).length === 0;
      });
      if (isEmpty) continue;
      const place = `${rows.name}[${entries.length}]`;
      const read: Record<string, unknown> = { ...before };
      for (const field of fields) {
        const name = entryName(rows, at, field.name);
        setAt(read, field.name.split('.'), this.#value(field, name, true));
        this.places.set(rows.plain ? place : `${place}.${field.name}`, name);
      }
      const [first] = fields;
      if (first !== undefined) this.places.set(place, entryName(rows, at, first.name));
      entries.push(rows.plain ? read[first?.name ?? ''] : (rows.entryIn?.(read) ?? read));
    }
    return entries.filter((entry) => entry !== undefined);
  }

  /** Groups of fields sent for a log. */
  #count({ name }: FieldRows): number {
    const places = this.#parts.form.names().map((sent) => {
      const [, list, at] = /^(\w+)\[(\d{1,3})\]\./.exec(sent) ?? [];
      return list === name ? Number(at) + 1 : 0;
    });
    return Math.max(0, ...places);
  }
}

/** What was sent for a field, without empty texts. */
function sentTexts(form: Form, { as }: Field, name: string): string[] {
  const sent = as === 'month-day' ? [monthDayIn(form, name)] : form.list(name);
  return sent.map((text) => text.trim()).filter((text) => text !== '');
}

/** Month and day are chosen one by one, and are one text together. */
function monthDayIn(form: Form, name: string): string {
  const [month, dayOfMonth] = [form.text(`${name}:month`), form.text(`${name}:day`)];
  return month === '' && dayOfMonth === '' ? '' : `${month}-${dayOfMonth}`;
}

/** Everything that was sent, so that the form comes back as it was filled in. */
export function textsSent(form: Form, fields: readonly AnyField[]): Map<string, string[]> {
  const texts = new Map(form.names().map((name) => [name, form.list(name)]));
  for (const field of fields) if (field.as === 'month-day') texts.set(field.name, sentTexts(form, field, field.name));
  return texts;
}

/** Of several things ticked a browser sends the order they stand in on the page, which says nothing. */
function sameTexts(texts: readonly string[], before: readonly string[]): boolean {
  return texts.length === before.length && texts.every((text) => before.includes(text));
}

/** The value a field of a form was filled from, by the name it was sent under. */
function valueFrom({ row, fields }: FilledFrom, name: string): unknown {
  const [, list, at, key] = /^(.+?)\[(\d+)\]\.(.+)$/.exec(name) ?? [];
  const field = fields.find((each) => each.name === (list ?? name));
  if (field === undefined) return undefined;
  if (!isRows(field)) return saidOf(field, row);
  const entry = entriesOf(field, row)[Number(at)];
  const asked = field.fields(entry).find((each) => each.name === key);
  return asked && saidOf(asked, entry);
}

/** Puts a value under a key, or a key within a key; nothing is left of what is not there. */
function setAt(row: Record<string, unknown>, [key = '', ...within]: readonly string[], value: unknown): void {
  if (within.length === 0) {
    if (value === undefined) delete row[key];
    else row[key] = value;
    return;
  }
  const held = row[key];
  const inner: Record<string, unknown> = typeof held === 'object' && held !== null ? { ...held } : {};
  setAt(inner, within, value);
  if (Object.keys(inner).length === 0) delete row[key];
  else row[key] = inner;
}
