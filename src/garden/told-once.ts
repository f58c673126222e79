/**
 * What a garden file tells and a report tells too counts once: which rows of the file no report has stood for yet.
 */
import type { Day } from '../measures/days.ts';
import type { BedFed, Topdressed } from './garden.ts';
import type { SeedPacket } from './household.ts';
import { oldestFirst, onOf } from './oldest-first.ts';
import { inOneForm } from './one-form.ts';

/** A list as it is joined: as the file told it, as it stood before the reports, and with them at its end. */
export interface Joining<Item> {
  /** What it is called, once in a garden. */
  name: string;
  told: readonly Item[] | undefined;
  base: readonly Item[] | undefined;
  all: readonly Item[];
}

/** Which items say too little, which say more, and which of them are one. */
interface Filling<Item> {
  isBare: (item: Item) => boolean;
  isFull: (item: Item) => boolean;
  isSame: (a: Item, b: Item) => boolean;
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
  layers(list: Joining<Topdressed>): readonly Topdressed[] {
    return this.#filled(list, {
      isBare: ({ pileIds, materialId }) => pileIds === undefined && materialId === undefined,
      isFull: ({ pileIds }) => pileIds !== undefined,
      isSame: isSameLayer,
    });
  }

  /** Fertiliser strewn: what is told without its planting and reported with it was strewn once, and for that planting. */
  strewn(list: Joining<BedFed>): readonly BedFed[] {
    return this.#filled(list, {
      isBare: ({ plantingId }) => plantingId === undefined,
      isFull: ({ plantingId }) => plantingId !== undefined,
      isSame: isSameStrewn,
    });
  }

  /** A list with its reports, where one that says more than a told item stands for it and takes its place. */
  #filled<Item extends { on: Day }>(list: Joining<Item>, { isBare, isFull, isSame }: Filling<Item>): readonly Item[] {
    const { name, base = [], all } = list;
    if (all === base) return base;
    const reported = all.slice(base.length);
    const rows = this.#free(list, inOneForm);
    const left = more(reported, rows).filter(isFull);
    const alone = more(rows, reported).filter(isBare);
    const fuller = new Map<string, Item[]>();
    const free = rows.map((row) => {
      const at = alone.includes(row) ? left.findIndex((other) => isSame(row, other)) : -1;
      const full = left[at];
      if (full === undefined) return row;
      left.splice(at, 1);
      const form = inOneForm(row);
      fuller.set(form, [...(fuller.get(form) ?? []), full]);
      return full;
    });
    const now = base.map((row) => fuller.get(inOneForm(row))?.shift() ?? row);
    return oldestFirst([...now, ...this.#besides(name, free, reported, inOneForm).reported], onOf);
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

/** The items of which there are more in one list than in another, each as often as that. */
function more<Item>(items: readonly Item[], than: readonly Item[]): Item[] {
  const others = than.map((item) => inOneForm(item));
  return items.filter((item) => {
    const at = others.indexOf(inOneForm(item));
    if (at >= 0) others.splice(at, 1);
    return at < 0;
  });
}

function isSameLayer(a: Topdressed, b: Topdressed): boolean {
  return a.bedId === b.bedId && a.on === b.on && a.litres === b.litres;
}

function isSameStrewn({ plantingId: _a, ...a }: BedFed, { plantingId: _b, ...b }: BedFed): boolean {
  return inOneForm(a) === inOneForm(b);
}
