/**
 * Copies of a database that is in use.
 */
import { closeSync, existsSync, openSync, renameSync } from 'node:fs';
import { InputRefused } from '../garden/problem.ts';
import type { Connection } from './connection.ts';

/**
 * Copies the whole database, as it stands between two transactions, into a new file that only its owner can read.
 * The file gets its name only once it is complete.
 *
 * @throws {InputRefused} when there is a file of that name already
 */
export async function copyDatabase({ db, sqlite }: Connection, file: string): Promise<void> {
  if (existsSync(file)) {
    throw new InputRefused('The copy was not made.', [
      { where: file, what: 'There is a file of this name already.', mend: 'Name a file that does not exist yet.' },
    ]);
  }
  const unfinished = `${file}.unfinished`;
  closeSync(openSync(unfinished, 'w', 0o600));
  // SQLite refuses to copy while a transaction of the same connection is open: holding the connection keeps others out.
  await db.connection().execute(() => sqlite.backup(unfinished));
  renameSync(unfinished, file);
}
