/**
 * Whether a database file is whole.
 */
import type SqliteFile from 'better-sqlite3';

/** Most complaints worth hearing of one file. */
const COMPLAINTS = 5;

/**
 * What is wrong with a database, each in SQLite's own words; nothing where it is sound.
 *
 * @param thorough also holds every index against its table, which takes longer
 *   (https://www.sqlite.org/pragma.html#pragma_integrity_check)
 */
export function unsound(sqlite: SqliteFile.Database, { thorough }: { thorough: boolean }): string[] {
  const check = thorough ? 'integrity_check' : 'quick_check';
  const found = sqlite.prepare(`pragma ${check}(${COMPLAINTS})`).pluck().all().map(String);
  const damage = found.filter((line) => line !== 'ok');
  if (damage.length > 0) return damage;
  const orphans = sqlite.prepare<[], { table: string; parent: string }>('pragma foreign_key_check').all();
  return orphans.slice(0, COMPLAINTS).map(({ table, parent }) => `a row of ${table} belongs to no row of ${parent}`);
}
