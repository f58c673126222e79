/**
 * The copies made by themselves: one a day, kept for a week of days and a month of weeks.
 */
import { existsSync, lstatSync, readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Problem } from '../garden/problem.ts';
import { type Instant, weekStart } from '../measures/days.ts';
import { copyDatabase } from './copy.ts';
import { flushFolder, makeFolder, removeDatabase } from './durable.ts';
import { asStoreFault, storeFault, tellingFaults } from './fault.ts';

/** Days and weeks of which the newest copy is kept. House default: a mistake found within the month can be gone back on. */
const KEPT_DAYS = 7;
const KEPT_WEEKS = 4;

const HOUR_MS = 3_600_000;
/** A copy this old is followed by the next at once. House default. */
const DAY_MS = 24 * HOUR_MS;
/** In the quiet hour one is made as soon as the last is this old, so that copies come to lie there. House default. */
const HALF_DAY_MS = 12 * HOUR_MS;
/** The hour, by the clock of the household, in which nobody waits for a page. House default. */
const QUIET_HOUR = 3;
/** A newest copy older than this is told of: a day and a night that the computer slept through are not. House default. */
const LATE_MS = 36 * HOUR_MS;
/** How long after a failure the next is tried. House default: a full disk is not filled at every minute. */
const RETRY_MS = HOUR_MS;

/** Name of a copy: no file of another name is ever removed. */
const NAME = /^loamtide\.daily\.(\d{4})(\d{2})(\d{2})T(\d{2})(\d{2})(\d{2})Z\.db$/;
const UNFINISHED = /^loamtide\.daily\.\d{8}T\d{6}Z\.db\.unfinished$/;

/** Where copies are kept. A folder of our own is made; one that was named has to be there. */
export interface CopiesFolder {
  folder: string;
  isOurs: boolean;
}

/** A copy made by itself. */
export interface DailyCopy {
  file: string;
  at: Instant;
}

/** The moment as it stands in the name of a copy: "20270418T093000Z". */
export function stampOf(moment: Instant): string {
  return moment.replace(/\.\d+/, '').replace(/[-:]/g, '');
}

/** The copies in a folder, the newest first. */
export function dailyCopies(folder: string): DailyCopy[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .flatMap((name) => {
      const [, year, month, day, hour, minute, second] = NAME.exec(name) ?? [];
      const file = join(folder, name);
      // What is empty, or only points elsewhere, is no copy that was made here.
      if (year === undefined || !lstatSync(file).isFile() || statSync(file).size === 0) return [];
      return [{ file, at: `${year}-${month}-${day}T${hour}:${minute}:${second}.000Z` }];
    })
    .sort((a, b) => (a.at < b.at ? 1 : -1));
}

/**
 * The copies to be removed: all but the newest of each of the last seven days and four weeks that have one. Those dated
 * later than now, by a clock that was wrong, are left alone and take no other's place.
 */
export function outlived(copies: readonly DailyCopy[], now: Instant): DailyCopy[] {
  const past = copies.filter(({ at }) => at <= now);
  const kept = new Set([...newestOf(past, dayOfCopy, KEPT_DAYS), ...newestOf(past, weekOfCopy, KEPT_WEEKS)]);
  return past.filter((copy) => !kept.has(copy));
}

const dayOfCopy = ({ at }: DailyCopy): string => at.slice(0, 10);
const weekOfCopy = (copy: DailyCopy): string => weekStart(dayOfCopy(copy));

function newestOf(newestFirst: readonly DailyCopy[], spanOf: (copy: DailyCopy) => string, spans: number): DailyCopy[] {
  const newest = new Map<string, DailyCopy>();
  for (const copy of newestFirst) if (!newest.has(spanOf(copy))) newest.set(spanOf(copy), copy);
  return [...newest.values()].slice(0, spans);
}

/** The daily copies of one database. */
export class DailyCopies {
  readonly #database: string;
  readonly #kept: CopiesFolder;
  #failed: { at: Instant; fault: unknown } | undefined;

  constructor(database: string, kept: CopiesFolder) {
    this.#database = database;
    this.#kept = kept;
  }

  /**
   * Makes a copy if one is due, and then removes those outlived.
   *
   * @param hour the hour of the household's day, 0 to 23
   * @returns the file made, if any
   * @throws {StoreFault} when it could not be made; none is removed then
   */
  async renew(now: Instant, hour: number): Promise<string | undefined> {
    if (!this.#isDue(now, hour)) return undefined;
    try {
      const made = await this.#make(now);
      this.#failed = undefined;
      return made;
    } catch (error) {
      const fault = asStoreFault(error, this.#kept.folder);
      this.#failed = { at: now, fault };
      throw fault;
    }
  }

  /** What is wrong with the copies: the last could not be made, or is too old. */
  problems(now: Instant, since: Instant): Problem[] {
    const { folder } = this.#kept;
    if (this.#failed !== undefined) {
      const { at, fault } = this.#failed;
      const why = fault instanceof Error ? fault.message.replaceAll(/\s*\n\s*/g, ' ') : String(fault);
      return [{ where: folder, what: `The daily copy of ${at} was not made. ${why}`, mend: MEND_COPY }];
    }
    const newest = tellingFaults(folder, () => this.#newest(now));
    if (Date.parse(now) - Date.parse(newest?.at ?? since) <= LATE_MS) return [];
    const what = newest === undefined ? 'There is no daily copy yet.' : `The newest daily copy is of ${newest.at}.`;
    return [{ where: folder, what, mend: MEND_COPY }];
  }

  #newest(now: Instant): DailyCopy | undefined {
    return dailyCopies(this.#kept.folder).find(({ at }) => at <= now);
  }

  #isDue(now: Instant, hour: number): boolean {
    const since = (moment: Instant) => Date.parse(now) - Date.parse(moment);
    // A clock set back leaves a failure in the future: then it is tried again too.
    if (this.#failed !== undefined && since(this.#failed.at) >= 0 && since(this.#failed.at) < RETRY_MS) return false;
    const newest = tellingFaults(this.#kept.folder, () => this.#newest(now));
    if (newest === undefined) return true;
    return since(newest.at) >= (hour === QUIET_HOUR ? HALF_DAY_MS : DAY_MS);
  }

  async #make(now: Instant): Promise<string> {
    const { folder, isOurs } = this.#kept;
    if (isOurs) makeFolder(folder);
    if (!existsSync(folder)) throw storeFault(folder, 'The folder for daily copies is not there.', MEND_FOLDER);
    for (const name of readdirSync(folder)) if (UNFINISHED.test(name)) removeDatabase(join(folder, name));
    const file = join(folder, `loamtide.daily.${stampOf(now)}.db`);
    await copyDatabase(this.#database, file);
    for (const { file: old } of outlived(dailyCopies(folder), now)) rmSync(old);
    flushFolder(folder);
    return file;
  }
}

const MEND_FOLDER = 'Make it, or mount the disk it lies on; or name another in LOAMTIDE_COPIES.';
const MEND_COPY =
  'Copies are made while the server runs. Put right what it says, or make one now: "loamtide backup FILE".';
