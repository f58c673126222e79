/**
 * What the check of the whole garden file says, laid on the fields of the form it comes from; and in a gardener's words
 * where it is about something else.
 */
import { keyInWords } from '../../digest/row-words.ts';
import { fullDay } from '../../digest/words.ts';
import type { Garden } from '../../garden/garden.ts';
import type { GardenFile } from '../../garden/garden-file.ts';
import type { Problem } from '../../garden/problem.ts';
import { isDay } from '../../measures/days.ts';
import { formatQuantity } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { FieldProblem } from '../fields/edit-form.ts';
import { type AnyField, isRows, saidOf } from '../fields/field.ts';
import { wordsOfTexts, wordsOfValue } from '../fields/shown.ts';
import type { EditKind } from './kinds/kind.ts';
import { rowsOf } from './kinds/rows.ts';

interface Laid {
  /** Absent where there is no form. */
  kind: EditKind | undefined;
  fields: readonly AnyField[];
  /** Places in the file where the rows of the form stand or would stand: "beds[2]". */
  at: readonly string[];
  /** The row as the form tells it. */
  row: object | undefined;
  /** The names fields of the form were sent under, by their path in the row. */
  places: ReadonlyMap<string, string>;
  /** What was typed into a field, by the name it was sent under. */
  typed: (name: string) => readonly string[];
}

interface LaidOnForm extends Laid {
  kind: EditKind;
}

interface Around {
  kinds: readonly EditKind[];
  file: GardenFile;
  /** The garden in its reader's units. */
  garden: Garden;
}

/** Every problem at its field, or under the name of what it is about. */
export function laidProblems(problems: readonly Problem[], laid: Laid, around: Around): FieldProblem[] {
  const told = problems.map((problem) => {
    const own = laid.at.find((place) => problem.where === place || problem.where.startsWith(`${place}.`));
    const { kind } = laid;
    if (kind === undefined) return elsewhere(problem, around);
    if (own !== undefined)
      return onField(problem, problem.where.slice(own.length + 1), { ...laid, kind }, around.garden.place.units);
    const alike = saidTwice(problem, { ...laid, kind }, around);
    return alike === undefined
      ? elsewhere(problem, around)
      : onField(problem, alike, { ...laid, kind }, around.garden.place.units);
  });
  return told.filter(
    (each, at) => told.findIndex((other) => other.where === each.where && other.what === each.what) === at,
  );
}

/** The key that the form's row has in common with another row, where that one is refused for it: two of one name. */
function saidTwice({ where }: Problem, { kind, row }: LaidOnForm, { file }: Around): string | undefined {
  const [, list, at, key = ''] = /^(\w+)\[(\d+)\]\.(\w+)$/.exec(where) ?? [];
  if (list !== kind.of || row === undefined || !['id', 'name', 'crop'].includes(key)) return undefined;
  const other = rowsOf(kind, file)[Number(at)];
  return other !== undefined && Reflect.get(other, key) === Reflect.get(row, key) ? key : undefined;
}

function onField(problem: Problem, path: string, laid: LaidOnForm, units: UnitSystem): FieldProblem {
  const { kind, fields, places } = laid;
  const place = path.replace(/^(\w+\[\d+\](?:\.\w+)?).*$/, '$1');
  const name = places.get(place) ?? places.get(place.replace(/\.\w+$/, '')) ?? kind.fieldOf?.(path) ?? path;
  const key = name.replace(/\[\d+\].*$/, '');
  const field = fields.find((each) => each.name === name) ?? fields.find((each) => each.name === key);
  const within =
    field !== undefined && isRows(field)
      ? field.fields(undefined).find((each) => name.endsWith(`.${each.name}`))
      : undefined;
  const asked = within ?? (field !== undefined && !isRows(field) ? field : undefined);
  const words = {
    what: whatInWords(problem.what, asked && wordsOfTexts(asked, laid.typed(name), units), fields, { kind, units }),
    mend: kind.mends?.[name.replace(/\[\d+\]/g, '')] ?? inWords(problem.mend, fields, { kind, units }),
  };
  if (field === undefined) return { where: `The ${kind.word}`, isOwn: true, ...words };
  return { field: name, where: within === undefined ? field.label : `${field.label}, ${within.label}`, ...words };
}

/** What is wrong, with the value as it was typed or is shown in place of what the file makes of it. */
function whatInWords(
  what: string,
  said: string | undefined,
  fields: readonly AnyField[],
  reader: { kind: Pick<EditKind, 'fieldOf'>; units: UnitSystem },
): string {
  if (what === 'is missing.') return 'It is empty.';
  if (!what.endsWith(' cannot be used.')) return inWords(what, fields, reader);
  return said === undefined ? 'What stands here does not go together.' : `“${said}” cannot be used.`;
}

/** A problem with something that the form does not show: named as the gardener names it. */
function elsewhere(problem: Problem, { kinds, file, garden }: Around): FieldProblem {
  const [, of, at, path = ''] = /^(\w+)(?:\[(\d+)\])?\.?(.*)$/.exec(problem.where) ?? [];
  const kind = kinds.find((each) => each.of === of);
  const held = kind && file[kind.of];
  const row: unknown = Array.isArray(held) ? held[Number(at)] : held;
  if (kind === undefined || typeof row !== 'object' || row === null) return problem;
  const fields = kind.fields({ view: { garden } as never, file, row } as never);
  const named = kind.fieldOf?.(path) ?? path;
  const [key = ''] = named.split('[');
  const field = fields.find(({ name }) => name === named || name === key);
  const where = kind.titleOf(row as never, garden);
  const { units } = garden.place;
  const said = field === undefined || isRows(field) ? undefined : wordsOfValue(field, saidOf(field, row), units);
  return {
    where: field === undefined ? where : `${where}, ${field.label}`,
    what: whatInWords(problem.what, said, fields, { kind, units }),
    mend: kind.mends?.[named.replace(/\[\d+\]/g, '')] ?? inWords(problem.mend, fields, { kind, units }),
  };
}

/** A text of the file's check with labels in place of keys, names for ids, and days and areas as the reader has them. */
function inWords(
  text: string,
  fields: readonly AnyField[],
  { kind, units }: { kind: Pick<EditKind, 'fieldOf'>; units: UnitSystem },
): string {
  const labelled = (key: string): string | undefined => {
    const name = kind.fieldOf?.(key) ?? key;
    const label = fields.find((field) => field.name === name)?.label;
    return label === undefined ? undefined : `“${label}”`;
  };
  return text
    .replace(/,? such as [a-z]\w*: \S*?(?=[:;,.]?(?:\s|$))/g, '')
    .replace(/"([^"]+)"/g, (quoted, word: string) => labelled(word) ?? optionNamed(fields, word) ?? quoted)
    .replace(/\b[a-z]+(?:[A-Z][A-Za-z0-9]*)+\b/g, (key) => labelled(key) ?? keyInWords(key))
    .replace(/\b\d{4}-\d{2}-\d{2}\b/g, (day) => (isDay(day) ? fullDay(day, units) : day))
    .replace(AREA, (_area, value: string) => formatQuantity({ value: Number(value), unit: 'm2' }, units));
}

/** An area as the file's check writes it, square feet behind it for whoever has them. */
const AREA = /(\d+(?:\.\d+)?) m²(?: \([^)]*\))?/g;

/** The name of something that can be chosen, where a text has its id. */
function optionNamed(fields: readonly AnyField[], id: string): string | undefined {
  const options = fields.flatMap((field) => (isRows(field) ? [] : (field.options ?? [])));
  const words = options.find(({ value }) => value === id || value.endsWith(`:${id}`))?.words;
  return words === undefined ? undefined : `“${words}”`;
}
