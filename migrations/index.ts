/**
 * Every change of the database's shape, oldest first. A published one is never edited: a later one mends it.
 */
import { firstTables } from './0001-first-tables.ts';
import { weatherInTheLedger } from './0002-weather-in-the-ledger.ts';
import { feedsThatLast } from './0003-feeds-that-last.ts';
import { feedShapes } from './0004-feed-shapes.ts';
import { readingKeys } from './0005-reading-keys.ts';
import { signingKeys } from './0006-signing-keys.ts';
import { deliveries } from './0007-deliveries.ts';
import { drafts } from './0008-drafts.ts';
import { formerRecords } from './0009-former-records.ts';
import { householdPassword } from './0010-household-password.ts';
import type { Migration } from './migration.ts';

export const migrations: readonly Migration[] = [
  { version: 1, name: 'first-tables', up: firstTables },
  { version: 2, name: 'weather-in-the-ledger', up: weatherInTheLedger },
  { version: 3, name: 'feeds-that-last', up: feedsThatLast },
  { version: 4, name: 'feed-shapes', up: feedShapes },
  { version: 5, name: 'reading-keys', up: readingKeys },
  { version: 6, name: 'signing-keys', up: signingKeys },
  { version: 7, name: 'deliveries', up: deliveries },
  { version: 8, name: 'drafts', up: drafts },
  { version: 9, name: 'former-records', up: formerRecords },
  { version: 10, name: 'household-password', up: householdPassword },
];
