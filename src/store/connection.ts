/**
 * The one connection to the database file. Everything that is true of SQLite alone is here and in copy.ts.
 */
import { chmodSync, closeSync, existsSync, openSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import SqliteFile from 'better-sqlite3';
import {
  CompiledQuery,
  type DatabaseConnection,
  type Driver,
  Kysely,
  type QueryResult,
  SqliteDialect,
  SqliteDriver,
} from 'kysely';
import { makeFolder } from './durable.ts';
import { asStoreFault, storeFault, tellingFaults } from './fault.ts';
import type { Database, Tables } from './tables.ts';

/** A database that lives only as long as the program. */
const IN_MEMORY = ':memory:';

/**
 * How long a writer waits for another program's write to end: the thread that answers pages answers nobody meanwhile, a
 * command has nothing else to do. Writes of this program take milliseconds. House defaults.
 */
const BUSY_TIMEOUT_MS = { command: 5_000, serving: 1_000 } as const;

/** An open database: the query builder, and the SQLite handle it stands on. */
export interface Connection {
  db: Database;
  sqlite: SqliteFile.Database;
  /** Whether the file held anything before it was opened. */
  existed: boolean;
  close(): void;
}

/**
 * Opens a database file, made with its folder where there is none: the folder for its owner alone (0700), the file
 * readable and writable by its owner alone (0600), for it holds the secret addresses of feeds.
 *
 * @throws {StoreFault} when the file is not a database, or its place cannot be used
 */
export function connect(file: string): Connection {
  return tellingFaults(file, () => {
    const existed = file !== IN_MEMORY && preparePrivateFile(file);
    const sqlite = new SqliteFile(file, { timeout: BUSY_TIMEOUT_MS.command });
    try {
      sqlite.pragma('journal_mode = WAL');
      sqlite.pragma('synchronous = FULL');
      sqlite.pragma('foreign_keys = ON');
    } catch (error) {
      sqlite.close();
      throw error;
    }
    const db = new Kysely<Tables>({ dialect: new TellingDialect({ database: sqlite }) });
    const close = () => {
      sqlite.close();
    };
    return { db, sqlite, existed, close };
  });
}

/** From now on waits for other writers no longer than whoever is to be answered can. */
export function waitBriefly({ sqlite }: Connection): void {
  sqlite.pragma(`busy_timeout = ${BUSY_TIMEOUT_MS.serving}`);
}

/** Makes an empty file that only its owner can read, or narrows the one there. Returns whether it held anything. */
function preparePrivateFile(file: string): boolean {
  makeFolder(dirname(file));
  // One that is there is not opened: closing it would let go of the locks another connection of this program holds.
  if (!existsSync(file)) closeSync(openSync(file, 'a', 0o600));
  const { mode, size } = statSync(file);
  if ((mode & 0o077) !== 0) chmodSync(file, 0o600);
  refuseEmptied(file, size);
  return size > 0;
}

/** An empty file is a new database; beside a log it is an old one that was cut off, and SQLite would drop the log. */
function refuseEmptied(file: string, size: number): void {
  const log = `${file}-wal`;
  if (size > 0 || !existsSync(log) || statSync(log).size === 0) return;
  const mend = 'Put back a copy: "loamtide restore FILE" (docs/copies-and-faults.md). Leave the -wal file where it is.';
  throw storeFault(file, 'The database is empty, but its log is not: it was cut off.', mend);
}

/** A connection whose faults are told in words. */
class TellingConnection implements DatabaseConnection {
  readonly #inner: DatabaseConnection;
  readonly #file: string;

  constructor(inner: DatabaseConnection, file: string) {
    this.#inner = inner;
    this.#file = file;
  }

  async executeQuery<Row>(query: CompiledQuery): Promise<QueryResult<Row>> {
    try {
      return await this.#inner.executeQuery<Row>(query);
    } catch (error) {
      throw asStoreFault(error, this.#file);
    }
  }

  streamQuery<Row>(query: CompiledQuery, chunkSize?: number): AsyncIterableIterator<QueryResult<Row>> {
    return this.#inner.streamQuery<Row>(query, chunkSize);
  }
}

class TellingDriver extends SqliteDriver {
  readonly #sqlite: SqliteFile.Database;

  constructor(config: OpenDatabase) {
    super(config);
    this.#sqlite = config.database;
  }

  override async acquireConnection(): Promise<DatabaseConnection> {
    return new TellingConnection(await super.acquireConnection(), this.#sqlite.name);
  }

  /**
   * A plain "begin" takes the write lock only at the first write, and by then another writer may have changed what was
   * read: SQLite answers SQLITE_BUSY at once, without waiting. Taking the lock at the beginning waits its turn instead.
   */
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'));
  }

  /** A full disk ends a transaction by itself (https://www.sqlite.org/lang_transaction.html): then nothing is left to take back. */
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#sqlite.inTransaction) await connection.executeQuery(CompiledQuery.raw('rollback'));
  }
}

interface OpenDatabase {
  database: SqliteFile.Database;
}

class TellingDialect extends SqliteDialect {
  readonly #config: OpenDatabase;

  constructor(config: OpenDatabase) {
    super(config);
    this.#config = config;
  }

  override createDriver(): Driver {
    return new TellingDriver(this.#config);
  }
}
