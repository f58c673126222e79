/**
 * Names that end in a number, in the order of those numbers.
 */

/** A name in two: what stands before the number it ends in, and that number. */
export interface Numbered {
  base: string;
  number: number;
}

/** A name as what stands before its number, and the number; nothing where it ends in none. */
export function numbered(name: string): Numbered | undefined {
  const [, base, digits] = /^(.*?)(\d{1,9})$/.exec(name) ?? [];
  return base === undefined ? undefined : { base, number: Number(digits) };
}

/**
 * Names with those of one kind in the order of their numbers, "Bed 2" before "Bed 10", in the places that kind has; all
 * other names stay where they are.
 */
export function inNumberOrder(names: readonly string[]): string[] {
  const kinds = new Map<string, string[]>();
  for (const name of names) {
    const base = numbered(name)?.base;
    if (base !== undefined) kinds.set(base, [...(kinds.get(base) ?? []), name]);
  }
  for (const [base, kin] of kinds)
    kinds.set(
      base,
      [...kin].sort((a, b) => (numbered(a)?.number ?? 0) - (numbered(b)?.number ?? 0)),
    );
  return names.map((name) => {
    const base = numbered(name)?.base;
    return (base === undefined ? undefined : kinds.get(base)?.shift()) ?? name;
  });
}
