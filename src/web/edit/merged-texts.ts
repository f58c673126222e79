/**
 * A form of a row that changed while it stood open: what was typed stays, and what was left alone shows how it is now.
 */
import { type AnyField, isRows } from '../fields/field.ts';
import type { Texts } from '../fields/shown.ts';
import { mergedLog } from './merged-log.ts';

interface Versions {
  /** As it was sent. */
  typed: Texts;
  /** As it was shown, and as it would be shown now. */
  before: Texts;
  now: Texts;
  fields: readonly AnyField[];
}

/** The texts the form comes back with. */
export function mergedTexts({ typed, before, now, fields }: Versions): Map<string, string[]> {
  const merged = new Map<string, string[]>();
  for (const field of fields) {
    if (isRows(field)) {
      for (const [name, texts] of mergedLog(field, { typed, before, now })) merged.set(name, texts);
      continue;
    }
    const own = (texts: Texts) => [...(texts.get(field.name) ?? [])].filter((text) => text !== '');
    const isUntouched = JSON.stringify(own(typed).sort()) === JSON.stringify(own(before).sort());
    const texts = own(isUntouched ? now : typed);
    if (texts.length > 0) merged.set(field.name, texts);
  }
  return merged;
}
