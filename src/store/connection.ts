/**
 * The one connection to the database file. Everything that is true of SQLite alone is here and in copy.ts.
 */
import { chmodSync, closeSync, mkdirSync, openSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import SqliteFile from 'better-sqlite3';
import { CompiledQuery, type DatabaseConnection, type Driver, Kysely, SqliteDialect, SqliteDriver } from 'kysely';
import { InputRefused } from '../garden/problem.ts';
import type { Database, Tables } from './tables.ts';

/** A database that lives only as long as the program. */
const IN_MEMORY = ':memory:';

/** How long a writer waits for another program's write to end. House default. */
const BUSY_TIMEOUT_MS = 5_000;

/** An open database: the query builder, and the SQLite handle it stands on. */
export interface Connection {
  db: Database;
  sqlite: SqliteFile.Database;
  /** Whether the file held anything before it was opened. */
  existed: boolean;
}

/**
 * Opens a database file, made with its folder where there is none: the folder for its owner alone (0700), the file
 * readable and writable by its owner alone (0600), for it holds the secret addresses of feeds.
 *
 * @throws {InputRefused} when the file is not a database
 */
export function connect(file: string): Connection {
  const existed = file !== IN_MEMORY && preparePrivateFile(file);
  const sqlite = new SqliteFile(file, { timeout: BUSY_TIMEOUT_MS });
  try {
    sqlite.pragma('journal_mode = WAL');
    sqlite.pragma('synchronous = FULL');
    sqlite.pragma('foreign_keys = ON');
  } catch (error) {
    sqlite.close();
    throw isNotADatabase(error) ? notADatabase(file) : error;
  }
  return { db: new Kysely<Tables>({ dialect: new LockingDialect({ database: sqlite }) }), sqlite, existed };
}

/** Makes an empty file that only its owner can read, or narrows the one there. Returns whether it held anything. */
function preparePrivateFile(file: string): boolean {
  mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
  closeSync(openSync(file, 'a', 0o600));
  const { mode, size } = statSync(file);
  if ((mode & 0o077) !== 0) chmodSync(file, 0o600);
  return size > 0;
}

function isNotADatabase(error: unknown): boolean {
  return error instanceof SqliteFile.SqliteError && error.code === 'SQLITE_NOTADB';
}

function notADatabase(file: string): InputRefused {
  return new InputRefused('The data cannot be opened.', [
    { where: file, what: 'This file is not a database.', mend: 'Move it away, or name another data folder.' },
  ]);
}

/**
 * A plain "begin" takes the write lock only at the first write, and by then another writer may have changed what was
 * read: SQLite answers SQLITE_BUSY at once, without waiting. Taking the lock at the beginning waits its turn instead.
 */
class LockingDriver extends SqliteDriver {
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'));
  }
}

class LockingDialect extends SqliteDialect {
  readonly #config: ConstructorParameters<typeof SqliteDialect>[0];

  constructor(config: ConstructorParameters<typeof SqliteDialect>[0]) {
    super(config);
    this.#config = config;
  }

  override createDriver(): Driver {
    return new LockingDriver(this.#config);
  }
}
