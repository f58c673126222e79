/**
 * Stable ids for what a garden file names without one.
 *
 * An item keeps the id of the item it names in the file held before; a new one gets an id made from its own words, so
 * that the order of items in a file never matters.
 */
import type { GardenFile } from './garden-file.ts';

/** A garden file whose every item has an id and whose references are ids. */
export function withIds(file: GardenFile, existing?: GardenFile): GardenFile {
  const beds = named(file.beds, existing?.beds ?? []);
  const bins = named(file.bins, existing?.bins ?? []);
  const bedId = reference(beds);
  const binId = reference(bins);
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
  };
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

interface Named {
  id?: string | undefined;
  name: string;
}

function named<Item extends Named>(items: readonly Item[], existing: readonly Named[]): (Item & { id: string })[] {
  return identified(items, existing, (item) => slug(item.name), (item) => item.name);
}

/** Gives ids to items without one: that of an existing item with the same words, else one made from the words. */
function identified<Item extends { id?: string | undefined }, Old extends { id?: string | undefined }>(
  items: readonly Item[],
  existing: readonly Old[],
  words: (item: Item) => string,
  same: (item: Item | Old) => string = (item) => words(item as Item),
): (Item & { id: string })[] {
  const taken = new Set(items.flatMap((item) => (item.id === undefined ? [] : [item.id])));
  return items.map((item) => {
    if (item.id !== undefined) return { ...item, id: item.id };
    const before = existing.find((old) => old.id !== undefined && !taken.has(old.id) && same(old) === same(item));
    const free = before?.id ?? firstFree(words(item), taken);
    taken.add(free);
    return { ...item, id: free };
  });
}

function firstFree(wanted: string, taken: ReadonlySet<string>): string {
  if (!taken.has(wanted)) return wanted;
  let count = 2;
  while (taken.has(`${wanted}-${count}`)) count += 1;
  return `${wanted}-${count}`;
}

function reference(items: readonly { id: string; name: string }[]): (name: string) => string {
  return (name) => items.find((item) => item.id === name || item.name === name)?.id ?? name;
}
