/**
 * The data folder opened for one command, and closed after it.
 */
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { withoutAbsent } from '../../garden/without-absent.ts';
import type { Day } from '../../measures/days.ts';
import { createSteward } from '../../steward/create-steward.ts';
import type { Crew } from '../../steward/crew/crew.ts';
import type { Steward } from '../../steward/doings/steward.ts';
import type { Clock } from '../../steward/planning/planner.ts';
import type { PostSettings } from '../../steward/post/settings.ts';
import { databaseIn, openStore, type Store, type Opening as StoreOpening } from '../../store/store.ts';
import { faultText } from './fault-text.ts';
import { refusal } from './refusal.ts';
import type { Settings } from './settings.ts';
import type { Surroundings } from './surroundings.ts';

/** Who makes changes on the command line, as the ledger keeps it. */
export const BY = 'command line';

/** Where a command looks, and from which day. */
export interface Looking {
  at: Surroundings;
  settings: Settings;
  options: { today?: Day | undefined; data?: string | undefined };
}

/** How a data folder is opened. */
export interface Opening {
  /** Makes the folder where there is none; otherwise that is refused. */
  make?: boolean;
  /** Only looks: the plan it makes is shown and not published. */
  onlyLook?: boolean;
  /** Told of what went wrong behind an answer that was given all the same; standard error unless given. */
  report?: (fault: unknown) => void;
  /** Answers pages, which must not wait long for other programs. */
  serves?: boolean;
  /** Who makes the plans; without it they are made in this thread, which a single command is done with soonest. */
  crew?: Crew;
}

export interface Household {
  store: Store;
  steward: Steward;
}

/** Opens the data folder, does the work, and closes it whatever came of it. */
export async function withHousehold<Result>(
  looking: Looking,
  opening: Opening,
  work: (household: Household) => Promise<Result>,
): Promise<Result> {
  const household = await openHousehold(looking, opening);
  try {
    return await work(household);
  } finally {
    await household.steward.close();
  }
}

/** Opens the data folder. Closing the steward closes it. */
async function openHousehold(looking: Looking, opening: Opening): Promise<Household> {
  const { make = false, onlyLook = false, serves = false, report, crew } = opening;
  const { at, options } = looking;
  const file = databaseIn(dataFolder(looking));
  if (!make && !existsSync(file)) throw noData(file);
  const store = await openStore({ file, now: at.now(), serves, ...copiesOf(looking) });
  const steward = createSteward({
    store: onlyLook ? unpublished(store) : store,
    clock: clockOf(at, options.today),
    signInClock: { now: at.now },
    report: report ?? ((fault) => at.stderr.write(`${faultText(fault)}\n`)),
    post: postSettings(looking),
    ...(crew === undefined ? {} : { crew }),
  });
  return { store, steward };
}

/** How lists leave this household: over the mail server of the settings, or into a folder. */
function postSettings(looking: Looking): PostSettings {
  const { at, settings } = looking;
  const { mailServer, mailFrom, publicUrl, outbox } = settings;
  return withoutAbsent({
    server: mailServer,
    from: mailFrom,
    publicUrl,
    outbox: outbox === undefined ? join(dataFolder(looking), OUTBOX) : resolve(at.cwd, outbox),
  });
}

/** Where daily copies are kept, if at all. */
function copiesOf({ at, settings: { copies } }: Looking): Pick<StoreOpening, 'copies'> {
  if (copies === undefined) return {};
  return { copies: copies === NO_COPIES ? 'none' : { folder: resolve(at.cwd, copies) } };
}

/** What is written in place of a folder where no daily copies are wanted. */
const NO_COPIES = 'off';

/** Folder of lists in the data folder, where none is named. */
const OUTBOX = 'outbox';

/** The data folder a command uses. */
export function dataFolder({ at, settings, options }: Looking): string {
  return resolve(at.cwd, options.data ?? settings.dataFolder);
}

/** The present, or noon of a day that is stood on instead, so that the same command gives the same output. */
export function clockOf(at: Surroundings, today: Day | undefined): Clock {
  return today === undefined ? { now: at.now } : { today, now: () => `${today}T12:00:00.000Z` };
}

/** A store that takes no plans: a server may stand on another day, and a look must not move what its calendars show. */
function unpublished(store: Store): Store {
  return { ...store, savePlan: async () => true };
}

/**
 * The garden a command is about: the one named, or the only one there is.
 *
 * @throws {InputRefused} when there is no such garden, none at all, or more than one to choose from
 */
export async function chosenGarden(steward: Steward, wanted: string | undefined): Promise<string> {
  const ids = await steward.gardenIds();
  const [only, ...others] = ids;
  const known = `Gardens here: ${ids.join(', ')}.`;
  if (only === undefined) throw refusal('There is no garden yet.', 'the data folder', 'holds no garden.', HOW_TO_BEGIN);
  if (wanted !== undefined) {
    if (ids.includes(wanted)) return wanted;
    throw refusal('There is no such garden.', '--garden', `"${wanted}" is not kept here.`, known);
  }
  if (others.length === 0) return only;
  throw refusal('Which garden?', '--garden', 'is missing, and there are several gardens.', known);
}

const HOW_TO_BEGIN =
  'Bring a garden in with "loamtide garden import FILE", or run "loamtide serve" for the demo garden.';

function noData(file: string) {
  return refusal(
    'There is no data yet.',
    file,
    'does not exist.',
    `${HOW_TO_BEGIN} Another folder is named with --data.`,
  );
}
