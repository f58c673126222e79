/**
 * From the text of a garden file to a garden file that can be trusted: every problem found is reported at once.
 */
import { parseDocument } from 'yaml';
import type { z } from 'zod';
import { coverCrops } from '../handbook/cover-crops.ts';
import { coverMixes } from '../handbook/cover-mixes.ts';
import { feedstocks } from '../handbook/feedstocks.ts';
import { vegetables } from '../handbook/vegetables.ts';
import { type GardenFile, gardenFileSchema } from './garden-file.ts';
import { withIds } from './ids.ts';
import { suggestion } from './nearest-name.ts';
import { InputRefused, type Problem } from './problem.ts';

/**
 * Reads a garden file, YAML or JSON, checks it whole and gives every item its id.
 *
 * @param text the file's text
 * @param existing a garden file already held for this garden: items without an id take that of the item they name
 * @throws {InputRefused} with every problem at once
 */
export function readGardenFile(text: string, existing?: GardenFile): GardenFile {
  const document = parseDocument(text, { uniqueKeys: true });
  if (document.errors.length > 0) throw refused(document.errors.map(yamlProblem));
  return checkGardenFile(document.toJS({ maxAliasCount: 50 }), existing);
}

/** Checks a garden file already turned into plain data. See {@link readGardenFile}. */
export function checkGardenFile(data: unknown, existing?: GardenFile): GardenFile {
  const parsed = gardenFileSchema.safeParse(data);
  if (!parsed.success) throw refused(parsed.error.issues.flatMap((issue) => schemaProblems(issue, data)));
  const problems = [...unknownNames(parsed.data), ...brokenReferences(parsed.data)];
  if (problems.length > 0) throw refused(problems);
  return withIds(parsed.data, existing);
}

function refused(problems: Problem[]): InputRefused {
  const count = problems.length === 1 ? 'one problem' : `${problems.length} problems`;
  return new InputRefused(`The garden file cannot be used: ${count}.`, problems);
}

function yamlProblem(error: { message: string; linePos?: readonly { line: number }[] | undefined }): Problem {
  return {
    where: `line ${error.linePos?.[0]?.line ?? 1}`,
    what: `${error.message.split('\n')[0]}.`,
    mend: 'Check the indentation and the quotes on this line.',
  };
}

function schemaProblems(issue: z.core.$ZodIssue, data: unknown): Problem[] {
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({
      where: pathText([...issue.path, key]),
      what: 'is not a key this file knows.',
      mend: issue.message,
    }));
  }
  const value = valueAt(data, issue.path);
  const what = value === undefined ? 'is missing.' : `${JSON.stringify(value)?.slice(0, 80)} cannot be used.`;
  return [{ where: pathText(issue.path), what, mend: issue.message }];
}

/** A path as a reader finds it in the file: beds[2].lengthM. */
function pathText(path: readonly PropertyKey[]): string {
  const written = path.map((step) => (typeof step === 'number' ? `[${step}]` : `.${String(step)}`)).join('');
  return written === '' ? 'the file' : written.replace(/^\./, '');
}

function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, step) => (typeof value === 'object' && value !== null ? Reflect.get(value, step) : undefined),
    data,
  );
}

function unknownNames(file: GardenFile): Problem[] {
  const crops = vegetables.map((row) => row.id);
  const covers = coverCrops.map((row) => row.id);
  const mixes = coverMixes.map((row) => row.id);
  const materials = feedstocks.map((row) => row.id);
  return [
    ...file.plantings.flatMap((row, i) => missing(`plantings[${i}].crop`, row.crop, crops, 'crop')),
    ...file.coverStands.flatMap((row, i) => [
      ...missing(`coverStands[${i}].cover`, row.cover, covers, 'cover crop'),
      ...missing(`coverStands[${i}].mix`, row.mix, mixes, 'mix'),
    ]),
    ...file.piles.flatMap((pile, i) =>
      pile.ingredients.flatMap((row, j) =>
        missing(`piles[${i}].ingredients[${j}].material`, row.material, materials, 'material'),
      ),
    ),
  ];
}

function brokenReferences(file: GardenFile): Problem[] {
  const beds = namesOf(file.beds);
  const bins = namesOf(file.bins);
  return [
    ...repeated('beds', file.beds),
    ...repeated('bins', file.bins),
    ...repeatedIds('plantings', file.plantings),
    ...repeatedIds('coverStands', file.coverStands),
    ...repeatedIds('piles', file.piles),
    ...file.plantings.flatMap((row, i) => missing(`plantings[${i}].bed`, row.bed, beds, 'bed')),
    ...file.coverStands.flatMap((row, i) => missing(`coverStands[${i}].bed`, row.bed, beds, 'bed')),
    ...file.topdressed.flatMap((row, i) => missing(`topdressed[${i}].bed`, row.bed, beds, 'bed')),
    ...file.piles.flatMap((row, i) => missing(`piles[${i}].bin`, row.bin, bins, 'bin')),
  ];
}

function namesOf(items: readonly { id?: string | undefined; name: string }[]): string[] {
  return items.flatMap((item) => (item.id === undefined ? [item.name] : [item.id, item.name]));
}

function missing(where: string, name: string | undefined, known: readonly string[], noun: string): Problem[] {
  if (name === undefined || known.includes(name)) return [];
  return [{ where, what: `"${name}" is not a known ${noun}.`, mend: suggestion(name, known) }];
}

function repeated(where: string, items: readonly { id?: string | undefined; name: string }[]): Problem[] {
  const names = items.map((item) => item.name);
  const twice = names.filter((name, index) => names.indexOf(name) !== index);
  return [
    ...twice.map((name) => ({ where, what: `"${name}" is named twice.`, mend: 'Give each its own name.' })),
    ...repeatedIds(where, items),
  ];
}

function repeatedIds(where: string, items: readonly { id?: string | undefined }[]): Problem[] {
  const ids = items.flatMap((item) => (item.id === undefined ? [] : [item.id]));
  const twice = ids.filter((name, index) => ids.indexOf(name) !== index);
  return twice.map((name) => ({ where, what: `The id "${name}" is used twice.`, mend: 'Give each its own id.' }));
}
