/**
 * Work that is broken off when the program stops, and waited for.
 */

interface Work {
  broken: AbortController;
  done: Promise<unknown>;
}

/** What a steward's post has in hand. */
export class UnderWay {
  readonly #works = new Set<Work>();
  #isStopped = false;

  /**
   * Does a work until it is done, or broken off.
   *
   * @param signal breaks off this work, besides the stop of all
   */
  async run<Result>(work: (signal: AbortSignal) => Promise<Result>, signal?: AbortSignal): Promise<Result> {
    const broken = new AbortController();
    const breakOff = (): void => broken.abort();
    if (this.#isStopped || signal?.aborted) breakOff();
    signal?.addEventListener('abort', breakOff, { once: true });
    const done = work(broken.signal);
    const own = { broken, done };
    this.#works.add(own);
    try {
      return await done;
    } finally {
      this.#works.delete(own);
      // The signal may live as long as the program does.
      signal?.removeEventListener('abort', breakOff);
    }
  }

  /** Breaks off all there is, and whatever comes after; settles when everything has ended. */
  async stop(): Promise<void> {
    this.#isStopped = true;
    for (const { broken } of this.#works) broken.abort();
    await Promise.allSettled([...this.#works].map(({ done }) => done));
  }
}
