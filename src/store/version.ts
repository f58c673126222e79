/**
 * The version of a database, told without opening it for writing.
 */
import SqliteFile from 'better-sqlite3';
import { migrations } from '../../migrations/index.ts';
import { asStoreFault } from './fault.ts';

/**
 * The version of a database file, and the newest this program knows. Of a file that holds nothing it is 0.
 *
 * @throws {StoreFault} when the file is no database, or cannot be read
 */
export function databaseVersions(file: string): { version: number; known: number } {
  try {
    return versionsIn(new SqliteFile(file, { readonly: true, fileMustExist: true }));
  } catch (error) {
    throw asStoreFault(error, file);
  }
}

function versionsIn(sqlite: SqliteFile.Database): { version: number; known: number } {
  try {
    const held = sqlite.prepare("select count(*) from sqlite_master where name = 'migrations'").pluck().get();
    const version = held === 0 ? 0 : Number(sqlite.prepare('select max(version) from migrations').pluck().get() ?? 0);
    return { version, known: migrations.at(-1)?.version ?? 0 };
  } finally {
    sqlite.close();
  }
}
