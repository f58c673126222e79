/**
 * What speaks against a change: what was typed wrong, and what the check of the whole garden says of it.
 */
import { type Edit, editedFile } from '../../garden/edit.ts';
import type { GardenFile } from '../../garden/garden-file.ts';
import type { Problem } from '../../garden/problem.ts';
import type { EditForm, FieldProblem } from '../fields/edit-form.ts';
import type { AnyField } from '../fields/field.ts';
import { refusalsOf } from '../requests/refusals.ts';
import type { About, EditKind } from './kinds/kind.ts';
import { kinds } from './kinds.ts';
import { laidProblems } from './lay-problems.ts';

interface Tried {
  kind: EditKind;
  about: About;
  edits: readonly Edit[];
  read: EditForm;
  /** The row the form tells of, and what it was asked by. */
  row: object;
  fields: readonly AnyField[];
}

/** Everything that speaks against edits when they are tried out or kept, in the order of the form's fields. */
export async function refusedEdits(doing: () => Promise<unknown>, tried: Tried): Promise<FieldProblem[]> {
  const { kind, about, edits, read, row, fields } = tried;
  const refused = await refusalsOf(doing);
  const { file, view } = about;
  const at = refused.length === 0 ? [] : placesOf(file, edits);
  const laid = laidProblems(
    refused,
    { kind, fields, at, row, places: read.places, typed: (name) => read.texts(name) },
    { kinds, file, garden: view.garden },
  );
  const typed = new Set(read.problems.map(({ field }) => field));
  // A rule across several fields says nothing new where one of them was typed wrong.
  const news = laid.filter(({ field, isOwn }) =>
    field === undefined ? !isOwn || typed.size === 0 : !typed.has(field),
  );
  return inOrder([...read.problems, ...news], fields);
}

/** What speaks against taking something out, in words about what it is about. */
export function elsewhereProblems(refused: readonly Problem[], { file, view }: About): FieldProblem[] {
  const nowhere = {
    kind: undefined,
    fields: [],
    at: [],
    row: undefined,
    places: new Map<string, string>(),
    typed: () => [],
  };
  return laidProblems(refused, nowhere, { kinds, file, garden: view.garden });
}

/** Problems in the order their fields are asked for; those of no field last. */
function inOrder(problems: readonly FieldProblem[], fields: readonly AnyField[]): FieldProblem[] {
  const placeOf = ({ field = '' }: FieldProblem): number => {
    const at = fields.findIndex(({ name }) => name === field.replace(/\[.*$/, ''));
    return at < 0 ? fields.length : at;
  };
  return [...problems].sort((a, b) => placeOf(a) - placeOf(b));
}

/** Where the rows of edits stand in the file with them: "beds[2]". */
function placesOf(file: GardenFile, edits: readonly Edit[]): string[] {
  return editedFile(file, edits).refs.flatMap(({ list, at }) =>
    list === undefined ? [] : at === undefined ? [list] : [`${list}[${at}]`],
  );
}
