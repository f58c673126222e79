/**
 * The steward at work over a store.
 */
import { gardenFileOf } from '../garden/export-garden-file.ts';
import type { GardenFile } from '../garden/garden-file.ts';
import type { LedgerEntry } from '../garden/ledger.ts';
import { standingEntries } from '../garden/project.ts';
import type { Store } from '../store/store.ts';
import { linksIn } from './answers/follow.ts';
import { type Crew, inThisThread } from './crew/crew.ts';
import type { Steward } from './doings/steward.ts';
import { acceptIn } from './facts/accept.ts';
import { refusal } from './facts/marking.ts';
import { mendPreview, mendTaken, refusing } from './facts/mend.ts';
import { pileReadingsIn } from './facts/pile-readings.ts';
import { refuseUnlikely, reportPreview } from './facts/reports.ts';
import { takingBackIn } from './facts/taking-back.ts';
import { taskMarksIn } from './facts/task-marks.ts';
import { feedsIn } from './feeds/feeds.ts';
import { ServedFeeds } from './feeds/served-feeds.ts';
import { importGarden, importWeather } from './files/imports.ts';
import { importPreview } from './files/incoming.ts';
import { recordsIn } from './files/records.ts';
import { gardensIn } from './gardens/gardens-away.ts';
import { looksIn } from './planning/looks.ts';
import { type Clock, gardenOf, Planner } from './planning/planner.ts';
import { refreshed } from './planning/refresh.ts';
import { whatFails } from './planning/what-fails.ts';
import { postIn } from './post/post.ts';
import type { PostSettings } from './post/settings.ts';
import { UnderWay } from './post/under-way.ts';
import { setUpIn } from './set-up/set-up.ts';
import { COST, type ScryptCost } from './sign-in/password-hash.ts';
import { keysIn } from './sign-in/reading-keys.ts';
import { signInIn } from './sign-in/sign-in.ts';

/** What a steward is given. */
export interface StewardSettings {
  store: Store;
  clock: Clock;
  /** How the sign-in tells the time, where the gardens stand on another day than the one it is. */
  signInClock?: Clock;
  /** Told of what went wrong behind an answer that was given all the same. */
  report?: (fault: unknown) => void;
  /** How lists leave the house; without it they do not. */
  post?: PostSettings;
  /** Who makes plans; without it they are made in this thread. */
  crew?: Crew;
  /** What a password's hash costs to make; without it, what is asked today. */
  passwordCost?: ScryptCost;
}

/** A steward over a store. Closing it closes the store. */
export function createSteward(settings: StewardSettings): Steward {
  const { store, clock, report = console.error, post = {}, crew = inThisThread() } = settings;
  const { signInClock = clock, passwordCost = COST } = settings;
  const planner = new Planner(store, clock, crew);
  const room = { store, clock, planner };
  const accept = acceptIn(room);
  const underWay = new UnderWay();
  const served = new ServedFeeds({ ...room, report });
  const steward: Steward = {
    gardenIds: () => store.gardenIds(),
    importGarden: (garden, by) => importGarden(room, garden, by),
    previewImport: (handed) => importPreview(room, handed),
    importWeather: (gardenId, record) => importWeather(room, gardenId, record),
    importedFile: async (gardenId) => lastFile(gardenId, await store.ledger(gardenId)),
    view: (gardenId) => planner.view(gardenId),
    today: async (gardenId) => planner.dayOf(gardenOf(gardenId, await store.ledger(gardenId))),
    ...taskMarksIn(accept),
    ...pileReadingsIn(accept),
    ...keysIn(room),
    ...signInIn({ store, clock: signInClock, cost: passwordCost, report }),
    ...recordsIn(room),
    ...postIn({ ...room, post, report, underWay }),
    ...linksIn(room),
    ...looksIn(planner),
    ...setUpIn(room),
    ...gardensIn(room, () => steward),
    previewReport: async (gardenId, told) => reportPreview(planner, await planner.view(gardenId), told),
    report: (gardenId, told, by) =>
      accept(gardenId, by, (view) => {
        refuseUnlikely(view, told);
        return [told];
      }),
    fileNow: async (gardenId) => gardenFileOf((await planner.view(gardenId)).garden),
    previewMend: async (gardenId, edits) => mendPreview(planner, await planner.view(gardenId), edits),
    mend: (gardenId, edits, by) => refusing(() => accept(gardenId, by, (view) => mendTaken(view, edits))),
    ...takingBackIn(planner, accept),
    ...feedsIn(room, served),
    refresh: (signal) => refreshed({ store, planner, crew }, signal),
    whatFails: () => whatFails(room),
    async close() {
      await underWay.stop();
      served.end();
      await crew.close();
      await served.written();
      await store.close();
    },
  };
  return steward;
}

function lastFile(gardenId: string, ledger: readonly LedgerEntry[]): GardenFile {
  const imported = standingEntries(ledger).findLast(({ fact }) => fact.kind === 'garden-imported');
  if (imported?.fact.kind === 'garden-imported') return imported.fact.file;
  throw refusal(gardenId, 'There is no garden file here.', 'Bring one in with: loamtide garden import FILE');
}
