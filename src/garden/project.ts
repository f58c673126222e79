/**
 * The fold: a garden as its ledger leaves it.
 */
import type { Day } from '../measures/days.ts';
import type { Fact } from './facts.ts';
import type { Garden } from './garden.ts';
import type { GardenFile } from './garden-file.ts';
import {
  bedOf,
  binOf,
  boughtOf,
  climateChoiceOf,
  diseaseOf,
  fedOf,
  heldBefore,
  householdOf,
  mulchOf,
  pileOf,
  placeOf,
  plantingOf,
  seedOf,
  soilTestOf,
  standOf,
  topdressedOf,
  wishOf,
} from './items-of-file.ts';
import type { LedgerEntry } from './ledger.ts';
import { oldestFirst, onOf } from './oldest-first.ts';
import { inOneForm } from './one-form.ts';
import { butOfWishes, ofWeatherAlone, stillMended } from './three-way.ts';
import { withFacts } from './with-facts.ts';

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
 * plans: a file that tells any takes the place of all that were told before it, but for mends where it tells them as before.
 *
 * @returns nothing when no garden file stands in it
 */
export function projectGarden(ledger: readonly LedgerEntry[]): Garden | undefined {
  const laid = laidOver(ledger);
  return laid && withFacts(laid.told, laid.facts);
}

/**
 * A garden as its newest file alone tells it, and the facts that are laid over that, in the order they were told. Of a mend
 * from before that file there is what the file leaves standing.
 */
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
    if (entry.fact.prefer === 'file')
      facts = facts.flatMap((fact) => ofWeatherAlone(fact) ?? []).filter((fact) => agrees(now, fact));
    else if (told !== undefined) facts = stillMended(told, now, facts);
    if (now.wishes.length > 0) facts = withoutWishes(facts, inOneForm(now.wishes) === inOneForm(told?.wishes ?? []));
    told = now;
  }
  return told && { told, facts };
}

/** Facts less those of wishes; a mend of them stays where the file tells the very wishes that it told before. */
function withoutWishes(facts: readonly LedgerEntry[], isToldAlike: boolean): LedgerEntry[] {
  const others = facts.filter(({ fact }) => !isOfWishes(fact));
  return isToldAlike ? others : others.flatMap((entry) => butOfWishes(entry) ?? []);
}

function isOfWishes({ kind }: Fact): boolean {
  return kind === 'crop-wished' || kind === 'wish-dropped';
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
    beds: file.beds.map(bedOf),
    plantings: file.plantings.map((row) => plantingOf(row, held)),
    stands: file.coverStands.map((row) => standOf(row, held)),
    mulches: oldestFirst(file.mulches, ({ from }) => from).map(mulchOf),
    bins: file.bins.map(binOf),
    piles: file.piles.map((row) => pileOf(row, held)),
    ...(file.topdressing ? { topdressing: file.topdressing } : {}),
    topdressed: oldestFirst(file.topdressed, onOf).map(topdressedOf),
    fed: oldestFirst(file.fed, onOf).map(fedOf),
    compostBought: oldestFirst(file.compostBought, onOf).map(boughtOf),
    away: oldestFirst(file.away, ({ from }) => from),
    ...(file.household ? { household: householdOf(file.household) } : {}),
    gear: file.gear,
    seeds: file.seeds.map(seedOf),
    wishes: file.wishes.map(wishOf),
    soilTests: oldestFirst(file.soilTests, onOf).map(soilTestOf),
    soilSqueezes: oldestFirst(file.soilSqueezes, onOf),
    diseases: oldestFirst(file.diseases, ({ found }) => found).map(diseaseOf),
    coldNights: oldestFirst(file.coldNights, ({ evening }) => evening),
    weather: [],
    done: [],
    skipped: {},
    pins: {},
    assigned: {},
    putOff: {},
  };
}
