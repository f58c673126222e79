/**
 * The tables as Kysely sees them, column by column. What they mean is told in docs/running.md; how they came to be is
 * in migrations/.
 */
import type { Kysely } from 'kysely';

interface MigrationRow {
  version: number;
  name: string;
  applied_at: string;
}

interface GardenRow {
  id: string;
  name: string;
  created_at: string;
  facts_version: number;
  put_away_at: string | null;
}

/** A garden being set up as its row holds it; with the garden it became, once it has. */
export interface DraftRow {
  id: string;
  garden_id: string | null;
  created_at: string;
  changed_at: string;
  draft: string;
}

interface LedgerRow {
  garden_id: string;
  entry: number;
  recorded_at: string;
  recorded_on: string;
  recorded_by: string;
  kind: string;
  fact: string;
}

/** A day's weather; null where it was not measured. */
export interface WeatherRow {
  garden_id: string;
  day: string;
  tmin_c: number | null;
  tmax_c: number | null;
  rain_mm: number | null;
  new_snow_mm: number | null;
  snow_depth_mm: number | null;
}

interface RecordRow {
  garden_id: string;
  origin: string;
  left_out: string;
  facts_version: number;
}

interface FormerRecordRow {
  garden_id: string;
  origin: string;
  left_out: string;
  days: string;
}

interface PlanRow {
  garden_id: string;
  facts_version: number;
  today: string;
  plan: string;
}

/** A feed as its row holds it. */
export interface FeedRow {
  garden_id: string;
  id: string;
  label: string;
  token: string;
  created_at: string;
  revoked_at: string | null;
  fetched_at: string | null;
  fetched_by: string | null;
  shape: string;
  shape_revision: number;
  shaped_at: string | null;
  changed_at: string | null;
}

interface FormerAddressRow {
  garden_id: string;
  feed_id: string;
  token: string;
  closed_at: string;
}

interface FeedTextRow {
  garden_id: string;
  feed_id: string;
  changed_at: string;
  body: string;
}

/** A key as its row holds it: what it hashes to, never itself. */
export interface ReadingKeyRow {
  garden_id: string;
  id: string;
  label: string;
  key_hash: string;
  created_at: string;
  revoked_at: string | null;
}

interface SigningKeyRow {
  garden_id: string;
  signing_key: string;
  made_at: string;
}

interface PasswordRow {
  row: number;
  hash: string;
  cookie_key: string;
  set_at: string;
}

interface SessionRow {
  token_hash: string;
  began_at: string;
  used_at: string;
}

/** A list of the log as its row holds it. */
export interface DeliveryRow {
  garden_id: string;
  /** The member's id. */
  member: string;
  monday: string;
  state: 'claimed' | 'handing over' | 'sent' | 'delayed' | 'refused' | 'unknown' | 'missed';
  message_id: string | null;
  way: 'server' | 'outbox' | null;
  from_address: string | null;
  to_address: string | null;
  tries: number;
  changed_at: string;
  claimed_by: string | null;
  claimed_until: string | null;
  next_try_at: string | null;
  sent_at: string | null;
  problem: string | null;
}

/** Every table by name. */
export interface Tables {
  migrations: MigrationRow;
  gardens: GardenRow;
  ledger: LedgerRow;
  records: RecordRow;
  former_records: FormerRecordRow;
  record_weather: WeatherRow;
  plans: PlanRow;
  feeds: FeedRow;
  former_addresses: FormerAddressRow;
  feed_texts: FeedTextRow;
  reading_keys: ReadingKeyRow;
  signing_keys: SigningKeyRow;
  household_password: PasswordRow;
  sessions: SessionRow;
  deliveries: DeliveryRow;
  drafts: DraftRow;
}

/** A database, or one transaction of it. */
export type Database = Kysely<Tables>;

/** Runs writes in one transaction: the one already open, or a new one that takes the write lock as it begins. */
export function writing<Result>(db: Database, work: (db: Database) => Promise<Result>): Promise<Result> {
  return db.isTransaction ? work(db) : db.transaction().execute(work);
}
