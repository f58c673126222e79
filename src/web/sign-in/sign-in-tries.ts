/**
 * How long whoever tried wrong passwords waits before the next: longer with every one, and never for good.
 *
 * Counted twice: by address, and over all addresses together, since guesses may come from many. The second count is kept
 * apart for the network at home and for this computer itself, so that whoever guesses from outside can make nobody at home
 * wait, and nobody at all whoever sits here (OWASP Authentication Cheat Sheet, on a lockout being used against those it
 * protects). NIST SP 800-63B-4, 3.2.2 names such growing waits.
 */
import { performance } from 'node:perf_hooks';
import { countedBy } from '../requests/network.ts';
import { remember } from '../requests/remembered.ts';
import type { Caller } from './caller.ts';

/** How wrong tries are held up: some are free, then each doubles the wait. */
interface Waits {
  free: number;
  mostSeconds: number;
}

/** Of one address. House default: mistyping is free; steady guessing comes to 96 tries a day. */
const OF_ADDRESS: Waits = { free: 5, mostSeconds: 15 * 60 };

/** Of all addresses of a side. House default: guessing from everywhere comes to 1,440 tries a day, and nobody waits longer than a minute for others. */
const OF_SIDE: Waits = { free: 30, mostSeconds: 60 };

/** Time without a wrong try after which earlier ones are forgotten. House default: above the longest wait. */
const FORGOTTEN_AFTER_MS = 3_600_000;

/** Addresses remembered at once; the first seen are forgotten first. House default. */
const ADDRESSES = 1_000;

/** Where tries come from: this computer itself, another one at home, or elsewhere. */
type Side = 'here' | 'home' | 'away';

interface Count {
  wrong: number;
  lastMs: number;
}

/** A try that may be made. It counts as wrong until it is said to be right. */
export interface OpenTry {
  /** The password was right: what this address tried before is forgotten. */
  right(): void;
  /** It was not looked at: it does not count. */
  notMade(): void;
}

/** Counts tries in memory. */
export class SignInTries {
  readonly #nowMs: () => number;
  readonly #addresses = new Map<string, Count>();
  readonly #sides: Record<Side, Count> = { here: noneYet(), home: noneYet(), away: noneYet() };

  /** @param nowMs tells the time in milliseconds; the machine's own unless given */
  constructor(nowMs: () => number = () => performance.now()) {
    this.#nowMs = nowMs;
  }

  /** Begins a try; or says how many seconds to wait. */
  begin({ address, isHere, isAtHome }: Pick<Caller, 'address' | 'isHere' | 'isAtHome'>): OpenTry | number {
    const now = this.#nowMs();
    const from = isHere ? 'here' : isAtHome ? 'home' : 'away';
    const name = `${from} ${countedBy(address)}`;
    const side = this.#sides[from];
    const own = this.#addresses.get(name) ?? noneYet();
    const waitMs = Math.max(waitOf(own, OF_ADDRESS, now), waitOf(side, OF_SIDE, now));
    if (waitMs > 0) return Math.ceil(waitMs / 1000);
    for (const count of [own, side]) countOne(count, now);
    remember(this.#addresses, name, own, ADDRESSES);
    const notMade = () => {
      for (const count of [own, side]) count.wrong = Math.max(0, count.wrong - 1);
    };
    const right = () => {
      notMade();
      this.#addresses.delete(name);
    };
    return { notMade, right };
  }

  /** Addresses remembered now. */
  get remembered(): number {
    return this.#addresses.size;
  }
}

function noneYet(): Count {
  return { wrong: 0, lastMs: 0 };
}

function countOne(count: Count, now: number): void {
  count.wrong = now - count.lastMs > FORGOTTEN_AFTER_MS ? 1 : count.wrong + 1;
  count.lastMs = now;
}

function waitOf({ wrong, lastMs }: Count, { free, mostSeconds }: Waits, now: number): number {
  if (wrong < free || now - lastMs > FORGOTTEN_AFTER_MS) return 0;
  const waitMs = 1000 * Math.min(mostSeconds, 2 ** (wrong - free));
  return Math.max(0, lastMs + waitMs - now);
}
