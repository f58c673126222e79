/**
 * Files made to last: what is renamed or removed is so on the disk too, once the folder is flushed.
 */
import { closeSync, fsyncSync, mkdirSync, openSync, renameSync, rmSync, type Stats } from 'node:fs';
import { dirname } from 'node:path';

/** Leave for the owner alone: the files hold the secret addresses of feeds. */
const PRIVATE_FOLDER = 0o700;

/** Flushes a file's octets to the disk. */
function flushFile(file: string): void {
  flush(file, 'r+');
}

/** Flushes a folder: which files it holds under which names. */
export function flushFolder(folder: string): void {
  // Windows has no such call; it keeps names by itself.
  if (process.platform !== 'win32') flush(folder, 'r');
}

function flush(path: string, flags: 'r' | 'r+'): void {
  const handle = openSync(path, flags);
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** Gives a complete file its name, in place of any file of that name, in one step. */
export function nameFile(from: string, to: string): void {
  flushFile(from);
  renameSync(from, to);
  flushFolder(dirname(to));
}

/** Whether two names are of one file: numbers of files are given anew on each disk. */
export function isSameFile(one: FileNumbers, other: FileNumbers | undefined): boolean {
  return one.ino === other?.ino && one.dev === other.dev;
}

type FileNumbers = Pick<Stats, 'dev' | 'ino'>;

/** Makes a folder for its owner alone, with those above it, where it is not there. */
export function makeFolder(folder: string): void {
  const first = mkdirSync(folder, { recursive: true, mode: PRIVATE_FOLDER });
  if (first === undefined) return;
  for (let made = folder; ; made = dirname(made)) {
    flushFolder(dirname(made));
    if (made === first || made === dirname(made)) return;
  }
}

/** The files SQLite keeps beside a database. */
export function besides(database: string): string[] {
  return ['-wal', '-shm', '-journal'].map((ending) => database + ending);
}

/** Removes a database nobody has open, with what lies beside it. */
export function removeDatabase(database: string): void {
  // What lies beside goes first: a database must never be found with the log of another.
  for (const file of [...besides(database), database]) rmSync(file, { force: true });
}
