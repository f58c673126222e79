/**
 * Feeds ready to be sent. An answer is looked up in memory while nothing was written and the day is the same; when a new
 * one cannot be made, readers are shown the last good one, since calendar apps drop what they hold at the first error.
 */
import { createHash } from 'node:crypto';
import { setTimeout as after } from 'node:timers/promises';
import { closedFeed, graceEnds } from '../../calendar/closed-feed.ts';
import { KeptTexts } from '../../calendar/kept-texts.ts';
import { renderFeed } from '../../calendar/render-feed.ts';
import { addDays, type Instant, latestOf } from '../../measures/days.ts';
import type { Feed, FeedAddress, FeedName } from '../../store/feeds.ts';
import type { Store } from '../../store/store.ts';
import type { FeedBody } from '../doings/steward.ts';
import { Recent } from '../long-work/recent.ts';
import { type Clock, dayBegins, type Planner, type Standing } from '../planning/planner.ts';
import { FeedBatch } from './feed-batch.ts';
import { bodyOf, feedTextOf, likenessOf } from './feed-text.ts';

/** How long the last good text is served before a new one is tried again. House default. */
const RETRY_MS = 60_000;

/**
 * How long a reader is kept waiting for a plan that is being made; then the last good text is sent, which is a day old at
 * most where nothing was told meanwhile. House default.
 */
const PATIENCE_MS = 250;
/** How long that text is sent before the new one is looked for again. House default. */
const AGAIN_MS = 5_000;

/** Texts held ready. House default: more than a few households subscribe to; one may take some hundred KiB. */
const FEEDS_HELD = 256;
/** Feeds of which is known what their text on disk was made from. House default: hundreds of octets each. */
const FEEDS_KNOWN = 8192;
/** Gardens and shapes whose events are kept from one text to the next. House default: as many as texts are. */
const TEXTS_HELD = FEEDS_HELD;

/** Later than any moment of a plan. */
const NEVER: Instant = '9999-12-31T23:59:59.999Z';

/** An answer and how long it holds: while the mark is the same, from one moment until another. */
interface Held {
  name: FeedName;
  feed: FeedBody;
  mark: number;
  from: Instant;
  until: Instant;
  /** What it was made from; absent of a notice, and of a text that stands in for another. */
  made?: string;
}

/** What is known of a text that this program wrote to disk: it can be read again as long as it holds. */
type Known = Omit<Held, 'feed' | 'mark'> & Pick<FeedBody, 'etag'>;

/** When an address is asked for, and with what. */
interface AskedAt {
  mark: number;
  now: Instant;
  token: string;
}

const LATE = Symbol('late');

/** What serving feeds works with. */
export interface ServingRoom {
  store: Store;
  clock: Clock;
  planner: Planner;
  /** Told of what went wrong behind an answer that was given all the same. */
  report: (fault: unknown) => void;
}

/** The feeds of a household, held by the hash of their token so that no secret lies about in memory. */
export class ServedFeeds {
  readonly #room: ServingRoom;
  readonly #batch: FeedBatch;
  readonly #held: Recent<string, Held>;
  readonly #known = new Recent<string, Known>(FEEDS_KNOWN);
  readonly #texts = new Recent<string, { isLike: string; texts: KeptTexts }>(TEXTS_HELD);
  #isEnding = false;

  /** @param most how many texts are held ready */
  constructor(room: ServingRoom, most = FEEDS_HELD) {
    this.#room = room;
    this.#held = new Recent(most);
    this.#batch = new FeedBatch(room.store, room.report);
  }

  /** What an address answers with, if anything. */
  async answer(token: string, by?: string): Promise<FeedBody | undefined> {
    const now = this.#room.clock.now();
    const mark = this.#room.store.changeMark();
    const hash = createHash('sha256').update(token).digest('base64url');
    const held = this.#held.get(hash);
    const isFresh = held !== undefined && held.mark === mark && held.from <= now && now < held.until;
    const answer = isFresh ? held : await this.#renewed(token, hash, { mark, now });
    if (answer !== undefined && by !== undefined) this.#batch.noteFetch(answer.name, { at: now, by });
    return answer?.feed;
  }

  /** From now on what is still being made for the next who asks may fail in silence: nobody will ask. */
  end(): void {
    this.#isEnding = true;
  }

  /** Writes what was put by: who last read which feed, and the last good texts. */
  written(): Promise<void> {
    return this.#batch.write();
  }

  async #renewed(token: string, hash: string, at: { mark: number; now: Instant }): Promise<Held | undefined> {
    let before = this.#held.get(hash);
    let address: FeedAddress | undefined;
    try {
      address = await this.#room.store.findFeedAddress(token);
      before ??= address && (await this.#fromDisk(hash, address.feed));
      const next = address && (await this.#inTime(address, before, { ...at, token }));
      if (next === undefined) this.#held.delete(hash);
      else this.#hold(hash, next);
      if (next !== undefined && address?.closedAt === undefined && next.feed.etag !== before?.feed.etag) {
        this.#batch.keepText(next.name, next.feed);
      }
      return next;
    } catch (fault) {
      const good = before ?? (address && (await this.#lastGood(address.feed)));
      if (good === undefined) throw fault;
      this.#room.report(fault);
      const again: Held = { ...good, ...from(at), until: new Date(Date.parse(at.now) + RETRY_MS).toISOString() };
      this.#held.set(hash, again);
      return again;
    }
  }

  #hold(hash: string, held: Held): void {
    this.#held.set(hash, held);
    const { feed, mark: _mark, ...rest } = held;
    if (held.made !== undefined) this.#known.set(hash, { ...rest, etag: feed.etag });
  }

  /** A text no longer held, as it was written to disk; nothing where another stands there by now. */
  async #fromDisk(hash: string, feed: Feed): Promise<Held | undefined> {
    const known = this.#known.get(hash);
    const good = known && (await this.#lastGood(feed));
    if (good?.feed.etag !== known?.etag || known === undefined || good === undefined) return undefined;
    const { etag: _etag, ...rest } = known;
    return { ...rest, ...good, mark: 0 };
  }

  /** An answer; where it takes long, the last good text in its place, while it is made for the next who asks. */
  async #inTime(address: FeedAddress, before: Held | undefined, at: AskedAt): Promise<Held | undefined> {
    const made = await this.#madeFrom(address);
    if (made !== undefined && before?.made === made && before.from <= at.now && at.now < before.until)
      return { ...before, mark: at.mark };
    const answer = this.#answerOf(address, at);
    const late = after(PATIENCE_MS, LATE, { ref: false });
    const first = await Promise.race([answer, late]);
    if (first !== LATE) return first && made !== undefined ? { ...first, made } : first;
    const good = before ?? (await this.#lastGood(address.feed));
    if (good === undefined) return answer;
    answer.catch((fault) => {
      if (!this.#isEnding) this.#room.report(fault);
    });
    const { name, feed } = good;
    return { name, feed, ...from(at), until: new Date(Date.parse(at.now) + AGAIN_MS).toISOString() };
  }

  /** What the text of an open feed hangs on, besides the day. */
  async #madeFrom({ feed, closedAt }: FeedAddress): Promise<string | undefined> {
    if (closedAt !== undefined) return undefined;
    const { id, gardenId, label, shape, shapeRevision, shapedAt, changedAt } = feed;
    const version = await this.#room.store.factsVersion(gardenId);
    return JSON.stringify([gardenId, version, id, label, shape, shapeRevision, shapedAt, changedAt]);
  }

  async #answerOf(address: FeedAddress, at: AskedAt): Promise<Held | undefined> {
    const { feed, closedAt } = address;
    const name = nameOf(feed);
    if (closedAt !== undefined) {
      const until = graceEnds(closedAt);
      if (at.now >= until) return undefined;
      const why = whyClosed(address, at.token);
      const notice = closedFeed({ ...name, label: feed.label, closedAt, why });
      return { name, feed: bodyOf(renderFeed(notice), closedAt), ...from(at), until };
    }
    const view = await this.#room.planner.standing(feed.gardenId);
    const texts = this.#keptOf(feed, view);
    const text = feedTextOf(view, { feed, kept: texts });
    // An app that asks by date alone must not take a feed that was opened again for older than the notice it read last.
    const changedAt = latestOf(text.changedAt, feed.changedAt ?? '');
    return { name, feed: { ...text, changedAt }, ...from(at), until: this.#dayEnds(view) };
  }

  /** The texts kept for a feed: plain ones share theirs, and those of a shape that is no more are forgotten. */
  #keptOf(feed: Feed, view: Standing): KeptTexts {
    const isLike = likenessOf(view, feed);
    const name = isLike === likenessOf(view) ? feed.gardenId : `${feed.gardenId} ${feed.id}`;
    const held = this.#texts.get(name);
    const texts = held?.isLike === isLike ? held.texts : new KeptTexts();
    this.#texts.set(name, { isLike, texts });
    return texts;
  }

  #dayEnds({ garden, plan }: Standing): Instant {
    if (this.#room.clock.today !== undefined) return NEVER;
    return dayBegins(garden.place.timeZone, addDays(plan.today, 1));
  }

  async #lastGood(feed: Feed): Promise<Pick<Held, 'name' | 'feed'> | undefined> {
    const name = nameOf(feed);
    const text = this.#batch.textOf(name) ?? (await this.#room.store.feedText(name));
    return text && { name, feed: bodyOf(text.body, text.changedAt) };
  }
}

function whyClosed({ feed, isPutAway }: Pick<FeedAddress, 'feed' | 'isPutAway'>, token: string) {
  if (feed.revokedAt !== undefined) return 'revoked';
  if (!isPutAway) return 'moved';
  return feed.token === token ? 'put away' : 'moved and put away';
}

function from({ mark, now }: { mark: number; now: Instant }) {
  return { mark, from: now };
}

function nameOf({ gardenId, id }: Feed): FeedName {
  return { gardenId, feedId: id };
}
