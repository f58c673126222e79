/**
 * Stable ids for what a garden file names without one.
 *
 * An item keeps the id of the item it names in the file held before; a new one gets an id made from its own words, so
 * that the order of items in a file never matters.
 */
import type { GardenFile } from './garden-file.ts';

/** A garden held before, as a file, with what is remembered of its people. */
export interface HeldFile extends GardenFile {
  /** Those its own file names who have left since: the same file once more means the same people. */
  formerMembers?: readonly FileMember[];
  /** Every id a member ever had: nobody else is given one of them. */
  memberIds?: ReadonlySet<string>;
}

type FileMember = NonNullable<NonNullable<GardenFile['household']>['members']>[number];

/** A garden file whose every item has an id and whose references are ids. */
export function withIds(file: GardenFile, existing?: HeldFile): GardenFile {
  const beds = named(file.beds, existing?.beds ?? []);
  const bins = named(file.bins, existing?.bins ?? []);
  const bedId = reference(file.beds, beds);
  const binId = reference(file.bins, bins);
  const plantings = file.plantings.map((row) => ({ ...row, bed: bedId(row.bed) }));
  const stands = file.coverStands.map((row) => ({ ...row, bed: bedId(row.bed) }));
  const piles = file.piles.map((row) => ({ ...row, bin: binId(row.bin) }));
  return {
    ...file,
    garden: { ...file.garden, id: file.garden.id ?? existing?.garden.id ?? slug(file.garden.name) },
    beds,
    bins,
    plantings: identified(plantings, existing?.plantings ?? [], (row) =>
      slug(`${row.bed} ${row.crop} ${row.sow ?? row.setOut}`),
    ),
    coverStands: identified(stands, existing?.coverStands ?? [], (row) =>
      slug(`${row.bed} ${row.cover ?? row.mix} ${row.sow}`),
    ),
    piles: identified(piles, existing?.piles ?? [], (row) => slug(`${row.bin} ${row.built}`)),
    topdressed: file.topdressed.map((row) => ({ ...row, bed: bedId(row.bed) })),
    fed: file.fed.map((row) => ({ ...row, bed: bedId(row.bed) })),
    mulches: file.mulches.map((row) => ({ ...row, bed: bedId(row.bed) })),
    soilTests: file.soilTests.map((row) => (row.bed === undefined ? row : { ...row, bed: bedId(row.bed) })),
    diseases: file.diseases.map((row) => ({ ...row, bed: bedId(row.bed) })),
    ...(file.household ? { household: withMemberIds(file.household, bedId, existing) } : {}),
  };
}

function withMemberIds(
  household: NonNullable<GardenFile['household']>,
  bedId: (word: string) => string,
  existing: HeldFile | undefined,
): NonNullable<GardenFile['household']> {
  const { members, ...rest } = household;
  if (members === undefined) return household;
  const rows = members.map((row) => (row.beds ? { ...row, beds: row.beds.map(bedId) } : row));
  const held = existing?.household?.members ?? [];
  const former = (existing?.formerMembers ?? []).filter(({ name }) => held.every((row) => row.name !== name));
  return { ...rest, members: named(rows, [...held, ...former], existing?.memberIds) };
}

/** Small letters, digits and hyphens made from words. */
export function slug(words: string): string {
  const plain = words
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[\u0300-\u036f']/g, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 72);
  return plain === '' ? 'unnamed' : plain;
}

interface Named extends WithId {
  name: string;
}

function named<Item extends Named>(
  items: readonly Item[],
  existing: readonly Named[],
  kept?: ReadonlySet<string>,
): (Item & { id: string })[] {
  return identified(
    items,
    existing,
    (item) => slug(item.name),
    (item) => item.name,
    kept,
  );
}

/**
 * Gives ids to items without one: that of an existing item with the same words (the one that says all the same, where
 * there are several), else one made from the words. Items with the same words are taken in the order of what else they
 * say, never in that of the file.
 *
 * @param kept ids that are not to be made from words, whoever had them
 */
function identified<Item extends WithId, Old extends WithId>(
  items: readonly Item[],
  existing: readonly Old[],
  words: (item: Item) => string,
  same: (item: Item | Old) => string = (item) => words(item as Item),
  kept: ReadonlySet<string> = new Set(),
): (Item & { id: string })[] {
  const given = new Map<Item, string>(items.flatMap((item) => (item.id === undefined ? [] : [[item, item.id]])));
  const taken = new Set(given.values());
  const nameless = inTextOrder(items.filter((item) => item.id === undefined));
  const olds = inTextOrder(existing);
  const give = (item: Item, id: string): void => {
    given.set(item, id);
    taken.add(id);
  };
  for (const alike of [(item: WithId) => contentOf(item), (item: WithId) => same(item as Item | Old)]) {
    for (const item of nameless.filter((row) => !given.has(row))) {
      const before = olds.find((old) => old.id !== undefined && !taken.has(old.id) && alike(old) === alike(item));
      if (before?.id !== undefined) give(item, before.id);
    }
  }
  for (const item of nameless) if (!given.has(item)) give(item, firstFree(words(item), new Set([...taken, ...kept])));
  return items.map((item) => ({ ...item, id: given.get(item) ?? '' }));
}

interface WithId {
  id?: string | undefined;
}

/** All an item says besides its id, in one form. */
function contentOf({ id: _id, ...said }: WithId): string {
  return JSON.stringify(
    Object.entries(said)
      .filter(([, value]) => value !== undefined)
      .sort(),
  );
}

function inTextOrder<Item extends WithId>(items: readonly Item[]): Item[] {
  return items
    .map((item) => ({ item, content: contentOf(item) }))
    .sort((a, b) => (a.content < b.content ? -1 : a.content > b.content ? 1 : 0))
    .map(({ item }) => item);
}

/** What is wanted, or else that with the first number, from 2 on, that is free. */
export function firstFree(wanted: string, taken: ReadonlySet<string>): string {
  if (!taken.has(wanted)) return wanted;
  let count = 2;
  while (taken.has(`${wanted}-${count}`)) count += 1;
  return `${wanted}-${count}`;
}

/** Finds an item by the id it was written with, by its name, by the id it was given, or by the id its name would give. */
function reference(
  written: readonly Named[],
  given: readonly { id: string; name: string }[],
): (word: string) => string {
  const idOf = new Map([
    ...inTextOrder(given).map(({ id, name }) => [slug(name), id] as const),
    ...given.map(({ id }) => [id, id] as const),
    ...given.map(({ id, name }) => [name, id] as const),
    ...written.flatMap(({ id }) => (id === undefined ? [] : [[id, id] as const])),
  ]);
  return (word) => idOf.get(word) ?? word;
}
