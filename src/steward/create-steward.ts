/**
 * The steward at work over a store.
 */
import { gardenFileOf } from '../garden/export-garden-file.ts';
import type { GardenFile } from '../garden/garden-file.ts';
import type { LedgerEntry } from '../garden/ledger.ts';
import { standingEntries } from '../garden/project.ts';
import type { Store } from '../store/store.ts';
import { acceptIn } from './accept.ts';
import { linksIn } from './answers/follow.ts';
import { type Crew, inThisThread } from './crew/crew.ts';
import { feedsIn } from './feeds.ts';
import { gardensIn } from './gardens-away.ts';
import { importGarden, importWeather } from './imports.ts';
import { importPreview } from './incoming.ts';
import { looksIn } from './looks.ts';
import { refusal } from './marking.ts';
import { mendPreview, mendTaken, refusing } from './mend.ts';
import { pileReadingsIn } from './pile-readings.ts';
import { type Clock, gardenOf, Planner } from './planner.ts';
import { postIn } from './post/post.ts';
import type { PostSettings } from './post/settings.ts';
import { UnderWay } from './post/under-way.ts';
import { keysIn } from './reading-keys.ts';
import { recordsIn } from './records.ts';
import { refreshed } from './refresh.ts';
import { refuseUnlikely, reportPreview } from './reports.ts';
import { ServedFeeds } from './served-feeds.ts';
import { setUpIn } from './set-up/set-up.ts';
import { COST, type ScryptCost } from './sign-in/password-hash.ts';
import { signInIn } from './sign-in/sign-in.ts';
import type { Steward } from './steward.ts';
import { takingBackIn } from './taking-back.ts';
import { taskMarksIn } from './task-marks.ts';
import { whatFails } from './what-fails.ts';

/** What a steward is given. */
export interface StewardSettings {
  store: Store;
  clock: Clock;
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
  const { store, clock, report = console.error, post = {}, crew = inThisThread(), passwordCost = COST } = settings;
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
    ...signInIn({ store, clock, cost: passwordCost, report }),
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
