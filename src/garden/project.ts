/**
 * The fold: a garden as its ledger leaves it.
 */
import type { Day } from '../measures/days.ts';
import { applyFact } from './apply-fact.ts';
import type { Fact } from './facts.ts';
import type { Garden, SeedPacket, Topdressed } from './garden.ts';
import type { GardenFile } from './garden-file.ts';
import { withPresentOnly } from './household-changes.ts';
import {
  climateChoiceOf,
  heldBefore,
  householdOf,
  pileOf,
  placeOf,
  plantingOf,
  seedOf,
  standOf,
  wishOf,
} from './items-of-file.ts';
import type { LedgerEntry } from './ledger.ts';
import { itself, oldestFirst, onOf } from './oldest-first.ts';
import { withThoseGrownIn } from './planned-beds.ts';
import { withoutAbsent } from './without-absent.ts';

/** Entries that still stand: neither undone nor themselves a taking-back. */
export function standingEntries(ledger: readonly LedgerEntry[]): LedgerEntry[] {
  const undone = undoneEntries(ledger);
  return ledger.filter((entry) => !undone.has(entry.entry) && entry.fact.kind !== 'entry-undone');
}

/** Numbers of the entries that have been taken back. Newest first, so that a taking-back can itself be taken back. */
export function undoneEntries(ledger: readonly LedgerEntry[]): Set<number> {
  const undone = new Set<number>();
  for (const { entry, fact } of [...ledger].reverse()) {
    if (fact.kind === 'entry-undone' && fact.entry < entry && !undone.has(entry)) undone.add(fact.entry);
  }
  return undone;
}

/**
 * The garden a ledger adds up to. A new file takes the place of the one before it; the facts reported until then are
 * laid over it again, or, where the file is preferred, only those that say nothing against it. Wishes are no more than
 * plans: a file that tells any takes the place of all that were told before it.
 *
 * @returns nothing when no garden file stands in it
 */
export function projectGarden(ledger: readonly LedgerEntry[]): Garden | undefined {
  const laid = laidOver(ledger);
  return laid && withFacts(laid.told, laid.facts);
}

/** A garden as its newest file alone tells it, and the facts that are laid over that, in the order they were told. */
export interface LaidOver {
  told: Garden;
  facts: readonly LedgerEntry[];
}

/**
 * What a garden is folded from: facts that were taken back are left out, and those a preferred file denies.
 *
 * @returns nothing when no garden file stands in the ledger
 */
export function laidOver(ledger: readonly LedgerEntry[]): LaidOver | undefined {
  let told: Garden | undefined;
  let facts: LedgerEntry[] = [];
  for (const entry of standingEntries(ledger)) {
    if (entry.fact.kind !== 'garden-imported') {
      facts.push(entry);
      continue;
    }
    const before: Garden | undefined = told && withFacts(told, facts);
    const now = gardenOfFile(entry.fact.file, entry.recordedOn, before?.startedOn ?? entry.recordedOn, before);
    if (entry.fact.prefer === 'file') facts = facts.filter((fact) => agrees(now, fact));
    if (now.wishes.length > 0) facts = facts.filter(({ fact }) => !isOfWishes(fact));
    told = now;
  }
  return told && { told, facts };
}

function isOfWishes({ kind }: Fact): boolean {
  return kind === 'crop-wished' || kind === 'wish-dropped';
}

/** A garden as its file tells it, with what was reported laid over it; what both tell counts once. */
function withFacts(told: Garden, facts: readonly LedgerEntry[]): Garden {
  const all = withPresentOnly(facts.reduce(applyFact, told));
  return {
    ...all,
    beds: withThoseGrownIn(all),
    stands: changed(told.stands, all.stands, (stand, toldStand) => ({
      ...stand,
      regrowthCheckedOn: joined(toldStand?.regrowthCheckedOn, stand.regrowthCheckedOn, itself),
      ...(stand.regrowth === undefined ? {} : { regrowth: joined(toldStand?.regrowth, stand.regrowth, onOf) }),
      ...(stand.seen === undefined ? {} : { seen: joined(toldStand?.seen, stand.seen, onOf) }),
      ...(stand.looked === undefined ? {} : { looked: joined(toldStand?.looked, stand.looked, onOf) }),
      ...(stand.resown === undefined ? {} : { resown: joined(toldStand?.resown, stand.resown, onOf) }),
      ...(stand.seed === undefined ? {} : { seed: joined(toldStand?.seed, stand.seed, onOf) }),
    })),
    piles: changed(told.piles, all.piles, (pile, toldPile) => ({
      ...pile,
      turns: joined(toldPile?.turns, pile.turns, itself),
      readings: joined(toldPile?.readings, pile.readings, onOf),
      ...(pile.notReady === undefined ? {} : { notReady: joined(toldPile?.notReady, pile.notReady, onOf) }),
    })),
    topdressed: joined(withTheirPiles(told.topdressed, all.topdressed), all.topdressed, onOf),
    fed: joined(told.fed, all.fed, onOf),
    compostBought:
      all.compostBought === told.compostBought
        ? told.compostBought
        : joined(all.compostBought.slice(0, told.compostBought.length), all.compostBought, onOf),
    seeds: all.seeds === told.seeds ? told.seeds : withOrdered(told.seeds, all.seeds),
    away: joined(told.away, all.away, ({ from }) => from),
    soilTests: joined(told.soilTests, all.soilTests, onOf),
    soilSqueezes: joined(told.soilSqueezes, all.soilSqueezes, onOf),
    diseases: joined(told.diseases, all.diseases, onOf),
    mulches: all.mulches === told.mulches ? told.mulches : oldestFirst(eachOnce(all.mulches), ({ from }) => from),
    coldNights: joined(told.coldNights, all.coldNights, ({ evening }) => evening),
  };
}

/** Items with those made anew that facts have touched; the others stay the very same. */
function changed<Item extends { id: string }>(
  told: readonly Item[],
  all: readonly Item[],
  change: (item: Item, toldItem: Item | undefined) => Item,
): readonly Item[] {
  if (all === told) return told;
  const byId = new Map(told.map((item) => [item.id, item]));
  return all.map((item) => (byId.get(item.id) === item ? item : change(item, byId.get(item.id))));
}

/** A list that was told and then added to, oldest first, each told item standing for one equal item reported. */
function joined<Item>(told: readonly Item[] = [], all: readonly Item[], dayOf: (item: Item) => Day): readonly Item[] {
  if (all === told) return told;
  return oldestFirst([...told, ...besides(told, all.slice(told.length)).reported], dayOf);
}

/** Of what was reported, what no equal told item stands for; and the told items that stand for none reported. */
function besides<Item>(told: readonly Item[], all: readonly Item[]): { reported: Item[]; unclaimed: Item[] } {
  const unclaimed = [...told];
  const reported = all.filter((item) => {
    const at = unclaimed.findIndex((each) => inOneForm(each) === inOneForm(item));
    if (at >= 0) unclaimed.splice(at, 1);
    return at < 0;
  });
  return { reported, unclaimed };
}

/** Packets told, and seed ordered besides. A packet that was weighed since takes the place of what was ordered of it. */
function withOrdered(told: readonly SeedPacket[], all: readonly SeedPacket[]): readonly SeedPacket[] {
  const { reported, unclaimed } = besides(told, all.slice(told.length));
  return [...told, ...reported.filter((ordered) => !unclaimed.some((packet) => isWeighedSince(packet, ordered)))];
}

function isWeighedSince({ plant, packedYear, held }: SeedPacket, ordered: SeedPacket): boolean {
  const isSame = inOneForm(plant) === inOneForm(ordered.plant) && packedYear === ordered.packedYear;
  return isSame && held !== undefined && ordered.held !== undefined && held.on >= ordered.held.on;
}

/** A layer told without its piles and reported with them is one layer, and keeps them. */
function withTheirPiles(told: readonly Topdressed[], all: readonly Topdressed[]): readonly Topdressed[] {
  if (all === told) return told;
  const reported = all.slice(told.length).filter(({ pileIds }) => pileIds !== undefined);
  return told.map((row) => {
    const says = row.pileIds !== undefined || row.materialId !== undefined;
    const at = says ? -1 : reported.findIndex((other) => isSameLayer(row, other));
    return at < 0 ? row : (reported.splice(at, 1)[0] ?? row);
  });
}

function isSameLayer(a: Topdressed, b: Topdressed): boolean {
  return a.bedId === b.bedId && a.on === b.on && a.litres === b.litres;
}

function eachOnce<Item>(items: readonly Item[]): Item[] {
  return [...new Map(items.map((item) => [inOneForm(item), item])).values()];
}

function inOneForm(item: unknown): string {
  return (
    JSON.stringify(item, (_, value: unknown) =>
      typeof value === 'object' && value !== null && !Array.isArray(value)
        ? Object.fromEntries(Object.entries(value).sort())
        : value,
    ) ?? ''
  );
}

/** The lists of a garden that both a file and a fact may add to or change. */
const TOLD_LISTS = [
  'beds',
  'plantings',
  'stands',
  'piles',
  'topdressed',
  'fed',
  'compostBought',
  'seeds',
  'away',
  'soilTests',
  'soilSqueezes',
  'diseases',
  'coldNights',
  'mulches',
  'wishes',
] as const;

/** Whether a garden as told already shows what an entry makes true: marks and pins make nothing a file could deny. */
function agrees(told: Garden, entry: LedgerEntry): boolean {
  const after = withFacts(told, [entry]);
  if (inOneForm(after.household) !== inOneForm(told.household)) return false;
  return TOLD_LISTS.every((list) => {
    const [was, is]: [readonly object[], readonly object[]] = [told[list], after[list]];
    return (
      was.length === is.length && was.every((item, at) => item === is[at] || inOneForm(item) === inOneForm(is[at]))
    );
  });
}

/**
 * A garden as its file alone tells it. A date up to the day it was read has happened and a later one is a plan, unless
 * the file lists the item's plans, or the garden before it held that same date: then it stays what it was.
 */
export function gardenOfFile(file: GardenFile, readOn: Day, startedOn: Day, before?: Garden): Garden {
  const held = { readOn, ...heldBefore(before) };
  return {
    id: file.garden.id ?? '',
    name: file.garden.name,
    startedOn,
    place: placeOf(file),
    climate: climateChoiceOf(file),
    beds: file.beds.map(({ id = '', ...bed }) => withoutAbsent({ id, ...bed })),
    plantings: file.plantings.map((row) => plantingOf(row, held)),
    stands: file.coverStands.map((row) => standOf(row, held)),
    mulches: oldestFirst(file.mulches, ({ from }) => from).map(({ bed, ...row }) =>
      withoutAbsent({ bedId: bed, ...row }),
    ),
    bins: file.bins.map(({ id = '', ...row }) => withoutAbsent({ id, ...row })),
    piles: file.piles.map((row) => pileOf(row, held)),
    ...(file.topdressing ? { topdressing: file.topdressing } : {}),
    topdressed: oldestFirst(file.topdressed, onOf).map(({ bed, piles, material, ...row }) =>
      withoutAbsent({ bedId: bed, ...row, pileIds: piles, materialId: material }),
    ),
    fed: oldestFirst(file.fed, onOf).map(({ bed, fertiliser, planting, ...row }) =>
      withoutAbsent({ bedId: bed, ...row, fertiliserId: fertiliser, plantingId: planting }),
    ),
    compostBought: oldestFirst(file.compostBought, onOf).map((row) => withoutAbsent(row)),
    away: oldestFirst(file.away, ({ from }) => from),
    ...(file.household ? { household: householdOf(file.household) } : {}),
    gear: file.gear,
    seeds: file.seeds.map(seedOf),
    wishes: file.wishes.map(wishOf),
    soilTests: oldestFirst(file.soilTests, onOf).map(({ bed, ...test }) => withoutAbsent({ ...test, bedId: bed })),
    soilSqueezes: oldestFirst(file.soilSqueezes, onOf),
    diseases: oldestFirst(file.diseases, ({ found }) => found).map(({ bed, crop, disease, found }) => ({
      bedId: bed,
      cropId: crop,
      disease,
      on: found,
    })),
    coldNights: oldestFirst(file.coldNights, ({ evening }) => evening),
    weather: [],
    done: [],
    skipped: {},
    pins: {},
    assigned: {},
    putOff: {},
  };
}
