/**
 * A copy put back in place of the database: checked first, and then in one step that a kill does not halve.
 */
import { constants, copyFileSync, existsSync, linkSync, renameSync, rmSync, statSync, utimesSync } from 'node:fs';
import { dirname } from 'node:path';
import SqliteFile from 'better-sqlite3';
import type { Migration } from '../../migrations/migration.ts';
import { InputRefused } from '../garden/problem.ts';
import type { Instant } from '../measures/days.ts';
import { type Contents, checkedContents } from './copy-contents.ts';
import { stampOf } from './daily-copies.ts';
import { besides, flushFolder, isSameFile, makeFolder, nameFile, removeDatabase } from './durable.ts';
import { asStoreFault } from './fault.ts';
import { keepAlone, type LetGo } from './in-use.ts';

/** What is put back where, and when. */
export interface PutBack {
  database: string;
  copy: string;
  now: Instant;
  steps: readonly Migration[];
}

/** What was put back, and where the database lies that was there before. */
export interface Replaced extends Contents {
  aside: string | undefined;
}

/** The copy while it is looked at, and once it is found good. From then on it is put in place, whoever is killed. */
const incomingOf = (database: string): string => `${database}.incoming`;
const nextOf = (database: string): string => `${database}.next`;

/**
 * Puts a copy in place of a database, after the whole of it was checked: that it is sound, of a version this program knows,
 * and that each garden's facts can be read and add up. The database there was is kept beside it under a dated name. Nobody
 * is signed in any more: who was when the copy was made may have been signed out since.
 *
 * @throws {InputRefused} when the copy is not good, or a program uses the data
 * @throws {StoreFault} when the place cannot take it
 */
export async function putBack({ database, copy, now, steps }: PutBack): Promise<Replaced> {
  const incoming = incomingOf(database);
  refuseUnreadable(copy, database);
  makeFolder(dirname(database));
  const letGo = keepAlone(database);
  try {
    place(database);
    removeDatabase(incoming);
    fetchCopy(copy, incoming);
    const contents = await checkedContents({ file: incoming, called: copy, steps, now });
    signEverybodyOut(incoming);
    utimesSync(incoming, new Date(now), new Date(now));
    nameFile(incoming, nextOf(database));
    return { ...contents, aside: place(database) };
  } catch (error) {
    throw asStoreFault(error, database);
  } finally {
    if (existsSync(incoming)) removeDatabase(incoming);
    letGo();
  }
}

/** Ends the sessions a copy holds; one of an older version knows none. */
function signEverybodyOut(file: string): void {
  const sqlite = new SqliteFile(file);
  try {
    const known = sqlite.prepare("select 1 from sqlite_master where type = 'table' and name = 'sessions'").get();
    if (known !== undefined) sqlite.exec('delete from sessions');
  } finally {
    sqlite.close();
  }
}

/** Puts a copy in place that was found good by a program that was killed before it could. */
export function finishPutBack(database: string): void {
  if (!existsSync(nextOf(database))) return;
  let letGo: LetGo;
  try {
    letGo = keepAlone(database);
  } catch (error) {
    // Whoever checked it is still at it: what comes next says so.
    if (error instanceof InputRefused) return;
    throw error;
  }
  try {
    place(database);
  } finally {
    letGo();
  }
}

/**
 * Puts a checked copy in place, from whichever step it was left at. Returns where the database lies that was there before.
 * Its log goes with it under its new name, and is gone from the old place before another database stands there.
 */
function place(database: string): string | undefined {
  const next = nextOf(database);
  if (!existsSync(next)) return undefined;
  const aside = `${database}.replaced.${stampOf(statSync(next).mtime.toISOString())}`;
  for (const file of [database, ...besides(database).filter((each) => !each.endsWith('-shm'))])
    if (existsSync(file)) keepUnder(file, aside + file.slice(database.length));
  flushFolder(dirname(database));
  for (const file of besides(database)) rmSync(file, { force: true });
  flushFolder(dirname(database));
  renameSync(next, database);
  flushFolder(dirname(database));
  return existsSync(aside) ? aside : undefined;
}

/** Gives a file a second name. Where the disk knows no such thing it is copied. */
function keepUnder(file: string, name: string): void {
  if (existsSync(name)) return;
  try {
    linkSync(file, name);
  } catch {
    const unfinished = `${name}.unfinished`;
    copyFileSync(file, unfinished);
    nameFile(unfinished, name);
  }
}

function refuseUnreadable(copy: string, database: string): void {
  const refused = (what: string, mend: string) =>
    new InputRefused('Nothing was put back.', [{ where: copy, what, mend }]);
  const found = statSync(copy, { throwIfNoEntry: false });
  if (found === undefined) throw refused('does not exist.', 'Check the name and the folder.');
  if (!found.isFile()) throw refused('is not a file.', 'Name a file.');
  if (!isSameFile(found, statSync(database, { throwIfNoEntry: false }))) return;
  throw refused('is the database itself.', 'Name a copy of it.');
}

/** Brings a copy in, with the log beside it where a whole folder was copied. */
function fetchCopy(copy: string, incoming: string): void {
  // A database somebody uses is no copy: it may change while it is read.
  const letGo = existsSync(`${copy}.lock`) ? keepAlone(copy) : () => undefined;
  try {
    const log = `${copy}-wal`;
    for (const [from, to] of [
      [copy, incoming],
      [log, `${incoming}-wal`],
    ] as const)
      if (existsSync(from)) copyFileSync(from, to, constants.COPYFILE_EXCL);
  } finally {
    letGo();
  }
}
