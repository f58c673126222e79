/**
 * Rows of a garden file before it is known to be right.
 */

/** The rows of a list, each in its place; one that is no row is an empty one. */
export function rowsOf(file: unknown, list: string): object[] {
  const rows: unknown = typeof file === 'object' && file !== null ? Reflect.get(file, list) : undefined;
  if (!Array.isArray(rows)) return [];
  return rows.map((row: unknown) => (typeof row === 'object' && row !== null ? row : {}));
}

/** The text a row has under a key, as the schema of the file would take it. */
export function textOf(row: object, key: string): string | undefined {
  const value: unknown = Reflect.get(row, key);
  return typeof value === 'string' && value.trim() !== '' ? value.trim() : undefined;
}
