/**
 * What somebody looks at before it is kept: held in memory, the latest ones. After a new start of the program nobody knows them.
 */
import { randomBytes } from 'node:crypto';

/** Octets of an offer's word: it cannot be guessed. */
const WORD_OCTETS = 12;

/** Offers of one kind, each of a garden or for a new one. */
export class Offered<Offer extends { gardenId?: string }> {
  readonly #held = new Map<string, Offer>();
  /** Where those that were taken led. */
  readonly #led = new Map<string, { gardenId: string; path: Promise<string> }>();
  readonly #most: number;

  /** @param most offers held at once: the oldest is forgotten for a new one */
  constructor(most: number) {
    this.#most = most;
  }

  /** Holds an offer, and gives its word in addresses. */
  keep(offer: Offer): string {
    const id = randomBytes(WORD_OCTETS).toString('base64url');
    this.#hold(id, offer);
    return id;
  }

  /** The offer of a word, made for this garden, or for a new one. */
  find(gardenId: string | undefined, id: string): Offer | undefined {
    const offer = this.#held.get(id);
    return offer?.gardenId === gardenId ? offer : undefined;
  }

  /** Lets an offer go that has been taken. */
  drop(id: string): void {
    this.#held.delete(id);
  }

  /**
   * Takes an offer once: pressed again, it leads to where it led. It is held again where taking it fails.
   *
   * @returns nothing when no such offer is held, nor was taken
   */
  taken(gardenId: string, id: string, taking: (offer: Offer) => Promise<string>): Promise<string> | undefined {
    const led = this.#led.get(id);
    if (led?.gardenId === gardenId) return led.path;
    const offer = this.find(gardenId, id);
    if (offer === undefined) return undefined;
    this.#held.delete(id);
    const path = taking(offer);
    this.#led.set(id, { gardenId, path });
    for (const old of [...this.#led.keys()].slice(0, -this.#most)) this.#led.delete(old);
    path.catch(() => {
      this.#led.delete(id);
      this.#hold(id, offer);
    });
    return path;
  }

  #hold(id: string, offer: Offer): void {
    this.#held.set(id, offer);
    for (const old of [...this.#held.keys()].slice(0, -this.#most)) this.#held.delete(old);
  }
}
