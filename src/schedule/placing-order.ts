/**
 * Who is placed next: all that a task waits for before it, work that can keep its steady day before work that is late, what
 * must be done soonest first, and checks when no work is ready.
 */
import type { Day } from '../measures/days.ts';
import type { TaskDraft, TaskKey } from '../practices/draft.ts';
import type { SteadyPlace } from './steady-place.ts';

/** The tasks of a plan, handed out one by one. Each is taken for placed when the next is asked for. */
export class PlacingOrder {
  readonly #drafts: ReadonlyMap<TaskKey, TaskDraft>;
  readonly #onTime: Queue;
  readonly #late: Queue;
  readonly #checks: Queue;
  readonly #steady: ReadonlyMap<TaskKey, SteadyPlace>;
  readonly #today: Day;
  /** How many tasks each still waits for, and who waits for each. */
  readonly #waits = new Map<TaskKey, number>();
  readonly #waiting = new Map<TaskKey, TaskKey[]>();
  #last: TaskKey | undefined;

  /** @param steady steady places, in the order in which equals are placed */
  constructor(steady: ReadonlyMap<TaskKey, SteadyPlace>, drafts: ReadonlyMap<TaskKey, TaskDraft>, today: Day) {
    const turns = new Map([...steady.keys()].map((key, turn) => [key, turn]));
    const turn = (key: TaskKey): number => turns.get(key) ?? 0;
    const lastDay = (key: TaskKey): Day => drafts.get(key)?.window.latest ?? '';
    this.#drafts = drafts;
    this.#steady = steady;
    this.#today = today;
    this.#onTime = new Queue((a, b) => turn(a) - turn(b));
    this.#checks = new Queue((a, b) => turn(a) - turn(b));
    this.#late = new Queue((a, b) =>
      lastDay(a) === lastDay(b) ? turn(a) - turn(b) : lastDay(a) < lastDay(b) ? -1 : 1,
    );
    for (const key of steady.keys()) this.#expect(key);
  }

  /** The next task; nothing where all are placed, or those left wait for one another. */
  next(): TaskKey | undefined {
    for (const key of this.#waiting.get(this.#last ?? '') ?? []) {
      const left = (this.#waits.get(key) ?? 0) - 1;
      this.#waits.set(key, left);
      if (left === 0) this.#ready(key);
    }
    this.#last = this.#onTime.take() ?? this.#late.take() ?? this.#checks.take();
    return this.#last;
  }

  #expect(key: TaskKey): void {
    const after = this.#drafts.get(key)?.after ?? [];
    const waits = new Set(after.map((wait) => wait.key).filter((each) => this.#steady.has(each)));
    if (waits.size === 0) this.#ready(key);
    this.#waits.set(key, waits.size);
    for (const wait of waits) {
      const waiting = this.#waiting.get(wait);
      if (waiting === undefined) this.#waiting.set(wait, [key]);
      else waiting.push(key);
    }
  }

  #ready(key: TaskKey): void {
    const isOnTime = (this.#steady.get(key)?.day ?? '') >= this.#today;
    const isCheck = this.#drafts.get(key)?.weight === 'check';
    (isCheck ? this.#checks : isOnTime ? this.#onTime : this.#late).add(key);
  }
}

/** Keys in an order, taken from its beginning. */
class Queue {
  readonly #order: (a: TaskKey, b: TaskKey) => number;
  readonly #keys: TaskKey[] = [];

  constructor(order: (a: TaskKey, b: TaskKey) => number) {
    this.#order = order;
  }

  add(key: TaskKey): void {
    let [low, high] = [0, this.#keys.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.#order(this.#keys[middle] ?? key, key) < 0) low = middle + 1;
      else high = middle;
    }
    this.#keys.splice(low, 0, key);
  }

  take(): TaskKey | undefined {
    return this.#keys.shift();
  }
}
