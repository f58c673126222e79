/**
 * What a change to the garden's facts changed, in words.
 */
import type { FieldChange, RowChange, StoredEdit } from '../garden/stored-edit.ts';
import { capital } from '../measures/capital.ts';
import { keyInWords, type RowReader, rowInWords, type TellableRow, valueInWords } from './row-words.ts';
import { fullDay } from './words.ts';

/** Changes in one line: "North bed changed: length from 2.4 m to 3 m". */
export function mendInWords(edits: readonly StoredEdit[], reader: RowReader): string {
  return mendLines(edits, reader).join('; ');
}

/** The same, a line for each saying. */
export function mendLines(edits: readonly StoredEdit[], reader: RowReader): string[] {
  return alike(edits.map((edit) => editInWords(edit, reader)));
}

/** The same said of several things is said once. */
function alike(told: readonly { about: string; says: string }[]): string[] {
  const bySaying = new Map<string, string[]>();
  for (const { about, says } of told) bySaying.set(says, [...(bySaying.get(says) ?? []), about]);
  return [...bySaying].map(([says, about]) => `${capital(about.join(', '))} ${says}`);
}

function editInWords(edit: StoredEdit, reader: RowReader): { about: string; says: string } {
  switch (edit.how) {
    case 'added':
      return { about: rowInWords(edit.list, edit.row, reader), says: 'added' };
    case 'gone':
      return { about: rowInWords(edit.list, edit.row, reader), says: 'taken out' };
    case 'changed': {
      const about = rowInWords(edit.list, edit.goesBy, reader);
      const logs = edit.logs.flatMap(({ key, rows }) => rows.map((row) => logInWords(key, row, reader)));
      return {
        about,
        says: `changed: ${[...edit.fields.map((field) => fieldInWords(field, reader)), ...logs].join(', ')}`,
      };
    }
    case 'row':
      return rowChanged(edit, reader);
    case 'part-changed': {
      const about = edit.part === 'garden' ? 'the garden' : 'the household';
      return { about, says: `changed: ${edit.fields.map((field) => fieldInWords(field, reader)).join(', ')}` };
    }
    case 'part-replaced': {
      const about = edit.part === 'climate' ? 'the climate it is planned by' : 'the yearly layer of compost';
      const [was, is] = [edit.was, edit.row].map((row) => row && partInWords(row, reader));
      if (is === undefined) return { about, says: `no longer given${was === undefined ? '' : `: ${was}`}` };
      return { about, says: was === undefined ? `given: ${is}` : `changed from ${was} to ${is}` };
    }
    case 'days':
      return { about: `weather of ${daysInWords(edit.days, reader)}`, says: 'given anew' };
    case 'days-gone':
      return { about: `weather of ${daysInWords(edit.days, reader)}`, says: 'taken out' };
    default:
      return edit satisfies never;
  }
}

function rowChanged({ list, was, row }: Extract<StoredEdit, { how: 'row' }>, reader: RowReader) {
  if (was === undefined) return { about: rowInWords(list, row ?? {}, reader), says: 'added' };
  if (row === undefined) return { about: rowInWords(list, was, reader), says: 'taken out' };
  const keys = [...new Set([...Object.keys(was), ...Object.keys(row)])];
  const fields = keys
    .filter((key) => JSON.stringify(was[key]) !== JSON.stringify(row[key]))
    .map((key) => fieldInWords({ key, was: was[key], is: row[key] }, reader));
  return { about: rowInWords(list, was, reader), says: `changed: ${fields.join(', ')}` };
}

function fieldInWords({ key, was, is }: FieldChange, reader: RowReader): string {
  const word = keyInWords(key);
  if (is === undefined) return `${word} no longer given (${valueInWords(key, was, reader)})`;
  if (was === undefined) return `${word} ${valueInWords(key, is, reader)}`;
  return `${word} from ${valueInWords(key, was, reader)} to ${valueInWords(key, is, reader)}`;
}

function logInWords(key: string, { was, row }: RowChange, reader: RowReader): string {
  const [from, to] = [was, row].map((each) => (each === undefined ? undefined : valueInWords(key, each, reader)));
  if (key === 'planned') return to === undefined ? `${from} has happened` : `${to} is still to come`;
  const word = keyInWords(key);
  if (from === undefined) return `${word} added (${to})`;
  return to === undefined ? `${word} taken out (${from})` : `${word} changed (${from}, now ${to})`;
}

function partInWords(row: TellableRow, reader: RowReader): string {
  return Object.entries(row)
    .map(([key, value]) => {
      if (key === 'nearest') return 'the nearest stations';
      return Array.isArray(value) ? keyInWords(key) : `${keyInWords(key)} ${valueInWords(key, value, reader)}`;
    })
    .join(', ');
}

function daysInWords(days: readonly { day: string }[], { units }: RowReader): string {
  const [first, last] = [days[0]?.day ?? '', days.at(-1)?.day ?? ''];
  if (days.length === 1) return fullDay(first, units);
  return `${days.length} days, ${fullDay(first, units)} to ${fullDay(last, units)}`;
}
