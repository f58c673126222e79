/**
 * Remembering what was worked out from a text that comes again and again, such as a header of the same app.
 */

/** Texts remembered at once. House default: a household's apps send a handful between them. */
const TEXTS = 100;

/** The same function, which works each text out once. Where strangers send too many, it begins anew. */
export function recalled<Value>(work: (text: string) => Value): (text: string) => Value {
  const known = new Map<string, Value>();
  return (text) => {
    const held = known.get(text);
    if (held !== undefined) return held;
    const value = work(text);
    if (known.size >= TEXTS) known.clear();
    known.set(text, value);
    return value;
  };
}
