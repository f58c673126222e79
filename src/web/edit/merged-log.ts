/**
 * A log that changed while its form stood open, put together entry by entry: what was typed at an entry goes with that
 * entry to the place it has now, and what was added stands behind what is there.
 */
import type { FieldRows } from '../fields/field.ts';
import type { Texts } from '../fields/shown.ts';

/** What a form says of one entry, by its fields' names; what is empty is left out. */
type Entry = ReadonlyMap<string, readonly string[]>;

/** The entries of a log in the texts of a form, each at its place. */
function entriesIn(texts: Texts, { name: list }: FieldRows): Entry[] {
  const entries: Map<string, readonly string[]>[] = [];
  for (const [name, sent] of texts) {
    const [, within, place, key = ''] = /^(\w+)\[(\d{1,3})\]\.(.+)$/.exec(name) ?? [];
    if (within !== list || sent.join('') === '') continue;
    const at = Number(place);
    while (entries.length <= at) entries.push(new Map());
    entries[at]?.set(key, sent);
  }
  return entries;
}

function saidBy(entry: Entry): string {
  return JSON.stringify([...entry].sort(([one], [other]) => (one < other ? -1 : 1)));
}

/** Whether one can be the other put right: something of it is left, or there is only one thing it says. */
function canBeSame(one: Entry, other: Entry | undefined): boolean {
  if (other === undefined) return false;
  return (one.size === 1 && other.size === 1) || [...one].some(([key, sent]) => sent.join() === other.get(key)?.join());
}

/**
 * The place each entry has now: that of one that says the same; else that of the entry behind its forerunner, where that
 * can be it put right. Nothing where it was taken out.
 */
function placesNow(before: readonly Entry[], now: readonly Entry[]): (number | undefined)[] {
  const free = new Map(now.map((entry, at) => [at, saidBy(entry)]));
  const places = before.map((entry) => {
    const same = [...free].find(([, said]) => said === saidBy(entry))?.[0];
    if (same !== undefined) free.delete(same);
    return same;
  });
  for (const [at, place] of places.entries()) {
    if (place !== undefined) continue;
    const after = at === 0 ? -1 : places[at - 1];
    if (after === undefined || !free.has(after + 1) || !canBeSame(before[at] ?? new Map(), now[after + 1])) continue;
    free.delete(after + 1);
    places[at] = after + 1;
  }
  return places;
}

/** An entry as it is now, with what was typed at it. */
function withTyped(now: Entry, typed: Entry, before: Entry): Entry {
  const merged = new Map(now);
  for (const key of new Set([...typed.keys(), ...before.keys()])) {
    const sent = typed.get(key);
    if (JSON.stringify(sent) === JSON.stringify(before.get(key))) continue;
    if (sent === undefined) merged.delete(key);
    else merged.set(key, sent);
  }
  return merged;
}

/** The texts of the log, under the names its form sends them by. */
export function mergedLog(
  rows: FieldRows,
  versions: { typed: Texts; before: Texts; now: Texts },
): [string, string[]][] {
  const [typed, before, now] = [versions.typed, versions.before, versions.now].map((texts) => entriesIn(texts, rows));
  const merged = [...(now ?? [])];
  const places = placesNow(before ?? [], merged);
  const known = new Set(merged.map(saidBy));
  for (const at of Array.from({ length: Math.max(typed?.length ?? 0, places.length) }).keys()) {
    const sent: Entry = typed?.[at] ?? new Map();
    const was = before?.[at];
    const place = places[at];
    const held = place === undefined ? undefined : merged[place];
    if (was !== undefined && saidBy(sent) === saidBy(was)) continue;
    if (was !== undefined && held !== undefined && place !== undefined) merged[place] = withTyped(held, sent, was);
    else if (sent.size > 0 && !sent.has('gone') && !known.has(saidBy(sent))) merged.push(sent);
  }
  return merged.flatMap((entry, at) =>
    [...entry].map(([key, texts]): [string, string[]] => [`${rows.name}[${at}].${key}`, [...texts]]),
  );
}
