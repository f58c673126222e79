/**
 * Ids of the people of a household: each one's own for good, so that what hangs on one never comes to somebody else.
 */
import { gardenFileOf } from './export-garden-file.ts';
import type { Fact } from './facts.ts';
import { firstFree, type HeldFile, slug } from './ids.ts';
import type { LedgerEntry } from './ledger.ts';
import { projectGarden, standingEntries } from './project.ts';

/** Every id a member of a household ever had, also where the entry that told of them was taken back. */
export function everyMemberId(ledger: readonly LedgerEntry[]): ReadonlySet<string> {
  return new Set(
    ledger.flatMap(({ fact }) => {
      if (fact.kind === 'member-kept') return [fact.member.id];
      return fact.kind === 'garden-imported' ? (fact.file.household?.members ?? []).flatMap(({ id }) => id ?? []) : [];
    }),
  );
}

/** An id for somebody new, made from their name; a namesake of somebody before them gets another. */
export function newMemberId(ledger: readonly LedgerEntry[], name: string): string {
  return firstFree(slug(name), everyMemberId(ledger));
}

/**
 * A ledger in which everybody has an id: where one was written without, that of the member of that name at that point,
 * else a new one. The same ledger gives the same ids, and what is added later changes none of them.
 */
export function withMemberIds(ledger: readonly LedgerEntry[]): LedgerEntry[] {
  const known = new KnownMembers();
  return ledger.map((entry) => ({ ...entry, fact: known.identified(entry.fact) }));
}

class KnownMembers {
  readonly #ids = new Set<string>();
  readonly #byName = new Map<string, string>();

  identified(fact: Fact): Fact {
    switch (fact.kind) {
      case 'garden-imported':
        return fact.file.household?.members === undefined ? fact : this.#ofFile(fact);
      case 'member-kept':
        return { ...fact, member: { ...fact.member, id: this.#keep(fact.member, fact.formerName) } };
      case 'member-gone':
      case 'mail-stopped':
        return { ...fact, id: fact.id || (this.#byName.get(fact.name) ?? '') };
      default:
        return fact;
    }
  }

  #ofFile(fact: Extract<Fact, { kind: 'garden-imported' }>): Fact {
    const { household, ...rest } = fact.file;
    const members = household?.members ?? [];
    for (const { id } of members) if (id) this.#ids.add(id);
    const named = members.map((member) => ({ ...member, id: this.#keep(member) }));
    return { ...fact, file: { ...rest, household: { ...household, members: named } } };
  }

  #keep({ id: told, name }: { id?: string | undefined; name: string }, formerName = name): string {
    const id = told || this.#byName.get(formerName) || firstFree(slug(name), this.#ids);
    this.#ids.add(id);
    this.#byName.delete(formerName);
    this.#byName.set(name, id);
    return id;
  }
}

/** The garden of a ledger as a file to read the next one against; nothing where it holds none. */
export function heldFile(ledger: readonly LedgerEntry[]): HeldFile | undefined {
  const garden = projectGarden(ledger);
  if (garden === undefined) return undefined;
  const file = gardenFileOf(garden);
  const present = new Set((file.household?.members ?? []).map(({ id }) => id));
  const last = standingEntries(ledger).findLast(({ fact }) => fact.kind === 'garden-imported');
  const named = last?.fact.kind === 'garden-imported' ? (last.fact.file.household?.members ?? []) : [];
  return { ...file, formerMembers: named.filter(({ id }) => !present.has(id)), memberIds: everyMemberId(ledger) };
}
