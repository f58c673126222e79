/**
 * The written text of entries, kept from one rendering to the next: writing an event is what a feed costs, and most of
 * a plan is the same as it was the day before.
 */

/** Something a feed shows, before it is written. */
export interface Unwritten {
  id: string;
  /** Equal where all that it is written from is equal. */
  likeness: string;
  write: () => string;
}

/** Texts of one feed. What the latest rendering did not show is forgotten, so it never outgrows a feed. */
export class KeptTexts {
  #kept = new Map<string, { likeness: string; text: string }>();

  /** The text of each, written only where none is kept of its very likeness. */
  textsOf(shown: readonly Unwritten[]): string[] {
    const texts = new Map<string, { likeness: string; text: string }>();
    for (const { id, likeness, write } of shown) {
      const held = this.#kept.get(id);
      texts.set(id, held?.likeness === likeness ? held : { likeness, text: write() });
    }
    this.#kept = texts;
    return [...texts.values()].map(({ text }) => text);
  }
}
