/**
 * The steward keeps each garden's plan true: it takes facts in, has the plan made again, and hands out the last good
 * one. It is the one place where storage, clock and the pure core meet.
 */
import type { Climate } from '../climate/climate.ts';
import type { Garden } from '../garden/garden.ts';
import type { LedgerEntry } from '../garden/ledger.ts';
import type { Day, Instant } from '../measures/days.ts';
import type { TaskKey } from '../practices/draft.ts';
import type { Plan } from '../schedule/plan.ts';

/** Everything a page needs about one garden. */
export interface GardenView {
  garden: Garden;
  climate: Climate;
  plan: Plan;
  /** The ledger, oldest first, undone entries included and marked. */
  ledger: readonly LedgerEntry[];
}

/** A calendar feed of one garden. */
export interface Feed {
  id: string;
  gardenId: string;
  label: string;
  token: string;
  createdAt: Instant;
  revokedAt?: Instant;
}

/** A feed's text, ready to send. */
export interface FeedBody {
  body: string;
  etag: string;
  /** When anything in it last changed. */
  changedAt: Instant;
}

/** What undoing an entry would do: shown before it is done. */
export interface UndoPreview {
  entry: LedgerEntry;
  /** Later entries about the same beds, piles or tasks: they stay, and are listed so that nobody is surprised. */
  leaning: readonly LedgerEntry[];
  /** Tasks that would move, appear or go. */
  moves: readonly { key: TaskKey; title: string; from?: Day; to?: Day }[];
}

/** A difference between a garden file and the garden as it stands. */
export interface FileDifference {
  path: string;
  now: string;
  file: string;
  /** Set when a reported fact stands against the file: which one is kept. */
  keeps?: 'reported' | 'file';
}

export interface Steward {
  gardenIds(): Promise<string[]>;
  view(gardenId: string): Promise<GardenView>;
  today(gardenId: string): Promise<Day>;
  markDone(gardenId: string, keys: readonly TaskKey[], on: Day, by: string): Promise<Plan>;
  skip(gardenId: string, keys: readonly TaskKey[], by: string): Promise<Plan>;
  pin(gardenId: string, key: TaskKey, day: Day, by: string): Promise<Plan>;
  unpin(gardenId: string, key: TaskKey, by: string): Promise<Plan>;
  /** The newest entry that can be undone, if any. */
  previewUndo(gardenId: string, entry?: number): Promise<UndoPreview | undefined>;
  undo(gardenId: string, entry: number | undefined, by: string): Promise<Plan>;
  feeds(gardenId: string): Promise<Feed[]>;
  addFeed(gardenId: string, label: string): Promise<Feed>;
  revokeFeed(gardenId: string, feedId: string): Promise<boolean>;
  /** The text behind a feed address, or nothing for an unknown or revoked one. */
  feedBody(token: string): Promise<FeedBody | undefined>;
  /** Makes every plan whose day has passed again. Returns the gardens planned. */
  refresh(): Promise<string[]>;
  close(): Promise<void>;
}
