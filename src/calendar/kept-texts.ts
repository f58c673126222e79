/**
 * The written text of entries, kept from one rendering to the next: writing an event is what a feed costs, and most of
 * a plan is the same as it was the day before.
 */
import type { Entry } from '../schedule/plan.ts';

interface KeptText {
  entry: Entry;
  text: string;
}

/** Texts of one feed's entries. What the latest rendering did not show is forgotten, so it never outgrows a feed. */
export class KeptTexts {
  #kept = new Map<string, KeptText>();

  /** The text of each entry, written only where none is kept of the very same revision. */
  textsOf(entries: readonly Entry[], write: (entry: Entry) => string): string[] {
    const shown = new Map<string, KeptText>();
    for (const entry of entries) {
      const held = this.#kept.get(entry.lotId);
      const isKept = held !== undefined && isSame(held.entry, entry);
      shown.set(entry.lotId, isKept ? held : { entry, text: write(entry) });
    }
    this.#kept = shown;
    return [...shown.values()].map(({ text }) => text);
  }
}

/** Equal in all that an event is written from: the content a sequence stands for holds the texts, the state and the units. */
function isSame(a: Entry, b: Entry): boolean {
  return (
    a.sequence === b.sequence &&
    a.changedAt === b.changedAt &&
    a.createdAt === b.createdAt &&
    a.day === b.day &&
    a.practice === b.practice &&
    a.content === b.content
  );
}
