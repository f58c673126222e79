/**
 * What the check of the whole garden file says, laid on the fields of the form it comes from; and in a gardener's words
 * where it is about something else.
 */
import type { Garden } from '../../garden/garden.ts';
import type { GardenFile } from '../../garden/garden-file.ts';
import type { Problem } from '../../garden/problem.ts';
import type { FieldProblem } from './edit-form.ts';
import { type AnyField, isRows } from './field.ts';
import type { EditKind } from './kind.ts';
import { rowsOf } from './rows.ts';

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
}

interface LaidOnForm extends Laid {
  kind: EditKind;
}

interface Around {
  kinds: readonly EditKind[];
  file: GardenFile;
  garden: Garden;
}

/** Every problem at its field, or under the name of what it is about. */
export function laidProblems(problems: readonly Problem[], laid: Laid, around: Around): FieldProblem[] {
  const told = problems.map((problem) => {
    const own = laid.at.find((place) => problem.where === place || problem.where.startsWith(`${place}.`));
    const { kind } = laid;
    if (kind === undefined) return elsewhere(problem, around);
    if (own !== undefined) return onField(problem, problem.where.slice(own.length + 1), { ...laid, kind });
    const alike = saidTwice(problem, { ...laid, kind }, around);
    return alike === undefined ? elsewhere(problem, around) : onField(problem, alike, { ...laid, kind });
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

function onField({ what, mend }: Problem, path: string, { kind, fields, places }: LaidOnForm): FieldProblem {
  const place = path.replace(/^(\w+\[\d+\](?:\.\w+)?).*$/, '$1');
  const name = places.get(place) ?? places.get(place.replace(/\.\w+$/, '')) ?? kind.fieldOf?.(path) ?? path;
  const words = {
    what: what === 'is missing.' ? 'It is empty.' : inWords(what, fields, kind),
    mend: kind.mends?.[name] ?? inWords(mend, fields, kind),
  };
  const key = name.replace(/\[\d+\].*$/, '');
  const field = fields.find((each) => each.name === name) ?? fields.find((each) => each.name === key);
  if (field === undefined) return { where: capitalWord(kind.word), isOwn: true, ...words };
  const within = isRows(field) ? field.fields(undefined).find((each) => name.endsWith(`.${each.name}`)) : undefined;
  return { field: name, where: within === undefined ? field.label : `${field.label}, ${within.label}`, ...words };
}

function capitalWord(word: string): string {
  return `The ${word}`;
}

/** A problem with something that the form does not show: named as the gardener names it. */
function elsewhere(problem: Problem, { kinds, file, garden }: Around): FieldProblem {
  const [, of, at, path = ''] = /^(\w+)(?:\[(\d+)\])?\.?(.*)$/.exec(problem.where) ?? [];
  const kind = kinds.find((each) => each.of === of);
  const held = kind && file[kind.of];
  const row: unknown = Array.isArray(held) ? held[Number(at)] : held;
  if (kind === undefined || typeof row !== 'object' || row === null) return problem;
  const fields = kind.fields({ view: { garden } as never, file, row } as never);
  const { label } = fields.find(({ name }) => name === (kind.fieldOf?.(path) ?? path)) ?? {};
  const where = kind.titleOf(row as never, garden);
  return {
    where: label === undefined ? where : `${where}, ${label}`,
    what: inWords(problem.what, fields, kind),
    mend: inWords(problem.mend, fields, kind),
  };
}

/** A text of the file's check with the labels of fields in place of the file's keys. */
export function inWords(text: string, fields: readonly AnyField[], kind: Pick<EditKind, 'fieldOf'>): string {
  const plain = text.replace(/,? such as [a-z]\w*: \S*?(?=[:;,.]?(?:\s|$))/g, '');
  return plain.replace(/\b[a-z]+(?:[A-Z][A-Za-z0-9]*)+\b/g, (key) => {
    const name = kind.fieldOf?.(key) ?? key;
    const label = fields.find((field) => field.name === name)?.label;
    return label === undefined ? key : `“${label}”`;
  });
}
