/**
 * What a disk or a database refuses, told in words with the mend.
 */
import SqliteFile from 'better-sqlite3';
import { type Problem, problemLine } from '../garden/problem.ts';

const NOTHING_CHANGED = 'Nothing was changed by what was refused.';
const WAY_BACK = 'Stop the program and put back a copy: "loamtide restore FILE" (docs/copies-and-faults.md).';
const LEAVE = 'Give the user Loamtide runs as leave to write the folder and what is in it, or name another folder.';
const MAKE_ROOM = `Make room on the disk it lies on and try again. ${NOTHING_CHANGED}`;

/** Nothing is wrong with what was given: the place it is kept in cannot take it, or cannot give it back. */
export class StoreFault extends Error {
  override readonly name = 'StoreFault';
  readonly problems: readonly Problem[];
  /** Whether it ends by itself, so that the same may be tried again soon. */
  readonly isPassing: boolean;
  constructor(problems: readonly Problem[], about = 'The data cannot be reached.', isPassing = false) {
    super(`${about}\n${problems.map(problemLine).join('\n')}`);
    this.problems = problems;
    this.isPassing = isPassing;
  }
}

/** One fault of one place. */
export function storeFault(where: string, what: string, mend: string): StoreFault {
  return new StoreFault([{ where, what, mend }]);
}

/** What SQLite says, by the beginning of its code (https://www.sqlite.org/rescode.html), and what it means here. */
const SQLITE_WORDS: readonly (readonly [string, string, string])[] = [
  ['SQLITE_FULL', 'The disk is full.', MAKE_ROOM],
  [
    'SQLITE_BUSY',
    'Another program held the database and did not let go of it.',
    `Wait until it is done, or stop it, and try again. ${NOTHING_CHANGED}`,
  ],
  ['SQLITE_READONLY', 'The database may not be written.', LEAVE],
  ['SQLITE_CANTOPEN', 'The database, or a file beside it, cannot be opened.', LEAVE],
  ['SQLITE_PERM', 'The database may not be opened.', LEAVE],
  ['SQLITE_CORRUPT', 'The database is damaged.', WAY_BACK],
  ['SQLITE_NOTADB', 'This file is not a database, or its beginning is damaged.', `${WAY_BACK} Or name another folder.`],
  [
    'SQLITE_IOERR',
    'The disk did not read or write what it was asked to.',
    `See that the disk is there, sound and not full, and start the program again. ${NOTHING_CHANGED}`,
  ],
];

/** What the system says of a file, by its code. */
const SYSTEM_WORDS: Readonly<Record<string, readonly [string, string]>> = {
  EACCES: ['may not be read or written.', LEAVE],
  EPERM: ['may not be read or written.', LEAVE],
  EROFS: ['lies on a disk that cannot be written.', 'Make the disk writable, or name another folder.'],
  ENOSPC: ['could not be written: the disk is full.', MAKE_ROOM],
  EDQUOT: ['could not be written: your share of the disk is used up.', MAKE_ROOM],
  ENOTDIR: ['cannot be made: a file is in the way of the folder.', 'Name another folder.'],
  EEXIST: ['cannot be made: a file is in the way of the folder.', 'Name another folder.'],
  EIO: ['could not be read or written.', 'See that the disk is there and sound.'],
};

/** An error as the fault of the place data is kept in, where it is one; else as it came. */
export function asStoreFault(error: unknown, where: string): unknown {
  if (!(error instanceof Error) || !('code' in error)) return error;
  const code = String(error.code);
  if (error instanceof SqliteFile.SqliteError) {
    const [, what, mend] = SQLITE_WORDS.find(([beginning]) => code.startsWith(beginning)) ?? [];
    if (what === undefined || mend === undefined) return error;
    return new StoreFault([{ where, what, mend }], undefined, code.startsWith('SQLITE_BUSY'));
  }
  const [what, mend] = SYSTEM_WORDS[code] ?? [];
  return what === undefined || mend === undefined ? error : storeFault(where, what, mend);
}

/** Does something with a file, and tells the faults of its place as such. */
export function tellingFaults<Result>(where: string, work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    throw asStoreFault(error, where);
  }
}
