/**
 * Garden files that were handed over and not brought in yet, by the addresses of the pages that show them.
 */
import { randomBytes } from 'node:crypto';
import type { HandedFile } from '../steward/steward.ts';

/** Files held, at most: the oldest is forgotten for a new one. House default: a file has at most a mebibyte. */
const MOST_HELD = 20;
/** Octets of a file's word: it cannot be guessed. */
const WORD_OCTETS = 12;

/** In memory alone: after a new start of the program nobody knows them. */
export class HandedFiles {
  readonly #held = new Map<string, HandedFile>();

  /** Holds a file; returns its word. */
  hold(handed: HandedFile): string {
    const [oldest] = this.#held.keys();
    if (this.#held.size >= MOST_HELD && oldest !== undefined) this.#held.delete(oldest);
    const word = randomBytes(WORD_OCTETS).toString('base64url');
    this.#held.set(word, handed);
    return word;
  }

  /** The file of a word, handed over for this garden, or for a new one. */
  held(word: string, gardenId: string | undefined): HandedFile | undefined {
    const handed = this.#held.get(word);
    return handed?.gardenId === gardenId ? handed : undefined;
  }

  forget(word: string): void {
    this.#held.delete(word);
  }
}
