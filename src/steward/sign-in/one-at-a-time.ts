/**
 * Work that is done one after the other: what is dear must not take the computer from everybody else.
 */

/** Most that may wait their turn. House default: more than a household signs in at once. */
const WAITING_MOST = 8;

/** A row in which everything waits its turn, and where nothing is taken once it is long. */
export class OneAtATime {
  #last: Promise<unknown> = Promise.resolve();
  #inRow = 0;

  /** Does the work when its turn has come; nothing where too many wait. */
  async do<Result>(work: () => Promise<Result>): Promise<Result | undefined> {
    if (this.#inRow > WAITING_MOST) return undefined;
    this.#inRow += 1;
    const mine = this.#last.then(work);
    this.#last = mine.catch(() => undefined);
    try {
      return await mine;
    } finally {
      this.#inRow -= 1;
    }
  }
}
