/**
 * The steward keeps each garden's plan true: it takes facts in, has the plan made again, and hands out the last good
 * one. It is the one place where storage, clock and the pure core meet.
 */
import type { FeedShape } from '../../calendar/feed-shape.ts';
import type { Climate } from '../../climate/climate.ts';
import type { ToldOtherwise } from '../../digest/told-otherwise.ts';
import type { Edit, EditRef } from '../../garden/edit.ts';
import type { Fact } from '../../garden/facts.ts';
import type { FileDifference } from '../../garden/file-difference.ts';
import type { Garden } from '../../garden/garden.ts';
import type { GardenFile } from '../../garden/garden-file.ts';
import type { HouseholdFact } from '../../garden/household-facts.ts';
import type { LedgerEntry } from '../../garden/ledger.ts';
import type { Problem } from '../../garden/problem.ts';
import type { StoredEdit } from '../../garden/stored-edit.ts';
import type { LoggedDay } from '../../garden/weather.ts';
import type { Day, Instant } from '../../measures/days.ts';
import type { Quantity } from '../../measures/quantity.ts';
import type { Reason, TaskKey } from '../../practices/draft.ts';
import type { Plan } from '../../schedule/plan.ts';
import type { Feed } from '../../store/feeds.ts';
import type { ReadingKey } from '../../store/reading-keys.ts';
import type { WeatherRecord } from '../../store/weather.ts';
import type { GardenDoings } from './garden-doings.ts';
import type { LookDoings } from './look-doings.ts';
import type { MailDoings } from './mail-doings.ts';
import type { LinkDoings } from './mail-links.ts';
import type { RecordDoings } from './record-doings.ts';
import type { SetUpDoings } from './set-up-doings.ts';
import type { SignInDoings } from './sign-in-doings.ts';

/** Everything a page needs about one garden. */
export interface GardenView {
  garden: Garden;
  climate: Climate;
  plan: Plan;
  /** The ledger, oldest first, undone entries included and marked. */
  ledger: readonly LedgerEntry[];
}

/** A feed's text, ready to send. */
export interface FeedBody {
  body: string;
  etag: string;
  /** When anything in it last changed. */
  changedAt: Instant;
}

/** Another label for a feed, another shape, or both. */
export interface NewLook {
  label?: string;
  shape?: FeedShape;
}

/** What undoing an entry would do: shown before it is done. */
export interface UndoPreview {
  entry: LedgerEntry;
  /** Later entries about the same beds, piles or tasks: they stay, and are listed so that nobody is surprised. */
  leaning: readonly LedgerEntry[];
  /** Tasks that would move, appear or go, or want other amounts. */
  moves: readonly TaskMove[];
}

/** Something that happened, as somebody reports it. */
export type Report = Extract<
  Fact,
  {
    kind:
      | 'cold-night-told'
      | 'away-told'
      | 'soil-squeezed'
      | 'disease-found'
      | 'weather-logged'
      | 'compost-not-ready'
      | 'stage-seen'
      | 'stand-looked'
      | 'regrowth-seen'
      | CoverChoice['kind']
      | 'plantings-planned'
      | 'crop-wished'
      | 'wish-dropped'
      | HouseholdFact['kind'];
  }
>;

/** What the gardener chooses for a bed's gap. */
export type CoverChoice = Extract<Fact, { kind: 'stand-planned' | 'stand-dropped' | 'mulch-planned' }>;

/** A task that a change would move, bring or take away, or that would want other amounts. */
export interface TaskMove {
  key: TaskKey;
  title: string;
  from?: Day;
  to?: Day;
  /** What its new day rests on; of what would go, its old one. */
  reasons: readonly Reason[];
  /** Things to hand that would be wanted in other amounts; absent where none are. */
  amounts?: readonly AmountChange[];
  /** What else it would say otherwise, under its old title; absent where it says the same. */
  otherwise?: ToldOtherwise;
}

/** A thing to hand whose amount would change; an amount is absent where none is wanted. */
export interface AmountChange {
  what: string;
  from?: Quantity;
  to?: Quantity;
}

/** What taking a report in would do: shown before it is done. */
export interface ReportPreview {
  before: Plan;
  after: Plan;
  /** The garden as it would be. */
  garden: Garden;
  moves: readonly TaskMove[];
}

/** What a change to what the garden was told would do: shown before it is made. */
export interface MendPreview extends ReportPreview {
  /** What would be otherwise in the garden's file. */
  differences: readonly FileDifference[];
  /** What goes with something taken out, because it cannot be without it, in words. */
  gone: readonly { list: string; words: string }[];
  /** Where each edited row stands in the file as it would be: a problem at "beds[2].lengthM" is about the row at 2. */
  refs: readonly EditRef[];
}

/** A garden file with the weather record it names, as read by whoever has the files. */
export interface GardenImport {
  file: GardenFile;
  /** Who wins where a reported fact stands against the file. */
  prefer: 'reported' | 'file';
  record?: WeatherRecord;
  /** Weather already seen this season, logged in the same breath: the first plan knows it, and nothing moves after it. */
  weather?: readonly LoggedDay[];
}

/** A garden file as it was handed over. */
export interface HandedFile {
  text: string;
  prefer: GardenImport['prefer'];
  /** The garden it is to change; a new one where it is not given. */
  gardenId?: string;
}

/** What bringing a file in would do: shown before it is done. */
export interface ImportPreview {
  file: GardenFile;
  /** The garden as it would be, with its plan. */
  view: GardenView;
  /** What would change in the garden that is there; none for a new one. */
  changes: readonly StoredEdit[];
  /** Changes of its people, and of work that was given to somebody. */
  ofPeople: readonly FileDifference[];
  /** Where what was reported stands against the file: what is kept though the file says otherwise, or what is dropped. */
  against: readonly StoredEdit[];
  /** Tasks that would move, come or go. */
  moves: readonly TaskMove[];
  /** What can be read but is hardly meant. */
  doubts: readonly Problem[];
}

/** What was really used for a task, or came of it. */
export interface Used {
  litres?: number;
  /** Of seed of several kinds, all together: shared out as it was planned. */
  grams?: number;
  /** Grams of seed by cover, where it was of several kinds. */
  seed?: Readonly<Record<string, number>>;
  /** A fertiliser of the handbook, where it was another than planned. */
  fertiliserId?: string;
}

/** A reading of a pile, as somebody reports it. */
export type ReportedReading = Omit<Extract<Fact, { kind: 'pile-read' }>, 'kind'>;

/** The plan after a change, with the change's own entry and what it moved; without them where nothing was written down. */
export interface ChangedPlan extends Plan {
  own?: { entry: number; moves: readonly TaskMove[] };
}

export interface Steward
  extends MailDoings,
    LinkDoings,
    SetUpDoings,
    GardenDoings,
    RecordDoings,
    SignInDoings,
    LookDoings {
  /** Ids of every garden that is not put away, oldest first. */
  gardenIds(): Promise<string[]>;
  /** Brings a garden in, or a new file of one that is there. Nothing is kept when the plan cannot be made from it. */
  importGarden(garden: GardenImport, by: string): Promise<Plan>;
  /** What bringing a garden file in would do; nothing is kept. */
  previewImport(handed: HandedFile): Promise<ImportPreview>;
  /** Puts a weather record behind a garden whose file asks for one. */
  importWeather(gardenId: string, record: WeatherRecord): Promise<Plan>;
  /** The file the garden was last brought in with. */
  importedFile(gardenId: string): Promise<GardenFile>;
  view(gardenId: string): Promise<GardenView>;
  today(gardenId: string): Promise<Day>;
  /** @param used what was used or ordered, by task, where it was other than planned */
  markDone(
    gardenId: string,
    keys: readonly TaskKey[],
    on: Day,
    by: string,
    used?: Readonly<Record<TaskKey, Used>>,
  ): Promise<Plan>;
  skip(gardenId: string, keys: readonly TaskKey[], by: string): Promise<Plan>;
  /** Puts tasks off past a day: they are not asked for up to it. Says nothing new of those put off as far already. */
  putOff(gardenId: string, keys: readonly TaskKey[], past: Day, by: string): Promise<Plan>;
  pin(gardenId: string, key: TaskKey, day: Day, by: string): Promise<Plan>;
  unpin(gardenId: string, key: TaskKey, by: string): Promise<Plan>;
  readPile(gardenId: string, reading: ReportedReading, by: string): Promise<Plan>;
  /** The same from a script that may send a reading twice, or at once; returns whether it was new and is kept. */
  readPileOnce(gardenId: string, reading: ReportedReading, by: string): Promise<boolean>;
  /** A key for scripts that tell of piles; shown this once. */
  addReadingKey(gardenId: string, label: string): Promise<{ kept: ReadingKey; key: string }>;
  readingKeys(gardenId: string): Promise<ReadingKey[]>;
  revokeReadingKey(gardenId: string, id: string): Promise<boolean>;
  /** The garden a key belongs to; nothing for a wrong or revoked one. */
  gardenOfKey(key: string): Promise<string | undefined>;
  /** What a report would do to the plan; nothing is kept. */
  previewReport(gardenId: string, report: Report): Promise<ReportPreview>;
  /** Takes a report in. */
  report(gardenId: string, report: Report, by: string): Promise<ChangedPlan>;
  /** The garden as a file, as it stands now, in SI whatever its reader reads. */
  fileNow(gardenId: string): Promise<GardenFile>;
  /**
   * Changes what the garden was told. The whole file is checked as it would be: a problem is where it would be in that file,
   * "beds[2].lengthM" (see {@link MendPreview.refs}; editedFile gives them for refused edits too). Nothing is kept when refused.
   */
  mend(gardenId: string, edits: readonly Edit[], by: string): Promise<ChangedPlan>;
  /** What a change would do; nothing is kept. */
  previewMend(gardenId: string, edits: readonly Edit[]): Promise<MendPreview>;
  /** The newest entry that can be undone, if any. */
  previewUndo(gardenId: string, entry?: number): Promise<UndoPreview | undefined>;
  undo(gardenId: string, entry: number | undefined, by: string): Promise<Plan>;
  feeds(gardenId: string): Promise<Feed[]>;
  /** Makes a feed: the whole of the garden's work, unless it is given a shape. */
  addFeed(gardenId: string, label: string, shape?: FeedShape): Promise<Feed>;
  /** Gives an open feed another label or shape at its old address. Nothing when there is no such open feed. */
  changeFeed(gardenId: string, feedId: string, look: NewLook): Promise<Feed | undefined>;
  /** Closes a feed's address; returns whether there was such an open feed. */
  revokeFeed(gardenId: string, feedId: string): Promise<boolean>;
  /** Opens a revoked feed again at the address it had; returns whether there was such a revoked feed. */
  reopenFeed(gardenId: string, feedId: string): Promise<boolean>;
  /** Gives an open feed a new address; the old one says so for a while. Nothing where there is no such open feed. */
  rotateFeed(gardenId: string, feedId: string): Promise<Feed | undefined>;
  /**
   * The text behind a feed address: the feed as it stands, or its last good text where a new one cannot be made, or the
   * notice of an address closed lately. Nothing for an unknown address and one closed long ago.
   *
   * @param by the kind of program that asks, to be kept as the feed's last reading; no reading is kept without it
   */
  feedBody(token: string, by?: string): Promise<FeedBody | undefined>;
  /** Makes every plan whose day has passed again, until it is told to stop. Returns the gardens planned. */
  refresh(signal?: AbortSignal): Promise<string[]>;
  /** A word on what fails, at next to no cost: whether the database answers, and whether any plan keeps up with its days. */
  whatFails(): Promise<string | undefined>;
  close(): Promise<void>;
}
