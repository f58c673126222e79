/**
 * A kind of thing in a garden that can be told, changed and taken out in a form: what every catalogue entry says.
 */
import type { Edit } from '../../../garden/edit.ts';
import type { Garden } from '../../../garden/garden.ts';
import type { GardenFile } from '../../../garden/garden-file.ts';
import type { GardenView } from '../../../steward/doings/steward.ts';
import type { ClimateChoices } from '../../climate/climate-choices.ts';
import type { EditForm } from '../../fields/edit-form.ts';
import type { AnyField } from '../../fields/field.ts';

/** What a form is made and read with. */
export interface About<Row = object> {
  /** The garden in its reader's units. Never written into a file. */
  view: GardenView;
  /** The garden as its file. */
  file: GardenFile;
  /** The weather stations around the garden; for kinds of its climate alone. */
  around?: ClimateChoices;
  /** The row that is changed; absent for one that is added. */
  row?: Row;
}

/** The rows of a list of the file, or a part of it. */
export type RowOf<Key extends keyof GardenFile> =
  NonNullable<GardenFile[Key]> extends readonly (infer Row)[] ? Row : NonNullable<GardenFile[Key]>;

/**
 * One kind. Everything is a method, so that kinds of many rows stand in one catalogue.
 */
export interface EditKind<Key extends keyof GardenFile = keyof GardenFile> {
  /** Its word in addresses, kebab-case. */
  readonly list: string;
  /** The list or part of the file it is kept in. */
  readonly of: Key;
  /** One of it: "bed". */
  readonly word: string;
  /** The heading of the form for something new, where it is not "Add a bed". */
  readonly adds?: string;
  /** Words under the heading. */
  readonly note?: string;
  /** The page of the handbook about it. */
  readonly docs?: string;
  /** Where in the handbook it is told how dates that its form shows are found, where it shows any. */
  readonly datesFrom?: readonly [page: string, anchor: string];
  /** Set where one cannot be taken out: the garden's own name and place, its climate. */
  readonly stays?: true;
  /** Set where it only adds: each of what it added is changed by another kind. */
  readonly onlyAdds?: true;
  /** The page of the running head it belongs under. */
  readonly here?: 'beds' | 'compost' | 'weather' | 'household';
  /** What a row is called: "Tomato in North bed, set out 28 May 2027". */
  titleOf(row: RowOf<Key>, garden: Garden): string;
  /** What is asked. */
  fields(about: About<RowOf<Key>>): readonly AnyField[];
  /** The row a form tells of, as the file has it. Left out where the fields have the names of its keys. */
  rowIn?(form: EditForm, about: About<RowOf<Key>>): object;
  /** The field that asks for a key of the row, where it has another name. */
  fieldOf?(key: string): string;
  /** How a field is put right that the check of the whole file refuses, where the file's own words are not the gardener's. */
  readonly mends?: Readonly<Record<string, string>>;
  /** What a form changes, where that is not just its one row. */
  edits?(row: object, about: About<RowOf<Key>>): readonly Edit[];
  /** The page it leads to when kept; without a row, the page one is added from. */
  back(garden: Garden, row?: RowOf<Key>): string;
  /** The page it leads to once taken out, where that is another. */
  backWithout?(garden: Garden): string;
}

/** The row a form tells of. */
export function rowOfForm(kind: EditKind, form: EditForm, about: About): object {
  const read = kind.rowIn?.(form, about as never);
  return read ?? form.row(kind.fields(about as never), about.row);
}
