/**
 * What a garden file tells and a report tells too counts once: which rows of the file no report has stood for yet.
 */
import type { Day } from '../measures/days.ts';
import type { SeedPacket, Topdressed } from './garden.ts';
import { oldestFirst } from './oldest-first.ts';
import { inOneForm } from './one-form.ts';

/** A list as it is joined: as the file told it, as it stood before the reports, and with them at its end. */
export interface Joining<Item> {
  /** What it is called, once in a garden. */
  name: string;
  told: readonly Item[] | undefined;
  base: readonly Item[] | undefined;
  all: readonly Item[];
}

/** The rows of a file that reports may still stand for, list by list; what a mend took out is no longer one. */
export class ToldOnce {
  readonly #left = new Map<string, readonly unknown[]>();

  /** A list with its reports, oldest first, each told item standing for one equal item reported. */
  joined<Item>(list: Joining<Item>, dayOf: (item: Item) => Day, formOf: (item: Item) => string = inOneForm) {
    const { base = [], all } = list;
    if (all === base) return base;
    const { reported } = this.#besides(list.name, this.#free(list, formOf), all.slice(base.length), formOf);
    return oldestFirst([...base, ...reported], dayOf);
  }

  /** Layers given: one told without its piles and reported with them is one layer, and keeps them. */
  layers(list: Joining<Topdressed>, dayOf: (item: Topdressed) => Day): readonly Topdressed[] {
    const { name, base = [], all } = list;
    if (all === base) return base;
    const reported = all.slice(base.length);
    const withPiles = reported.filter(({ pileIds }) => pileIds !== undefined);
    const fuller = new Map<string, Topdressed>();
    const free = this.#free(list, inOneForm).map((row) => {
      const says = row.pileIds !== undefined || row.materialId !== undefined;
      const at = says ? -1 : withPiles.findIndex((other) => isSameLayer(row, other));
      const full = withPiles[at];
      if (full === undefined) return row;
      withPiles.splice(at, 1);
      fuller.set(inOneForm(row), full);
      return full;
    });
    const now = base.map((row) => {
      const full = fuller.get(inOneForm(row));
      fuller.delete(inOneForm(row));
      return full ?? row;
    });
    return oldestFirst([...now, ...this.#besides(name, free, reported, inOneForm).reported], dayOf);
  }

  /** Packets told, and seed ordered besides. A packet that was weighed since takes the place of what was ordered of it. */
  packets(list: Joining<SeedPacket>): readonly SeedPacket[] {
    const { name, base = [], all } = list;
    if (all === base) return base;
    const free = this.#free(list, inOneForm);
    const { reported, unclaimed } = this.#besides(name, free, all.slice(base.length), inOneForm);
    return [...base, ...reported.filter((ordered) => !unclaimed.some((packet) => isWeighedSince(packet, ordered)))];
  }

  #free<Item>({ name, told = [], base = [] }: Joining<Item>, formOf: (item: Item) => string): Item[] {
    const there = base.map(formOf);
    return [...((this.#left.get(name) as readonly Item[] | undefined) ?? told)].filter((item) => {
      const at = there.indexOf(formOf(item));
      if (at >= 0) there.splice(at, 1);
      return at >= 0;
    });
  }

  /** Of what was reported, what no equal told item stands for; and the told items that stand for none reported. */
  #besides<Item>(name: string, free: readonly Item[], all: readonly Item[], formOf: (item: Item) => string) {
    const unclaimed = [...free];
    const reported = all.filter((item) => {
      const at = unclaimed.findIndex((each) => formOf(each) === formOf(item));
      if (at >= 0) unclaimed.splice(at, 1);
      return at < 0;
    });
    this.#left.set(name, unclaimed);
    return { reported, unclaimed };
  }
}

function isWeighedSince({ plant, packedYear, held }: SeedPacket, ordered: SeedPacket): boolean {
  const isSame = inOneForm(plant) === inOneForm(ordered.plant) && packedYear === ordered.packedYear;
  return isSame && held !== undefined && ordered.held !== undefined && held.on >= ordered.held.on;
}

function isSameLayer(a: Topdressed, b: Topdressed): boolean {
  return a.bedId === b.bedId && a.on === b.on && a.litres === b.litres;
}
