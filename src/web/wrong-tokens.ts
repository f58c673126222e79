/**
 * How many feed addresses that do not exist somebody may try. Readers with an address that does are never held up.
 */
import { performance } from 'node:perf_hooks';

/** Tries allowed in a window. House default: enough for a household's forgotten subscriptions, useless for guessing. */
const TRIES = 30;

/** House default: an app that still asks at a dead address does so a few times an hour. */
const WINDOW_MS = 10 * 60_000;

/** Clients remembered at once, so that memory stays bounded; the first seen are forgotten first. House default. */
const CLIENTS = 1_000;

/** Counts wrong tokens by client, in memory. */
export class WrongTokens {
  readonly #nowMs: () => number;
  readonly #windows = new Map<string, { count: number; endsMs: number }>();

  /** @param nowMs tells the time in milliseconds; the machine's own unless given */
  constructor(nowMs: () => number = () => performance.now()) {
    this.#nowMs = nowMs;
  }

  /** Counts a try; the seconds to wait when there were too many. */
  count(client: string): number | undefined {
    const now = this.#nowMs();
    const before = this.#windows.get(client);
    const window = before !== undefined && now < before.endsMs ? before : { count: 0, endsMs: now + WINDOW_MS };
    window.count += 1;
    if (window !== before) this.#remember(client, window);
    return window.count > TRIES ? Math.ceil((window.endsMs - now) / 1000) : undefined;
  }

  /** Clients remembered now. */
  get remembered(): number {
    return this.#windows.size;
  }

  #remember(client: string, window: { count: number; endsMs: number }): void {
    this.#windows.delete(client);
    const [oldest] = this.#windows.keys();
    if (this.#windows.size >= CLIENTS && oldest !== undefined) this.#windows.delete(oldest);
    this.#windows.set(client, window);
  }
}
