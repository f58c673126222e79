/**
 * Who has the data folder: any number of programs that use it, or one that puts another database in place of the one
 * there. The system lets go of the lock by itself when a program is killed.
 */
import { chmodSync } from 'node:fs';
import SqliteFile from 'better-sqlite3';
import { InputRefused } from '../garden/problem.ts';
import { storeFault, tellingFaults } from './fault.ts';

/** Lets go of a lock. */
export type LetGo = () => void;

/** How long a program waits for one that is just done. House default. */
const WAIT_MS = 1_000;

/** The empty file that is locked: SQLite locks it as it would a database, alike on every system. */
function lockFile(database: string): string {
  return `${database}.lock`;
}

/**
 * Notes that a database is in use, together with others.
 *
 * @throws {StoreFault} while another database is put in its place
 */
export function useTogether(database: string): LetGo {
  return locked(database, ['begin', 'select count(*) from sqlite_master'], () => {
    const what = 'A copy is being put back here right now.';
    return storeFault(database, what, 'Wait until "loamtide restore" has ended, and start again.');
  });
}

/**
 * Keeps a database for oneself, to put another in its place.
 *
 * @throws {InputRefused} while any program uses it
 */
export function keepAlone(database: string): LetGo {
  return locked(database, ['begin exclusive'], () => {
    const what = 'A program is using this data: the server, or another command.';
    const mend = 'Stop the server (Ctrl-C, or as your service manager does), and try again.';
    return new InputRefused('Nothing was changed.', [{ where: database, what, mend }]);
  });
}

function locked(database: string, statements: readonly string[], refused: () => Error): LetGo {
  const file = lockFile(database);
  return tellingFaults(file, () => {
    const sqlite = new SqliteFile(file, { timeout: WAIT_MS });
    try {
      chmodSync(file, 0o600);
      for (const statement of statements) {
        const prepared = sqlite.prepare(statement);
        if (prepared.reader) prepared.get();
        else prepared.run();
      }
    } catch (error) {
      sqlite.close();
      const isBusy = error instanceof SqliteFile.SqliteError && error.code.startsWith('SQLITE_BUSY');
      throw isBusy ? refused() : error;
    }
    return () => {
      sqlite.close();
    };
  });
}
