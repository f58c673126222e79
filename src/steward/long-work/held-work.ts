/**
 * Work held for as long as what it was made from: those who wait for the same wait for one, and what failed is tried again.
 */

/** Hands out what is held for a holder under a name, and does the work where nothing is. */
export type HeldWork<Holder, Value> = (holder: Holder, name: string, work: () => Promise<Value>) => Promise<Value>;

/** Nothing held yet. */
export function heldWork<Holder extends object, Value>(): HeldWork<Holder, Value> {
  const held = new WeakMap<Holder, Map<string, Promise<Value>>>();
  return (holder, name, work) => {
    const ofHolder = held.get(holder) ?? new Map<string, Promise<Value>>();
    held.set(holder, ofHolder);
    const known = ofHolder.get(name);
    if (known !== undefined) return known;
    const made = work();
    ofHolder.set(name, made);
    made.catch(() => ofHolder.delete(name));
    return made;
  };
}
