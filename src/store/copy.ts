/**
 * Copies of a database that is in use.
 */
import { closeSync, existsSync, openSync } from 'node:fs';
import SqliteFile from 'better-sqlite3';
import { InputRefused } from '../garden/problem.ts';
import { nameFile, removeDatabase } from './durable.ts';
import { asStoreFault, type StoreFault, storeFault } from './fault.ts';
import { unsound } from './sound.ts';

/**
 * Copies the whole database, as it stands at one moment, into a new file that only its owner can read, while others read
 * and write it. The copy is checked, and is one file without others beside it. It gets its name only once it is
 * complete, found sound, and on the disk.
 *
 * @throws {InputRefused} when there is a file of that name already
 * @throws {StoreFault} when the copy cannot be written, or what was copied is damaged
 */
export async function copyDatabase(source: string, target: string): Promise<void> {
  if (existsSync(target)) {
    throw new InputRefused('The copy was not made.', [
      { where: target, what: 'There is a file of this name already.', mend: 'Name a file that does not exist yet.' },
    ]);
  }
  const unfinished = `${target}.unfinished`;
  try {
    removeDatabase(unfinished);
    closeSync(openSync(unfinished, 'wx', 0o600));
    await copied(source, unfinished);
    settle(unfinished, source);
    nameFile(unfinished, target);
  } catch (error) {
    removeDatabase(unfinished);
    throw asStoreFault(error, target);
  }
}

/** A reader that stands on one moment keeps no writer waiting, and is not made to begin again by any. */
async function copied(source: string, target: string): Promise<void> {
  const reader = new SqliteFile(source, { readonly: true });
  try {
    reader.exec('begin');
    reader.prepare('select count(*) from sqlite_master').get();
    await reader.backup(target);
  } catch (error) {
    throw blamed(error, source);
  } finally {
    reader.close();
  }
}

/** While one is read and the other written, damage is the source's; all else is the target's. */
function blamed(error: unknown, source: string): unknown {
  const isDamage = error instanceof SqliteFile.SqliteError && /^SQLITE_(CORRUPT|NOTADB)/.test(error.code);
  return isDamage ? asStoreFault(error, source) : error;
}

/** Gathers a copy into one file, and refuses one that is not sound. */
function settle(file: string, source: string): void {
  const sqlite = new SqliteFile(file);
  try {
    sqlite.pragma('journal_mode = DELETE');
    const [first, ...rest] = unsound(sqlite, { thorough: true });
    if (first !== undefined) throw damaged(source, [first, ...rest]);
  } catch (error) {
    throw blamed(error, source);
  } finally {
    sqlite.close();
  }
}

function damaged(source: string, complaints: readonly string[]): StoreFault {
  const what = `The database is damaged, and was not copied: ${complaints.join('; ')}.`;
  return storeFault(source, what, 'Put back an older copy: "loamtide restore FILE" (docs/copies-and-faults.md).');
}
