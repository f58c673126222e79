/**
 * What serving feeds leaves behind, written in batches: a feed is read far more often than it is worth a write.
 */
import type { FeedText } from '../../store/feed-texts.ts';
import type { FeedName, Fetch } from '../../store/feeds.ts';
import type { Store } from '../../store/store.ts';

/** Time from the first thing put by to the writing of all. House default: a minute may be lost in a power cut. */
const BATCH_MS = 60_000;
/** Texts put by at which all is written at once: together some megabytes. House default. */
const TEXTS_MOST = 32;

/** Readings and good texts of feeds, put by until they are written together. */
export class FeedBatch {
  readonly #store: Pick<Store, 'transaction'>;
  readonly #report: (fault: unknown) => void;
  #fetches = new Map<FeedName, Fetch>();
  #texts = new Map<string, { name: FeedName; text: FeedText }>();
  /** Texts on their way to the disk. */
  #leaving: ReadonlyMap<string, { name: FeedName; text: FeedText }> = new Map();
  #timer: NodeJS.Timeout | undefined;

  constructor(store: Pick<Store, 'transaction'>, report: (fault: unknown) => void) {
    this.#store = store;
    this.#report = report;
  }

  /** Puts a reading by, under the very name it is asked with; the latest of each feed counts. */
  noteFetch(name: FeedName, fetch: Fetch): void {
    this.#fetches.set(name, fetch);
    this.#wait();
  }

  /** Puts a good text by; the latest of each feed counts. */
  keepText(name: FeedName, text: FeedText): void {
    this.#texts.set(keyOf(name), { name, text });
    if (this.#texts.size >= TEXTS_MOST) void this.write();
    else this.#wait();
  }

  /** The good text of a feed that is put by, where it is not yet on disk. */
  textOf(name: FeedName): FeedText | undefined {
    return (this.#texts.get(keyOf(name)) ?? this.#leaving.get(keyOf(name)))?.text;
  }

  /** Writes what was put by. What cannot be written is told of and let go: it is not worth an answer's failing. */
  async write(): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    const fetches = [...this.#fetches].map(([name, fetch]) => ({ ...name, ...fetch })).sort(byMoment);
    const texts = [...this.#texts.values()];
    if (fetches.length === 0 && texts.length === 0) return;
    this.#fetches = new Map();
    const leaving = this.#texts;
    this.#leaving = leaving;
    this.#texts = new Map();
    try {
      await this.#store.transaction(async (shelves) => {
        await shelves.noteFetches(fetches);
        for (const { name, text } of texts) await shelves.saveFeedText(name, text);
      });
    } catch (fault) {
      this.#report(fault);
    } finally {
      if (this.#leaving === leaving) this.#leaving = new Map();
    }
  }

  #wait(): void {
    this.#timer ??= setTimeout(() => this.write(), BATCH_MS).unref();
  }
}

function byMoment(a: Fetch, b: Fetch): number {
  return a.at < b.at ? -1 : a.at > b.at ? 1 : 0;
}

function keyOf({ gardenId, feedId }: FeedName): string {
  return `${gardenId}\n${feedId}`;
}
