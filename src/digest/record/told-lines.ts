/**
 * What the facts of a ledger tell, with what was changed of it afterwards as it was changed.
 */
import type { Garden } from '../../garden/garden.ts';
import type { LedgerEntry } from '../../garden/ledger.ts';
import { mended } from '../../garden/mended.ts';
import type { LaidOver } from '../../garden/project.ts';
import { Fold } from '../../garden/with-facts.ts';
import { happenedIn } from './happened.ts';
import type { Names } from './names.ts';
import type { Happening } from './row.ts';
import { toldBy } from './told.ts';

/** A thing that a fact told, with its entry. */
export interface Told {
  happening: Happening;
  entry: LedgerEntry;
}

/** Everything facts tell, and the garden as its file tells it with what was changed of that. */
export interface ToldLines {
  told: Told[];
  filed: Garden;
}

/**
 * Goes through the facts in their order. A change takes the place of what it changed: a reading that was mended is one line,
 * told by whoever mended it. What was told of something that was taken out since stays told.
 */
export function toldLines({ told: file, facts }: LaidOver, names: Names): ToldLines {
  const fold = new Fold(file);
  let filed = file;
  let told: Told[] = [];
  for (const entry of facts) {
    if (entry.fact.kind !== 'garden-mended') {
      fold.take(entry);
      told = [...told, ...toldBy(entry, names).map((happening) => ({ happening, entry }))];
      continue;
    }
    const before = happenedIn(fold.garden(), filed.beds);
    filed = mended(filed, entry.fact.edits, entry.recordedOn);
    fold.take(entry);
    const garden = fold.garden();
    told = withMend(told, { entry, garden, before, after: happenedIn(garden, filed.beds) });
  }
  return { told, filed };
}

/** A change of the garden, by what had happened in it before and after. */
interface Mend {
  entry: LedgerEntry;
  garden: Garden;
  before: readonly Happening[];
  after: readonly Happening[];
}

function withMend(told: readonly Told[], { entry, garden, before, after }: Mend): Told[] {
  const lines = onTheirDays(told, before, after);
  const lost = without(before, after).filter((happening) => isThere(garden, happening));
  const taken: Told[] = [];
  for (const { claim } of lost) {
    const at = lines.findLastIndex(({ happening }) => happening.claim === claim);
    if (at >= 0) taken.push(...lines.splice(at, 1));
  }
  const gained = without(after, before).map((happening): Told => {
    const at = taken.findIndex((line) => isOfOne(line.happening, happening));
    const [was] = at < 0 ? [] : taken.splice(at, 1);
    return { happening: was === undefined ? happening : { ...was.happening, ...happening }, entry };
  });
  return [...lines, ...gained];
}

/** What was told on the day the garden had it stands on the day the garden has it now. */
function onTheirDays(told: readonly Told[], before: readonly Happening[], after: readonly Happening[]): Told[] {
  const [was, is] = [before, after].map((all) => new Map(all.map(({ claim, on }) => [claim, on])));
  return told.map((line) => {
    const { claim, on } = line.happening;
    const now = is?.get(claim);
    return now === undefined || was?.get(claim) !== on ? line : { ...line, happening: { ...line.happening, on: now } };
  });
}

/** Happenings of one list that another has not, each as often as it has it oftener. */
function without(all: readonly Happening[], others: readonly Happening[]): Happening[] {
  const left = new Map<string, number>();
  for (const { claim } of others) left.set(claim, (left.get(claim) ?? 0) + 1);
  return all.filter(({ claim }) => {
    const count = left.get(claim) ?? 0;
    left.set(claim, count - 1);
    return count <= 0;
  });
}

/** Whether what something happened to is still in the garden. */
function isThere({ beds, plantings, stands, piles }: Garden, { about, aboutId, itemId }: Happening): boolean {
  const has = (items: readonly { id: string }[], id: string): boolean => items.some((item) => item.id === id);
  if (about === 'bed' && !has(beds, aboutId)) return false;
  return itemId === undefined || [plantings, stands, piles].some((items) => has(items, itemId));
}

function isOfOne(a: Happening, b: Happening): boolean {
  return a.doing === b.doing && a.aboutId === b.aboutId && a.itemId === b.itemId;
}
