/**
 * What a garden file would change in a garden that is there, said before anything is changed.
 */
import type { Day } from '../measures/days.ts';
import { gardenFileOf } from './export-garden-file.ts';
import type { Garden } from './garden.ts';
import type { GardenFile } from './garden-file.ts';
import type { LedgerEntry } from './ledger.ts';
import { gardenOfFile, projectGarden } from './project.ts';

/** One difference between a garden as it stands and a file. */
export interface FileDifference {
  /** What differs: "plantings.north-bed-carrot-2027-05-20.sow". */
  path: string;
  now: string;
  file: string;
  /** Set when a reported fact stands against the file: whose word is kept. */
  keeps?: 'reported' | 'file';
}

/** How a file is to be brought in. */
export interface ImportTerms {
  prefer: 'reported' | 'file';
  /** The garden's day on which the file is read. */
  readOn: Day;
}

const NO_ITEM = 'not there';
const NO_VALUE = 'not given';

/**
 * What bringing a file into the garden of a ledger would change, and where a reported fact stands against it.
 *
 * @param next the file as read, its ids given with the garden's own file at hand
 * @returns nothing where the ledger holds no garden yet
 */
export function importDifferences(
  ledger: readonly LedgerEntry[],
  next: GardenFile,
  { prefer, readOn }: ImportTerms,
): FileDifference[] | undefined {
  const garden = projectGarden(ledger);
  if (garden === undefined) return undefined;
  const told = gardenFileOf(gardenOfFile(next, readOn, garden.startedOn, garden));
  const kept = projectGarden([...ledger, importedNext(ledger, next, { prefer: 'reported', readOn })]) ?? garden;
  const after = projectGarden([...ledger, importedNext(ledger, next, { prefer, readOn })]) ?? garden;
  const standing = new Set(fileDifferences(gardenFileOf(kept), told).map(sameness));
  const differences = fileDifferences(gardenFileOf(garden), told).map((difference) =>
    standing.has(sameness(difference)) ? { ...difference, keeps: prefer } : difference,
  );
  return [...differences, ...givenBack(garden, after)];
}

/** Work still to be done that was given to somebody who is no longer named: it belongs to nobody in particular again. */
function givenBack({ assigned, done }: Garden, after: Garden): FileDifference[] {
  const lost = Object.entries(assigned).filter(
    ([key]) => after.assigned[key] === undefined && !done.some((mark) => mark.key === key),
  );
  return [...new Set(lost.map(([, to]) => to))].map((name) => {
    const count = lost.filter(([, to]) => to === name).length;
    return { path: `work given to ${name}`, now: count === 1 ? '1 task' : `${count} tasks`, file: 'nobody’s' };
  });
}

/** The file as it would be brought in. */
function importedNext(ledger: readonly LedgerEntry[], file: GardenFile, { prefer, readOn }: ImportTerms): LedgerEntry {
  const last = ledger.at(-1);
  const [entry, recordedAt] = [(last?.entry ?? 0) + 1, last?.recordedAt ?? `${readOn}T00:00:00.000Z`];
  return { entry, recordedAt, recordedOn: readOn, by: '', fact: { kind: 'garden-imported', file, prefer } };
}

function sameness(difference: FileDifference): string {
  return JSON.stringify([difference.path, Object.values(difference)]);
}

/**
 * The differences between two garden files, items matched by id. Both must have their ids, and list their plans as
 * {@link gardenFileOf} does; a plan listed in one only is a difference.
 */
export function fileDifferences(from: GardenFile, to: GardenFile): FileDifference[] {
  return [
    ...valueDifferences('garden', from.garden, to.garden),
    ...valueDifferences('climate', from.climate, to.climate),
    ...itemDifferences('beds', from.beds, to.beds),
    ...itemDifferences('plantings', from.plantings, to.plantings),
    ...itemDifferences('coverStands', from.coverStands, to.coverStands),
    ...itemDifferences('bins', from.bins, to.bins),
    ...itemDifferences('piles', from.piles, to.piles),
    ...valueDifferences('topdressing', from.topdressing ?? {}, to.topdressing ?? {}),
    ...listDifferences('topdressed', from.topdressed, to.topdressed),
    ...listDifferences('fed', from.fed, to.fed),
    ...listDifferences('compostBought', from.compostBought, to.compostBought),
    ...valueDifferences('household', from.household ?? {}, to.household ?? {}),
    ...(
      ['away', 'gear', 'seeds', 'wishes', 'soilTests', 'soilSqueezes', 'diseases', 'coldNights', 'mulches'] as const
    ).flatMap((list) => listDifferences(list, from[list], to[list])),
  ];
}

type Item = { id?: string | undefined };

function itemDifferences(path: string, from: readonly Item[], to: readonly Item[]): FileDifference[] {
  const byId = (items: readonly Item[]) => new Map(items.map((item) => [item.id ?? '', item]));
  const [before, after] = [byId(from), byId(to)];
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((id) => {
    const [was, will] = [before.get(id), after.get(id)];
    if (was && will) return valueDifferences(`${path}.${id}`, was, will);
    return [difference(`${path}.${id}`, was && itemText(was), will && itemText(will), NO_ITEM)];
  });
}

function valueDifferences(path: string, from: object, to: object): FileDifference[] {
  const keys = [...new Set([...Object.keys(from), ...Object.keys(to)])];
  return keys.flatMap((key) => {
    const at = `${path}.${key}`;
    const [was, will]: [unknown, unknown] = [Reflect.get(from, key), Reflect.get(to, key)];
    if (isLog(key)) return listDifferences(at, asList(was), asList(will));
    if (isPlain(was) && isPlain(will)) return valueDifferences(at, was, will);
    return valueText(was) === valueText(will) ? [] : [difference(at, valueText(was), valueText(will), NO_VALUE)];
  });
}

/** Lists that grow: told line by line. Other lists are one value. */
function isLog(key: string): boolean {
  return ['regrowthChecked', 'regrowth', 'ingredients', 'readings', 'turns', 'monthlyNormals', 'members'].includes(key);
}

function asList(value: unknown): unknown[] {
  return Array.isArray(value) ? value : [];
}

function isPlain(value: unknown): value is object {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function listDifferences(path: string, from: readonly unknown[], to: readonly unknown[]): FileDifference[] {
  const [was, will] = [from.map(itemText), to.map(itemText)];
  return [
    ...without(was, will).map((text) => difference(path, text, undefined, NO_ITEM)),
    ...without(will, was).map((text) => difference(path, undefined, text, NO_ITEM)),
  ];
}

/** What is left of a list when each item of another has taken one equal item away. */
export function without(list: readonly string[], taken: readonly string[]): string[] {
  const left = [...list];
  for (const text of taken) {
    const at = left.indexOf(text);
    if (at >= 0) left.splice(at, 1);
  }
  return left;
}

function difference(path: string, was: string | undefined, will: string | undefined, absent: string): FileDifference {
  return { path, now: was ?? absent, file: will ?? absent };
}

/** An item on one line: "bed north-bed, crop carrot, sow 2027-05-20". */
function itemText(item: unknown): string {
  if (!isPlain(item)) return valueText(item) ?? '';
  return Object.entries(item)
    .filter(([key]) => key !== 'id')
    .flatMap(([key, value]) => {
      const text = valueText(value);
      return text === undefined ? [] : [`${key} ${text}`];
    })
    .join(', ');
}

/** A value in words; nothing for one that is not there, and for an empty list. */
function valueText(value: unknown): string | undefined {
  if (value === undefined || (Array.isArray(value) && value.length === 0)) return undefined;
  if (Array.isArray(value))
    return value.map((item) => (isPlain(item) ? `(${itemText(item)})` : String(item))).join(', ');
  return isPlain(value) ? itemText(value) : String(value);
}
