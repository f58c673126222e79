/**
 * Remembering what is worked out from a value that never changes, a climate above all, for as long as that value lives.
 */

/**
 * A memory of its own: hands out what was worked out before for a holder under a name, and works it out the first time.
 *
 * @returns a function of holder, name and the work to be done where nothing is remembered
 */
export function memory<Holder extends object, Name extends string | number, Value>() {
  const held = new WeakMap<Holder, Map<Name, Value>>();
  return (holder: Holder, name: Name, work: () => Value): Value => {
    const known = held.get(holder) ?? new Map<Name, Value>();
    held.set(holder, known);
    if (known.has(name)) return known.get(name) as Value;
    const value = work();
    known.set(name, value);
    return value;
  };
}
