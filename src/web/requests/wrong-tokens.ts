/**
 * How many feed addresses that do not exist somebody may try, and how many readings a garden's scripts may tell. Readers
 * with an address that does exist are never held up.
 */
import { performance } from 'node:perf_hooks';
import { remember } from './remembered.ts';

/** How often something may be tried in a window. */
interface TryLimit {
  tries: number;
  windowMs: number;
}

/**
 * Wrong tokens. House default: enough for a household's forgotten subscriptions, useless for guessing; an app that still
 * asks at a dead address does so a few times an hour.
 */
const WRONG: TryLimit = { tries: 30, windowMs: 10 * 60_000 };

/** Readings told with the keys of one garden. House default: more than any thermometer, less than a script gone wild. */
const READINGS: TryLimit = { tries: 120, windowMs: 60_000 };

/** Clients remembered at once, so that memory stays bounded; the first seen are forgotten first. House default. */
const CLIENTS = 1_000;

/** Counts tries by who makes them, in memory. */
class Tries {
  readonly #limit: TryLimit;
  readonly #nowMs: () => number;
  readonly #windows = new Map<string, { count: number; endsMs: number }>();

  constructor(limit: TryLimit, nowMs: () => number) {
    this.#limit = limit;
    this.#nowMs = nowMs;
  }

  /** Counts a try; the seconds to wait when there were too many. */
  count(client: string): number | undefined {
    const now = this.#nowMs();
    const before = this.#windows.get(client);
    const window =
      before !== undefined && now < before.endsMs ? before : { count: 0, endsMs: now + this.#limit.windowMs };
    window.count += 1;
    if (window !== before) remember(this.#windows, client, window, CLIENTS);
    return window.count > this.#limit.tries ? Math.ceil((window.endsMs - now) / 1000) : undefined;
  }

  /** Clients remembered now. */
  get remembered(): number {
    return this.#windows.size;
  }
}

/** Counts wrong tokens by client. */
export class WrongTokens extends Tries {
  /** @param nowMs tells the time in milliseconds; the machine's own unless given */
  constructor(nowMs: () => number = () => performance.now()) {
    super(WRONG, nowMs);
  }
}

/** Counts readings by garden. */
export class ToldReadings extends Tries {
  /** @param nowMs tells the time in milliseconds; the machine's own unless given */
  constructor(nowMs: () => number = () => performance.now()) {
    super(READINGS, nowMs);
  }
}
