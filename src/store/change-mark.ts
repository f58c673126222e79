/**
 * A cheap sign that something was written, by this program or by another on the same file.
 */
import { performance } from 'node:perf_hooks';
import type SqliteFile from 'better-sqlite3';

/**
 * How long a write of another program may go unseen. Asking SQLite costs about as much as the rest of an answer that is
 * ready; asking once a second costs nothing. House default.
 */
const FOREIGN_LOOK_MS = 1_000;

/**
 * A number that stays while nothing is written. It rises at once with a write over this connection, and within
 * {@link FOREIGN_LOOK_MS} with one of another program. It may rise without a change, never the other way round.
 */
export function changeMark(sqlite: SqliteFile.Database): () => number {
  const ownChanges = sqlite.prepare('select total_changes()').pluck();
  const foreignVersion = sqlite.prepare('pragma data_version').pluck();
  let [own, foreign, lookedAt, mark] = [ownChanges.get(), foreignVersion.get(), performance.now(), 0];
  return () => {
    const ownNow = ownChanges.get();
    const now = performance.now();
    const foreignNow = now - lookedAt < FOREIGN_LOOK_MS ? foreign : foreignVersion.get();
    if (now - lookedAt >= FOREIGN_LOOK_MS) lookedAt = now;
    if (ownNow !== own || foreignNow !== foreign) {
      [own, foreign] = [ownNow, foreignNow];
      mark += 1;
    }
    return mark;
  };
}
