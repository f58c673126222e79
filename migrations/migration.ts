import type { Kysely } from 'kysely';

/**
 * What a migration may touch: the schema builder, and `sql` statements of its own. Never the program's tables as they
 * are typed today, for those move on and a migration does not.
 */
export type Shape = Pick<Kysely<unknown>, 'schema' | 'getExecutor'>;

/** One step from a database version to the next. */
export interface Migration {
  /** The version the database has afterwards: 1 for the first, then one more each. */
  version: number;
  name: string;
  up(db: Shape): Promise<void>;
}
