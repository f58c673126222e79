/**
 * One form for the same content, whatever order its keys stand in.
 */

/** A text that is the same for two values just where they say the same; a key without a value says nothing. */
export function inOneForm(item: unknown): string {
  return (
    JSON.stringify(item, (_, value: unknown) =>
      typeof value === 'object' && value !== null && !Array.isArray(value)
        ? Object.fromEntries(Object.entries(value).sort())
        : value,
    ) ?? ''
  );
}

/** How many of some items say the same as one. */
export function countOf(items: readonly unknown[], wanted: unknown): number {
  const form = inOneForm(wanted);
  return items.filter((item) => inOneForm(item) === form).length;
}
