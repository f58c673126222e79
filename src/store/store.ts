/**
 * The store: everything the household has told the program, and the last plan of each garden, in one SQLite file.
 * It keeps and hands back; it decides nothing.
 */
import { existsSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { migrations } from '../../migrations/index.ts';
import type { LedgerEntry } from '../garden/ledger.ts';
import type { Problem } from '../garden/problem.ts';
import type { Day, Instant } from '../measures/days.ts';
import type { Plan } from '../schedule/plan.ts';
import { changeMark } from './change-mark.ts';
import { checkUp } from './check-up.ts';
import { type Connection, connect, waitBriefly } from './connection.ts';
import { copyDatabase } from './copy.ts';
import { type CopiesFolder, DailyCopies, dailyCopies } from './daily-copies.ts';
import {
  type Claim,
  claimDelivery,
  type Delivery,
  type DeliveryName,
  deliveries,
  handOver,
  noteBrokenOff,
  noteMissed,
  type Outcome,
  settleDelivery,
  type Wanted,
} from './deliveries.ts';
import {
  addDraft,
  changeDraft,
  claimDraft,
  draft,
  drafts,
  dropDraft,
  type KeptDraft,
  type ListedDraft,
} from './drafts.ts';
import { makeFolder } from './durable.ts';
import { storeFault, tellingFaults } from './fault.ts';
import { type FeedText, feedText, saveFeedText } from './feed-texts.ts';
import {
  addFeed,
  changeFeed,
  type Feed,
  type FeedAddress,
  type FeedChange,
  type FeedName,
  type Fetch,
  feeds,
  findFeedAddress,
  followInFeed,
  noteFetches,
  reopenFeed,
  revokeFeed,
  rotateFeed,
} from './feeds.ts';
import {
  createGarden,
  factsVersion,
  gardenIds,
  gardensPutAway,
  type NewGarden,
  type PutAway,
  putAwayGarden,
} from './gardens.ts';
import { useTogether } from './in-use.ts';
import { type Appended, append, ledger, type NewEntry } from './ledger.ts';
import { migrate } from './migrate.ts';
import { newestPlanDay, plan, planMade, savePlan } from './plans.ts';
import { finishPutBack, putBack, type Replaced } from './put-back.ts';
import { addReadingKey, findReadingKey, type ReadingKey, readingKeys, revokeReadingKey } from './reading-keys.ts';
import { type SignInShelves, signInShelves } from './sign-in-shelves.ts';
import { keepSigningKey, signingKey } from './signing-keys.ts';
import type { Database } from './tables.ts';
import { formerRecord, recordVersion, replaceWeatherRecord, type WeatherRecord, weatherRecord } from './weather.ts';

/** Reads and writes, each on its own or together in a {@link Store.transaction}. */
export interface Shelves extends SignInShelves {
  /** Ids of every garden that is not put away, oldest first. */
  gardenIds(): Promise<string[]>;
  /** The gardens that are put away, the latest first. */
  gardensPutAway(): Promise<PutAway[]>;
  /** Puts a garden away, or gives it back where no moment is given; returns whether that changed anything. */
  putAwayGarden(gardenId: string, at: Instant | undefined): Promise<boolean>;
  /** Starts an empty garden at facts version 0. */
  createGarden(garden: NewGarden): Promise<void>;
  /**
   * Version of everything a plan is made from, raised by one with each accepted change of ledger or weather. Read it
   * before the rest: what changes afterwards then shows when the plan is saved. That of a garden put away is refused.
   */
  factsVersion(gardenId: string): Promise<number>;
  /** The ledger, oldest entry first. */
  ledger(gardenId: string): Promise<LedgerEntry[]>;
  /** Adds entries, all or none, if the facts still stand at the version the caller read. */
  append(gardenId: string, expectedVersion: number, entries: readonly NewEntry[]): Promise<Appended>;
  /** The last plan stored, if any. */
  plan(gardenId: string): Promise<Plan | undefined>;
  /** The day and the facts version it was made from. */
  planMade(gardenId: string): Promise<Pick<Plan, 'today' | 'factsVersion'> | undefined>;
  /** Stores a plan if the facts still stand at the version it was made from; returns whether it did. */
  savePlan(gardenId: string, plan: Plan, factsVersion: number): Promise<boolean>;
  /** The day of the plan last kept up to date, over all gardens that are not put away. */
  newestPlanDay(): Promise<Day | undefined>;
  /** The long record the climate is worked out from, if the garden has one. */
  weatherRecord(gardenId: string): Promise<WeatherRecord | undefined>;
  /** The facts version the long record came with: while it stands, so does what was worked out from the record. */
  recordVersion(gardenId: string): Promise<number | undefined>;
  /** The record that stood before the present one, if there was one. */
  formerRecord(gardenId: string): Promise<WeatherRecord | undefined>;
  /** Puts a long record in place of the one there was, which becomes the former one; returns the new facts version. */
  replaceWeatherRecord(gardenId: string, record: WeatherRecord): Promise<number>;
  /** The garden's feeds, revoked ones included, oldest first. */
  feeds(gardenId: string): Promise<Feed[]>;
  /** Keeps a new feed. */
  addFeed(feed: Feed): Promise<void>;
  /** Closes a feed's address; returns whether there was such an open feed. */
  revokeFeed(gardenId: string, feedId: string, at: Instant): Promise<boolean>;
  /** Opens a revoked feed again at the address it had; returns whether there was such a revoked feed. */
  reopenFeed(feed: FeedName, at: Instant): Promise<boolean>;
  /** Gives an open feed another label or shape; returns whether there was such an open feed. */
  changeFeed(feed: FeedName, change: FeedChange): Promise<boolean>;
  /** Gives a feed, open or revoked, what follows for it from a change of its garden. */
  followInFeed(feed: FeedName, change: FeedChange): Promise<void>;
  /** Gives an open feed another token and remembers the one it had; returns whether there was such an open feed. */
  rotateFeed(feed: FeedName, anew: { token: string; at: Instant }): Promise<boolean>;
  /** What stands behind a token, closed ones included. */
  findFeedAddress(token: string): Promise<FeedAddress | undefined>;
  /** Keeps when feeds were last read, and by what. */
  noteFetches(fetches: readonly (FeedName & Fetch)[]): Promise<void>;
  /** The last good text kept of a feed, if any. */
  feedText(feed: FeedName): Promise<FeedText | undefined>;
  /** Keeps a feed's text in place of the one there was. */
  saveFeedText(feed: FeedName, text: FeedText): Promise<void>;
  /** The garden's keys for readings, revoked ones included. */
  readingKeys(gardenId: string): Promise<ReadingKey[]>;
  /** Keeps a new key by its hash. */
  addReadingKey(key: ReadingKey, keyHash: string): Promise<void>;
  /** Closes a key for good; returns whether there was such an open key. */
  revokeReadingKey(gardenId: string, id: string, at: Instant): Promise<boolean>;
  /** The open key that a hash belongs to. */
  findReadingKey(keyHash: string): Promise<ReadingKey | undefined>;
  /** The key that signs the garden's links in mail, if it has one. */
  signingKey(gardenId: string): Promise<string | undefined>;
  /** Keeps the signing key of a garden that has none. */
  keepSigningKey(gardenId: string, key: string, at: Instant): Promise<void>;
  /** The log of lists sent, the newest week first. */
  deliveries(gardenId: string): Promise<Delivery[]>;
  /** Claims a list for one try; see deliveries.ts. */
  claimDelivery(name: DeliveryName, wanted: Wanted): Promise<Delivery | undefined>;
  /** Notes that a claimed list is being taken in; false where the claim has passed to another. */
  handOver(name: DeliveryName, claim: Claim): Promise<boolean>;
  /** Notes how a try ended; false where another has claimed the list meanwhile. */
  settleDelivery(name: DeliveryName, by: string, outcome: Outcome): Promise<boolean>;
  /** Notes as unknown what somebody stopped in the middle of; returns how many. */
  noteBrokenOff(gardenId: string, at: Instant, problem: string): Promise<number>;
  /** Notes a list whose week was over before it went out. */
  noteMissed(name: DeliveryName, at: Instant): Promise<void>;
  /** Gardens being set up, the one last changed first; one that cannot be read is among them, without what was told. */
  drafts(): Promise<ListedDraft[]>;
  /** One of them, also one that has become a garden. */
  draft(id: string): Promise<KeptDraft | undefined>;
  /** Keeps a new draft. */
  addDraft(draft: KeptDraft): Promise<void>;
  /** Keeps a draft in place of what it was; false where there is none that has not become a garden. */
  changeDraft(draft: Pick<KeptDraft, 'id' | 'changedAt' | 'draft'>): Promise<boolean>;
  /** Notes the garden a draft becomes; false where it has become one already. */
  claimDraft(id: string, gardenId: string): Promise<boolean>;
  /** Throws a draft away; false where there is none that has not become a garden. */
  dropDraft(id: string): Promise<boolean>;
}

export interface Store extends Shelves {
  /** Stays while nothing is written, by this program or another; see change-mark.ts. Costs next to nothing. */
  changeMark(): number;
  /**
   * Does several things together: all of them, or none when `work` throws. The write lock is held from the start.
   * Inside, use only the shelves handed in: the store itself waits for the transaction to end.
   */
  transaction<Result>(work: (shelves: Shelves) => Promise<Result>): Promise<Result>;
  /**
   * Copies the database, while in use, into a new file that only its owner can read; see copy.ts.
   *
   * @throws {InputRefused} when there is a file of that name already
   * @throws {StoreFault} when the copy cannot be written, or the database is damaged
   */
  backup(file: string): Promise<void>;
  /**
   * Makes the daily copy if it is due by the hour of the household's day; see daily-copies.ts.
   *
   * @returns the file made, if any
   * @throws {StoreFault} when it could not be made
   */
  renewCopies(now: Instant, hour: number): Promise<string | undefined>;
  /** What there is to mend about the data: damage, copies that are late, a disk that fills up. Reads all of it. */
  checkUp(now?: Instant): Promise<Problem[]>;
  close(): Promise<void>;
}

/** The database file inside a data folder. */
export function databaseIn(dataFolder: string): string {
  return join(dataFolder, 'loamtide.db');
}

/** Folder of daily copies in the data folder, where none is named. */
const COPIES = 'copies';

/** How a store is opened. */
export interface Opening {
  /** Database file, or ":memory:" for one that is gone when closed. */
  file: string;
  /** The moment written beside each migration and into the copy's name; the clock's unless given. */
  now?: Instant;
  /** Whether pages are answered from it: it then waits for other programs' writes only briefly. */
  serves?: boolean;
  /** A folder that is there for daily copies, or none at all; a folder of their own beside the database unless given. */
  copies?: { folder: string } | 'none';
}

/**
 * Opens the store, making folder and file where there are none and bringing an older database up to date after a copy.
 *
 * @throws {StoreFault} when the file is no database, or its place cannot be used
 * @throws {InputRefused} when it was written by a newer program
 */
export async function openStore({ file, now, serves = false, copies }: Opening): Promise<Store> {
  const inMemory = file === ':memory:';
  const folder = inMemory ? undefined : copiesFolder(file, copies);
  if (!inMemory) tellingFaults(file, () => finishPutBack(file));
  if (folder !== undefined) refuseLost(file, folder);
  const connection = inMemory ? connect(file) : connectTogether(file);
  try {
    await migrate(connection, migrations, now ?? new Date().toISOString());
  } catch (error) {
    connection.close();
    throw error;
  }
  if (serves) waitBriefly(connection);
  const daily = folder && new DailyCopies(file, folder);
  return {
    ...shelvesOf(connection.db),
    changeMark: changeMark(connection.sqlite),
    transaction: (work) => connection.db.transaction().execute((transaction) => work(shelvesOf(transaction))),
    backup: (target) => copyDatabase(file, target),
    renewCopies: async (at, hour) => daily?.renew(at, hour),
    checkUp: async (at = new Date().toISOString()) => (inMemory ? [] : checkUp({ file, copies: daily, now: at })),
    close: async () => {
      await connection.db.destroy();
      connection.close();
    },
  };
}

/**
 * Puts a copy in place of the database; see put-back.ts.
 *
 * @throws {InputRefused} when the copy is not good, or a program uses the data
 * @throws {StoreFault} when the place cannot take it
 */
export function restoreStore({ file, copy, now }: { file: string; copy: string; now: Instant }): Promise<Replaced> {
  return putBack({ database: file, copy, now, steps: migrations });
}

/** Opens a database as one of those who use it. */
function connectTogether(file: string): Connection {
  tellingFaults(file, () => makeFolder(dirname(file)));
  const letGo = useTogether(file);
  try {
    const connection = connect(file);
    const close = () => {
      connection.close();
      letGo();
    };
    return { ...connection, close };
  } catch (error) {
    letGo();
    throw error;
  }
}

/** Where copies are kept and the database is gone, it is not begun anew unseen. */
function refuseLost(file: string, { folder }: CopiesFolder): void {
  if (existsSync(file) && statSync(file).size > 0) return;
  const [newest] = tellingFaults(folder, () => dailyCopies(folder));
  if (newest === undefined) return;
  const mend = `Put one back: "loamtide restore ${newest.file}". To begin anew, move the copies away first.`;
  throw storeFault(file, `The database is gone, but copies of it are kept in ${folder}.`, mend);
}

function copiesFolder(file: string, copies: Opening['copies']): CopiesFolder | undefined {
  if (copies === 'none') return undefined;
  return copies === undefined ? { folder: join(dirname(file), COPIES), isOurs: true } : { ...copies, isOurs: false };
}

function shelvesOf(db: Database): Shelves {
  return {
    gardenIds: () => gardenIds(db),
    gardensPutAway: () => gardensPutAway(db),
    putAwayGarden: (gardenId, at) => putAwayGarden(db, gardenId, at),
    createGarden: (garden) => createGarden(db, garden),
    factsVersion: (gardenId) => factsVersion(db, gardenId),
    ledger: (gardenId) => ledger(db, gardenId),
    append: (gardenId, expectedVersion, entries) => append(db, gardenId, expectedVersion, entries),
    plan: (gardenId) => plan(db, gardenId),
    planMade: (gardenId) => planMade(db, gardenId),
    savePlan: (gardenId, made, version) => savePlan(db, gardenId, made, version),
    newestPlanDay: () => newestPlanDay(db),
    weatherRecord: (gardenId) => weatherRecord(db, gardenId),
    recordVersion: (gardenId) => recordVersion(db, gardenId),
    formerRecord: (gardenId) => formerRecord(db, gardenId),
    replaceWeatherRecord: (gardenId, record) => replaceWeatherRecord(db, gardenId, record),
    feeds: (gardenId) => feeds(db, gardenId),
    addFeed: (feed) => addFeed(db, feed),
    revokeFeed: (gardenId, feedId, at) => revokeFeed(db, gardenId, feedId, at),
    reopenFeed: (feed, at) => reopenFeed(db, feed, at),
    changeFeed: (feed, change) => changeFeed(db, feed, change),
    followInFeed: (feed, change) => followInFeed(db, feed, change),
    rotateFeed: (feed, anew) => rotateFeed(db, feed, anew),
    findFeedAddress: (token) => findFeedAddress(db, token),
    noteFetches: (fetches) => noteFetches(db, fetches),
    feedText: (feed) => feedText(db, feed),
    saveFeedText: (feed, text) => saveFeedText(db, feed, text),
    readingKeys: (gardenId) => readingKeys(db, gardenId),
    addReadingKey: (key, keyHash) => addReadingKey(db, key, keyHash),
    revokeReadingKey: (gardenId, id, at) => revokeReadingKey(db, gardenId, id, at),
    findReadingKey: (keyHash) => findReadingKey(db, keyHash),
    signingKey: (gardenId) => signingKey(db, gardenId),
    keepSigningKey: (gardenId, key, at) => keepSigningKey(db, gardenId, key, at),
    deliveries: (gardenId) => deliveries(db, gardenId),
    claimDelivery: (name, wanted) => claimDelivery(db, name, wanted),
    handOver: (name, claim) => handOver(db, name, claim),
    settleDelivery: (name, by, outcome) => settleDelivery(db, name, by, outcome),
    noteBrokenOff: (gardenId, at, problem) => noteBrokenOff(db, gardenId, at, problem),
    noteMissed: (name, at) => noteMissed(db, name, at),
    drafts: () => drafts(db),
    draft: (id) => draft(db, id),
    addDraft: (kept) => addDraft(db, kept),
    changeDraft: (kept) => changeDraft(db, kept),
    claimDraft: (id, gardenId) => claimDraft(db, id, gardenId),
    dropDraft: (id) => dropDraft(db, id),
    ...signInShelves(db),
  };
}
