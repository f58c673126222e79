/**
 * Whether the names in a garden file lead anywhere: crops, covers and materials to the handbook, beds and bins to the
 * file itself. Works on plain data that may be wrong in other ways, so that every problem shows at once.
 */
import { coverCrops } from '../handbook/cover-crops.ts';
import { coverMixes } from '../handbook/cover-mixes.ts';
import { feedstocks } from '../handbook/feedstocks.ts';
import { fertilisers } from '../handbook/fertilisers.ts';
import { vegetables } from '../handbook/vegetables.ts';
import type { GardenFile } from './garden-file.ts';
import { slug } from './ids.ts';
import { suggestion } from './nearest-name.ts';
import type { Problem } from './problem.ts';

/** A station that is not in the table, where the table is known. */
export function stationProblems(file: unknown, stations: ReadonlySet<string> | undefined): Problem[] {
  const station = valueAt(valueAt(file, 'climate'), 'station');
  if (stations === undefined || typeof station !== 'string' || station.trim() === '') return [];
  return stations.has(station.trim()) ? [] : [unknownStation(station.trim())];
}

/** What is wrong with a station nobody knows, and how to find one. */
export function unknownStation(id: string): Problem {
  return {
    where: 'climate.station',
    what: `"${id}" is not in the built-in table.`,
    mend: 'Find one with: loamtide near --lat 43.1 --lon -89.4',
  };
}

function valueAt(held: unknown, key: string): unknown {
  return typeof held === 'object' && held !== null ? Reflect.get(held, key) : undefined;
}

interface Item {
  where: string;
  row: object;
  /** Set for a word of a list, which has its place there and no key. */
  isWord?: true;
}

/**
 * Names in a file that nothing is known by, and names and ids used twice.
 *
 * @param existing the garden already held, as a file: its beds and bins may be named by the ids they have there
 */
export function nameProblems(file: unknown, existing?: GardenFile): Problem[] {
  const [beds, bins] = [itemsOf(file, 'beds'), itemsOf(file, 'bins')];
  const [plantings, stands, piles] = [itemsOf(file, 'plantings'), itemsOf(file, 'coverStands'), itemsOf(file, 'piles')];
  const [seeds, diseases, wishes] = [itemsOf(file, 'seeds'), itemsOf(file, 'diseases'), itemsOf(file, 'wishes')];
  const dated = ['topdressed', 'soilTests', 'mulches', 'fed'].flatMap((list) => itemsOf(file, list));
  const inBeds = [...plantings, ...stands, ...dated, ...diseases];
  const seen = stands.flatMap(({ where, row }) => itemsOf(row, 'seen', where));
  const resown = stands.flatMap(({ where, row }) => itemsOf(row, 'resown', where));
  const sown = stands.flatMap(({ where, row }) => itemsOf(row, 'seed', where));
  const ingredients = piles.flatMap(({ where, row }) => itemsOf(row, 'ingredients', where));
  const members = itemsOf(valueAt(file, 'household'), 'members', 'household');
  const theirBeds = members.flatMap((item) => wordsListed(item, 'beds', 'bed'));
  const fed = itemsOf(file, 'fed');
  const topdressed = itemsOf(file, 'topdressed');
  const drawnOn = topdressed.flatMap((item) => wordsListed(item, 'piles', 'pile'));
  return [
    ...[beds, bins, members].flatMap((items) => repeated(items, 'name')),
    ...[beds, bins, plantings, stands, piles, members].flatMap((items) => repeated(items, 'id')),
    ...[plantings, seeds, diseases, wishes].flatMap((items) => unknown(items, 'crop', idsOf(vegetables), 'crop')),
    ...wishes.flatMap((wish, at) => wishProblems(wish, wishes.slice(0, at))),
    ...[stands, seeds, seen, resown, sown].flatMap((items) => unknown(items, 'cover', idsOf(coverCrops), 'cover crop')),
    ...[stands, resown].flatMap((items) => unknown(items, 'mix', idsOf(coverMixes), 'mix')),
    ...unknown([...ingredients, ...topdressed], 'material', idsOf(feedstocks), 'material'),
    ...unknown(fed, 'fertiliser', idsOf(fertilisers), 'fertiliser'),
    ...unknown(fed, 'planting', plantingIdsOf(plantings, existing), 'planting'),
    ...unknown(drawnOn, 'pile', pileIdsOf(piles, existing), 'pile'),
    ...unknown(inBeds, 'bed', namesOf(beds, existing?.beds), 'bed'),
    ...unknown(theirBeds, 'bed', namesOf(beds, existing?.beds), 'bed'),
    ...unknown(piles, 'bin', namesOf(bins, existing?.bins), 'bin'),
  ];
}

/** A crop is wished once a year, and a lasting one is planted by hand: where it goes it stays. */
function wishProblems(wish: Item, before: readonly Item[]): Problem[] {
  const word = textOf(wish, 'crop');
  const year: unknown = Reflect.get(wish.row, 'year');
  const where = `${wish.where}.crop`;
  const lasting = vegetables.some(({ id, rotationYears }) => id === word && rotationYears >= LASTING_YEARS);
  const twice = before.some((other) => textOf(other, 'crop') === word && Reflect.get(other.row, 'year') === year);
  return [
    ...(lasting
      ? [{ where, what: `"${word}" stays where it is planted.`, mend: 'Choose its bed yourself, and add a planting.' }]
      : []),
    ...(word !== undefined && twice
      ? [{ where, what: `"${word}" is wished twice for the same year.`, mend: 'Put the two amounts together.' }]
      : []),
  ];
}

/** Years a crop's row names where it never leaves its bed. */
const LASTING_YEARS = 99;

function itemsOf(held: unknown, list: string, within?: string): Item[] {
  const rows = valueAt(held, list);
  if (!Array.isArray(rows)) return [];
  const path = within === undefined ? list : `${within}.${list}`;
  return rows.flatMap((row: unknown, index) =>
    typeof row === 'object' && row !== null ? [{ where: `${path}[${index}]`, row }] : [],
  );
}

/** The words of an item's list of beds or piles, each as an item of its own that has it under a key. */
function wordsListed({ where, row }: Item, list: string, key: string): Item[] {
  const words = valueAt(row, list);
  if (!Array.isArray(words)) return [];
  return words.map((word: unknown, at) => ({ where: `${where}.${list}[${at}]`, row: { [key]: word }, isWord: true }));
}

/** Ids piles were written with, were held by, or will be given. */
function pileIdsOf(piles: readonly Item[], existing: GardenFile | undefined): string[] {
  const held = (existing?.piles ?? []).flatMap(({ id }) => id ?? []);
  const written = piles.map(
    (pile) => textOf(pile, 'id') ?? slug(`${textOf(pile, 'bin') ?? ''} ${textOf(pile, 'built') ?? ''}`),
  );
  return [...new Set([...written, ...held])];
}

/** Ids plantings were written with, their sowings again included, were held by, or will be given. */
function plantingIdsOf(plantings: readonly Item[], existing: GardenFile | undefined): string[] {
  const held = (existing?.plantings ?? []).flatMap(({ id }) => id ?? []);
  const written = plantings.flatMap((planting) => {
    const id = textOf(planting, 'id');
    if (id === undefined) return madeOf(planting);
    const times: unknown = valueAt(valueAt(planting.row, 'again'), 'times');
    const again =
      typeof times === 'number'
        ? Array.from({ length: Math.min(times, MOST_AGAIN) }, (_, at) => `${id}-${at + 2}`)
        : [];
    return [id, ...again];
  });
  return [...new Set([...written, ...held])];
}

/** Times a file may have a crop sown again. */
const MOST_AGAIN = 26;

/** The id a planting without one will be given, its bed called by its name or its id. */
function madeOf(planting: Item): string {
  return slug(
    ['bed', 'crop']
      .map((key) => textOf(planting, key) ?? '')
      .concat(textOf(planting, 'sow') ?? textOf(planting, 'setOut') ?? '')
      .join(' '),
  );
}

/** The text an item has under a key, as the file's schema would take it. */
function textOf({ row }: Item, key: string): string | undefined {
  const value: unknown = Reflect.get(row, key);
  return typeof value === 'string' && value.trim() !== '' ? value.trim() : undefined;
}

function idsOf(rows: readonly { id: string }[]): string[] {
  return rows.map(({ id }) => id);
}

/** Everything an item can be called by: its name, its id, the id it was held by, or the one its name would give it. */
function namesOf(
  items: readonly Item[],
  existing: readonly { id?: string | undefined; name: string }[] = [],
): string[] {
  return items.flatMap((item) => {
    const name = textOf(item, 'name');
    const held = existing.find((old) => old.name === name)?.id;
    return [name, textOf(item, 'id'), held, name && slug(name)].filter((word) => word !== undefined);
  });
}

function unknown(items: readonly Item[], key: string, known: readonly string[], noun: string): Problem[] {
  return items.flatMap((item) => {
    const word = textOf(item, key);
    if (word === undefined || known.includes(word)) return [];
    const where = item.isWord === true ? item.where : `${item.where}.${key}`;
    return [{ where, what: `"${word}" is not a known ${noun}.`, mend: suggestion(word, known) }];
  });
}

function repeated(items: readonly Item[], key: 'id' | 'name'): Problem[] {
  const words = items.map((item) => textOf(item, key));
  return items.flatMap((item, index) => {
    const word = words[index];
    if (word === undefined || words.indexOf(word) === index) return [];
    const what = `"${word}" is the ${key} of two.`;
    return [{ where: `${item.where}.${key}`, what, mend: `Give each its own ${key}.` }];
  });
}
