/**
 * One form for what is not there: the key is left out.
 */

/** A copy without the keys whose value is undefined, so that absence has one form. */
export function withoutAbsent<T extends object>(value: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(value).filter(([, held]) => held !== undefined)) as never;
}
