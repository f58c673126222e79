/**
 * The beginning of a sentence.
 */

/** Words with their first letter large, as a sentence begins; the rest as it was. */
export function capital(words: unknown): string {
  const text = String(words);
  return text.charAt(0).toUpperCase() + text.slice(1);
}
