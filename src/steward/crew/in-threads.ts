/**
 * The crew in threads of its own: feeds and pages are answered while it works. Threads begin with the first work, and one
 * that breaks or hangs gives way to another.
 */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { Crew, Handed } from './crew.ts';
import { errorOf, type FromThread, faultOf, type ToThread } from './messages.ts';
import type { Asked, WorkedOut } from './work.ts';

/** Works that may wait; one more is refused. House default: far more than a household asks for at once. */
const WAITING_MOST = 256;
/** How long a work may take before its thread is taken for hung. House default: many times the largest garden on a small computer. */
const HUNG_MS = 10 * 60_000;
/** Times a work is begun when its thread breaks. */
const TRIES = 2;
/** How long a thread is kept that has nothing to do, for what it remembers. House default. */
const IDLE_MS = 10 * 60_000;

/** How a crew is to be; each has its default. */
export interface ThreadSettings {
  /** Threads at once. */
  size?: number;
  /** The file a thread runs. */
  file?: URL;
  hungMs?: number;
  waitingMost?: number;
}

interface Job extends Handed {
  asked: Asked;
  tried: number;
  resolve: (done: WorkedOut) => void;
  reject: (error: unknown) => void;
}

/** A thread, with what it is at. */
interface Thread {
  worker: Worker;
  job?: Job;
  timer?: NodeJS.Timeout;
}

/** One core is left to answering; on a computer with one, the two share it. */
function usualSize(): number {
  return Math.max(1, availableParallelism() - 1);
}

/** Begins nothing yet. */
export function inThreads(settings: ThreadSettings = {}): Crew {
  return new Threads(settings);
}

class Threads implements Crew {
  readonly size: number;
  readonly #settings: Required<Omit<ThreadSettings, 'size'>>;
  readonly #threads = new Set<Thread>();
  #waiting: Job[] = [];
  #closed = false;

  constructor({ size = usualSize(), file = ownFile(), hungMs = HUNG_MS, waitingMost = WAITING_MOST }: ThreadSettings) {
    this.size = size;
    this.#settings = { file, hungMs, waitingMost };
  }

  workOut(asked: Asked, handed: Handed): Promise<WorkedOut> {
    return new Promise((resolve, reject) => {
      if (this.#closed) return reject(closing());
      if (this.#waiting.length >= this.#settings.waitingMost) return reject(tooMuch(this.#waiting.length));
      this.#waiting.push({ asked, ...handed, tried: 0, resolve, reject });
      this.#next();
    });
  }

  async close(): Promise<void> {
    this.#closed = true;
    const threads = [...this.#threads];
    this.#threads.clear();
    const given = [...this.#waiting, ...threads.flatMap(({ job }) => job ?? [])];
    this.#waiting = [];
    for (const { timer } of threads) clearTimeout(timer);
    await Promise.all(threads.map(({ worker }) => worker.terminate()));
    for (const { reject } of given) reject(closing());
  }

  /** Gives what waits to threads that are free, what somebody waits for first. */
  #next(): void {
    while (this.#waiting.length > 0) {
      const thread = [...this.#threads].find(({ job }) => job === undefined) ?? this.#begun();
      if (thread === undefined) return;
      const first = this.#waiting.findIndex(({ urgency }) => urgency.isWaitedFor);
      const [job] = this.#waiting.splice(Math.max(0, first), 1);
      if (job !== undefined) this.#give(thread, job);
    }
  }

  #begun(): Thread | undefined {
    if (this.#threads.size >= this.size) return undefined;
    const { file } = this.#settings;
    const thread: Thread = { worker: new Worker(file, { execArgv: [] }) };
    thread.worker.on('message', (message: FromThread) => this.#hear(thread, message));
    thread.worker.on('error', (error) => this.#lost(thread, error));
    thread.worker.on('exit', (code) => this.#lost(thread, new Error(`The thread ended with code ${code}.`)));
    this.#threads.add(thread);
    return thread;
  }

  #give(thread: Thread, job: Job): void {
    clearTimeout(thread.timer);
    thread.job = job;
    job.tried += 1;
    const { hungMs } = this.#settings;
    thread.timer = setTimeout(() => this.#lost(thread, new Error(`No end after ${hungMs / 1000} s.`)), hungMs);
    thread.worker.ref();
    tell(thread, { asked: job.asked });
  }

  #hear(thread: Thread, message: FromThread): void {
    const { job } = thread;
    if (job === undefined || !this.#threads.has(thread)) return;
    if ('wants' in message) {
      job.ground().then(
        (ground) => tell(thread, { ground }),
        (error) => tell(thread, { noGround: faultOf(error) }),
      );
      return;
    }
    this.#rest(thread);
    if ('done' in message) job.resolve(message.done);
    else job.reject(errorOf(message.failed));
    this.#next();
  }

  #rest(thread: Thread): void {
    clearTimeout(thread.timer);
    delete thread.job;
    // A thread at rest holds no program that has nothing else to do.
    thread.worker.unref();
    thread.timer = setTimeout(() => this.#end(thread), IDLE_MS).unref();
  }

  /** A thread that broke or hangs: its work is begun once more by another. */
  #lost(thread: Thread, cause: Error): void {
    if (!this.#threads.has(thread)) return;
    const { job } = thread;
    this.#end(thread);
    if (job !== undefined && job.tried < TRIES) this.#waiting.unshift(job);
    else job?.reject(new Error('It could not be worked out: the thread that does so broke off twice.', { cause }));
    this.#next();
  }

  #end(thread: Thread): void {
    clearTimeout(thread.timer);
    this.#threads.delete(thread);
    void thread.worker.terminate();
  }
}

function tell({ worker }: Thread, message: ToThread): void {
  worker.postMessage(message);
}

/** The program runs from its sources or from what was built of them: a thread does as the program does. */
function ownFile(): URL {
  return new URL(import.meta.url.endsWith('.ts') ? './thread-of-sources.mjs' : './thread.js', import.meta.url);
}

function closing(): Error {
  return new Error('The program is closing: nothing more is worked out.');
}

function tooMuch(waiting: number): Error {
  return new Error(`${waiting} works are waiting already. Try again when some of them are done.`);
}
