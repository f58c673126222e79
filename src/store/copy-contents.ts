/**
 * What a copy holds, after a look at all of it.
 */
import { chmodSync, copyFileSync } from 'node:fs';
import SqliteFile from 'better-sqlite3';
import type { Migration } from '../../migrations/migration.ts';
import { InputRefused, type Problem } from '../garden/problem.ts';
import { projectGarden } from '../garden/project.ts';
import type { Instant } from '../measures/days.ts';
import { connect } from './connection.ts';
import { removeDatabase } from './durable.ts';
import { ledger } from './ledger.ts';
import { migrate, newestOf, refuseNewer } from './migrate.ts';
import { unsound } from './sound.ts';
import type { Database } from './tables.ts';

/** What a good copy holds. */
export interface Contents {
  version: number;
  /** The newest version this program knows: a copy of an older one is brought up to date when it is opened. */
  newest: number;
  gardens: readonly { id: string; name: string; entries: number; lastChange: Instant | undefined }[];
}

/** A copy to be looked at. */
interface Looked {
  file: string;
  /** The name it is spoken of by. */
  called: string;
  steps: readonly Migration[];
  now: Instant;
}

const OTHER_COPY = 'Name another copy.';

/**
 * What a copy holds. Leaves it as one file, without a log beside it.
 *
 * @throws {InputRefused} when it is damaged, no database of this program or one of a newer one, or its facts cannot be read
 */
export async function checkedContents(looked: Looked): Promise<Contents> {
  const { file, called, steps, now } = looked;
  chmodSync(file, 0o600);
  const version = versionWithin(looked);
  // Facts of an older version are read as they will be: on a trial, which is thrown away.
  const trial = `${file}.trial`;
  removeDatabase(trial);
  copyFileSync(file, trial);
  try {
    const connection = connect(trial);
    try {
      await migrate({ ...connection, existed: false }, steps, now);
      return { version, newest: newestOf(steps), gardens: await foldedGardens(connection.db, called) };
    } finally {
      connection.close();
    }
  } finally {
    removeDatabase(trial);
  }
}

function versionWithin({ file, called, steps }: Looked): number {
  const sqlite = new SqliteFile(file);
  try {
    sqlite.pragma('journal_mode = DELETE');
    const damage = unsound(sqlite, { thorough: true });
    if (damage.length > 0)
      throw refused([{ where: called, what: `is damaged: ${damage.join('; ')}.`, mend: OTHER_COPY }]);
    const version = sqlite.prepare('select max(version) from migrations').pluck().get();
    if (typeof version !== 'number') throw notOurs(called);
    refuseNewer(called, version, newestOf(steps));
    return version;
  } catch (error) {
    if (!(error instanceof SqliteFile.SqliteError)) throw error;
    if (error.code === 'SQLITE_ERROR' || error.code === 'SQLITE_NOTADB') throw notOurs(called);
    if (!error.code.startsWith('SQLITE_CORRUPT')) throw error;
    throw refused([{ where: called, what: `is damaged: ${error.message}.`, mend: OTHER_COPY }]);
  } finally {
    sqlite.close();
  }
}

/** Every garden with its facts added up, those put away too; or everything that stands in the way of one. */
async function foldedGardens(db: Database, called: string): Promise<Contents['gardens']> {
  const rows = await db.selectFrom('gardens').select(['id', 'name']).orderBy('created_at').orderBy('id').execute();
  const problems: Problem[] = [];
  const gardens: Contents['gardens'][number][] = [];
  for (const { id, name } of rows) {
    try {
      const entries = await ledger(db, id);
      const folded = projectGarden(entries);
      gardens.push({ id, name: folded?.name ?? name, entries: entries.length, lastChange: entries.at(-1)?.recordedAt });
    } catch (error) {
      const why = error instanceof Error ? error.message.replaceAll(/\s*\n\s*/g, ' ') : String(error);
      problems.push({ where: `${called}, garden ${id}`, what: `Its facts cannot be read. ${why}`, mend: OTHER_COPY });
    }
  }
  if (problems.length > 0) throw refused(problems);
  return gardens;
}

function refused(problems: readonly Problem[]): InputRefused {
  return new InputRefused('Nothing was put back.', problems);
}

function notOurs(called: string): InputRefused {
  const mend = 'Name a copy made by "loamtide backup", a daily copy, or one made before an upgrade.';
  return refused([{ where: called, what: 'is no database of Loamtide.', mend }]);
}
