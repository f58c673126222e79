/**
 * What somebody looks at before it is kept: held in memory, the latest ones.
 */
import { randomBytes } from 'node:crypto';

/** Offers held at once: each may be some megabytes. House default. */
const HELD = 5;

/** Offers of one kind, of every garden. */
export class Offered<Offer extends { gardenId: string }> {
  readonly #held = new Map<string, Offer>();

  /** Holds an offer, and gives its name in addresses. */
  keep(offer: Offer): string {
    const id = randomBytes(9).toString('base64url');
    this.#held.set(id, offer);
    for (const old of [...this.#held.keys()].slice(0, -HELD)) this.#held.delete(old);
    return id;
  }

  find(gardenId: string, id: string): Offer | undefined {
    const offer = this.#held.get(id);
    return offer?.gardenId === gardenId ? offer : undefined;
  }

  /** Lets an offer go that has been taken. */
  drop(id: string): void {
    this.#held.delete(id);
  }
}
