/**
 * From the text of a garden file to a garden file that can be trusted: every problem found is reported at once.
 */
import type { z } from 'zod';
import { type GardenFile, gardenFileSchema } from './garden-file.ts';
import { type HeldFile, withIds } from './ids.ts';
import { nameProblems, stationProblems } from './known-names.ts';
import { beforeItsBed } from './planned-beds.ts';
import { InputRefused, type Problem } from './problem.ts';
import { shareProblems } from './share-problems.ts';
import { spelt } from './spellings.ts';
import { successionProblems, withSowings } from './successions.ts';
import { yamlData } from './yaml-data.ts';

/**
 * Reads a garden file, YAML or JSON, checks it whole, gives every item its id and every later sowing of a succession a
 * planting of its own.
 *
 * @param text the file's text
 * @param existing the garden already held, as a file: items without an id take that of the item they name
 * @param stations ids of the weather stations there are; any id will do where they are not given
 * @throws {InputRefused} with every problem at once
 */
export function readGardenFile(text: string, existing?: HeldFile, stations?: ReadonlySet<string>): GardenFile {
  const read = yamlData(text);
  if ('problems' in read) throw refused(read.problems);
  return checkGardenFile(read.data, existing, stations);
}

/** Checks a garden file already turned into plain data. See {@link readGardenFile}. */
export function checkGardenFile(written: unknown, existing?: HeldFile, stations?: ReadonlySet<string>): GardenFile {
  const data = spelt(written);
  const parsed = gardenFileSchema.safeParse(data);
  const issues = parsed.error?.issues ?? [];
  const problems = [
    ...issues.filter((issue) => !isMoot(issue, issues)).flatMap((issue) => schemaProblems(issue, data)),
    ...nameProblems(data, existing),
    ...beforeItsBed(data, existing),
    ...stationProblems(data, stations),
    ...shareProblems(data, existing),
    ...(parsed.success ? successionProblems(parsed.data, existing) : []),
  ];
  if (!parsed.success || problems.length > 0) throw refused(problems);
  return withSowings(withIds(parsed.data, existing));
}

function refused(problems: Problem[]): InputRefused {
  const count = problems.length === 1 ? 'one problem' : `${problems.length} problems`;
  return new InputRefused(`The garden file cannot be used: ${count}.`, problems);
}

/** Whether a rule across an item's keys says nothing new because one of its keys is misspelt. */
function isMoot(issue: z.core.$ZodIssue, issues: readonly z.core.$ZodIssue[]): boolean {
  const path = pathText(issue.path);
  return (
    issue.code === 'custom' &&
    issues.some((other) => other.code === 'unrecognized_keys' && pathText(other.path) === path)
  );
}

function schemaProblems(issue: z.core.$ZodIssue, data: unknown): Problem[] {
  if (issue.code === 'unrecognized_keys') {
    const mends = issue.message.split('\n');
    return issue.keys.map((key, index) => ({
      where: pathText([...issue.path, key]),
      what: 'is not a key this file knows.',
      mend: mends[index] ?? issue.message,
    }));
  }
  const value = valueAt(data, issue.path);
  const what =
    value === undefined ? 'is missing.' : Number.isNaN(value) ? NO_NUMBER : `${shown(value)} cannot be used.`;
  return [{ where: pathText(issue.path), what, mend: issue.message }];
}

const NO_NUMBER = 'is no number.';

/** Longest value shown whole in a problem. */
const MOST_SHOWN = 80;

function shown(value: unknown): string {
  const text = typeof value === 'number' ? String(value) : JSON.stringify(value);
  return text.length > MOST_SHOWN ? `${text.slice(0, MOST_SHOWN)}…` : text;
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
