/**
 * How the data fares: what a look at the whole of it finds to mend.
 */
import { statfsSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import SqliteFile from 'better-sqlite3';
import type { Problem } from '../garden/problem.ts';
import type { Instant } from '../measures/days.ts';
import type { DailyCopies } from './daily-copies.ts';
import { asStoreFault, StoreFault } from './fault.ts';
import { unsound } from './sound.ts';

/** Room for this many databases of the present size is wanted: a copy, the log, and what is added. House default. */
const ROOM_IN_DATABASES = 3;
/** And never less than this. House default. */
const LEAST_ROOM_MB = 50;
const OCTETS_IN_MB = 1_000_000;

/** What is looked at. */
export interface CheckedUp {
  file: string;
  /** Nothing where no daily copies are kept. */
  copies: DailyCopies | undefined;
  now: Instant;
}

/**
 * Everything that is to be mended about a data folder: a database that is damaged or cannot be read, copies that fail or are
 * late, a disk that fills up. Reads the whole database, without keeping anybody from it.
 */
export function checkUp({ file, copies, now }: CheckedUp): Problem[] {
  return [() => soundness(file), () => copies?.problems(now, firstUse(file)) ?? [], () => room(file)].flatMap(found);
}

/** What a look finds, or why it could not be taken. */
function found(look: () => Problem[]): readonly Problem[] {
  try {
    return look();
  } catch (error) {
    if (error instanceof StoreFault) return error.problems;
    throw error;
  }
}

function soundness(file: string): Problem[] {
  return reading(file, (sqlite) =>
    unsound(sqlite, { thorough: false }).map((line) => ({
      where: file,
      what: `The database is damaged: ${line}.`,
      mend: 'Stop the program and put back a copy: "loamtide restore FILE" (docs/copies-and-faults.md).',
    })),
  );
}

/** When the database was made: until a day later no copy can be missed. */
function firstUse(file: string): Instant {
  return reading(file, (sqlite) => String(sqlite.prepare('select min(applied_at) from migrations').pluck().get()));
}

function reading<Result>(file: string, work: (sqlite: SqliteFile.Database) => Result): Result {
  try {
    const sqlite = new SqliteFile(file, { readonly: true });
    try {
      return work(sqlite);
    } finally {
      sqlite.close();
    }
  } catch (error) {
    throw asStoreFault(error, file);
  }
}

function room(file: string): Problem[] {
  const { bavail, bsize } = statfsSync(dirname(file));
  const free = bavail * bsize;
  const wanted = Math.max(LEAST_ROOM_MB * OCTETS_IN_MB, ROOM_IN_DATABASES * statSync(file).size);
  if (free >= wanted) return [];
  const inMb = (octets: number) => Math.floor(octets / OCTETS_IN_MB);
  const what = `The disk it lies on has ${inMb(free)} MB left.`;
  return [{ where: dirname(file), what, mend: `Make room for ${inMb(wanted)} MB at least.` }];
}
