/**
 * A map that keeps what was used last, and lets the rest go.
 */
export class Recent<Key, Value> {
  readonly #most: number;
  readonly #rows = new Map<Key, Value>();

  /** @param most how many are kept */
  constructor(most: number) {
    this.#most = most;
  }

  get size(): number {
    return this.#rows.size;
  }

  /** What is kept under a key, which makes it the one used last. */
  get(key: Key): Value | undefined {
    const value = this.#rows.get(key);
    if (value !== undefined) this.set(key, value);
    return value;
  }

  /** Keeps a value, and lets the one go that was used longest ago where there are too many. */
  set(key: Key, value: Value): void {
    this.#rows.delete(key);
    this.#rows.set(key, value);
    if (this.#rows.size <= this.#most) return;
    const [oldest] = this.#rows.keys();
    if (oldest !== undefined) this.#rows.delete(oldest);
  }

  delete(key: Key): void {
    this.#rows.delete(key);
  }
}
