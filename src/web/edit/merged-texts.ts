/**
 * A form of a row that changed while it stood open: what was typed stays, and what was left alone shows how it is now.
 */
import { type AnyField, isRows } from './field.ts';
import type { Texts } from './shown.ts';

interface Versions {
  /** As it was sent. */
  typed: Texts;
  /** As it was shown, and as it would be shown now. */
  before: Texts;
  now: Texts;
  fields: readonly AnyField[];
}

/** The texts the form comes back with. A log is taken whole: its entries may stand in other places by now. */
export function mergedTexts({ typed, before, now, fields }: Versions): Map<string, string[]> {
  const merged = new Map<string, string[]>();
  for (const field of fields) {
    const isOwn = (name: string): boolean => (isRows(field) ? name.startsWith(`${field.name}[`) : name === field.name);
    const own = (texts: Texts) => [...texts].filter(([name, sent]) => isOwn(name) && sent.join('') !== '');
    const isUntouched = JSON.stringify(own(typed).sort()) === JSON.stringify(own(before).sort());
    for (const [name, texts] of own(isUntouched ? now : typed)) merged.set(name, [...texts]);
  }
  return merged;
}
