/**
 * The log of weekly lists sent by mail: one row for each garden, member and week, written before anything is handed over,
 * so that whatever stops or restarts, a list goes out once.
 */
import type { Day, Instant } from '../measures/days.ts';
import { type Database, type DeliveryRow, writing } from './tables.ts';

/**
 * How far a list has come: "claimed" by one program, which makes it ready; "handing over" while the mail server takes it
 * in; "sent"; "delayed" by something that may pass; "refused" for good; "unknown" where the program or the line broke
 * off while it was handed over; "missed" where its week was over first.
 */
export type DeliveryState = DeliveryRow['state'];

/** Which list: nobody gets two of one week. */
export interface DeliveryName {
  gardenId: string;
  /** The member's id. */
  member: string;
  monday: Day;
}

/** Where a list goes, and under which name. */
export interface Letter {
  messageId: string;
  way: 'server' | 'outbox';
  /** Empty where nobody is named as its sender. */
  from: string;
  to: string;
}

/** A row of the log. */
export interface Delivery extends DeliveryName, Partial<Letter> {
  state: DeliveryState;
  tries: number;
  changedAt: Instant;
  nextTryAt?: Instant;
  sentAt?: Instant;
  /** What went wrong, in words. */
  problem?: string;
}

/** Somebody's hold on a list while they send it. */
export interface Claim {
  by: string;
  at: Instant;
  /** After this moment whoever claimed it is taken to have stopped. */
  until: Instant;
}

/** A try that somebody wants to make. */
export interface Wanted {
  letter: Letter;
  claim: Claim;
  again: boolean;
  atOnce?: boolean;
}

/** How a try ended. */
export interface Outcome {
  state: 'sent' | 'delayed' | 'refused' | 'unknown';
  at: Instant;
  /** Absent where it may be tried as soon as anybody can. */
  nextTryAt?: Instant;
  problem?: string;
  /** Whether it was no try after all. */
  isUncounted?: boolean;
}

/** Every list of a garden's log, the newest week first. */
export async function deliveries(db: Database, gardenId: string): Promise<Delivery[]> {
  const rows = await db
    .selectFrom('deliveries')
    .selectAll()
    .where('garden_id', '=', gardenId)
    .orderBy('monday', 'desc')
    .orderBy('member')
    .execute();
  return rows.map(deliveryOf);
}

/**
 * Claims a list for one try, in one transaction that holds the write lock: of two programs one gets it.
 *
 * @param wanted with `again` also what was refused or is unknown, or waits for its next try: the gardener asks for it;
 *   with `atOnce` also what waits
 * @returns the row as claimed; nothing when it is another's, sent, or not to be tried now
 */
export function claimDelivery(db: Database, name: DeliveryName, wanted: Wanted): Promise<Delivery | undefined> {
  return writing(db, async (transaction) => {
    const { letter, claim } = wanted;
    const before = await rowOf(transaction, name);
    if (before !== undefined && !isFree(deliveryOf(before), before.claimed_until, wanted)) return undefined;
    const row: DeliveryRow = {
      ...keyOf(name),
      state: 'claimed',
      message_id: letter.messageId,
      way: letter.way,
      from_address: letter.from,
      to_address: letter.to,
      tries: (before?.tries ?? 0) + 1,
      changed_at: claim.at,
      claimed_by: claim.by,
      claimed_until: claim.until,
      next_try_at: null,
      sent_at: null,
      problem: before?.problem ?? null,
    };
    await transaction
      .insertInto('deliveries')
      .values(row)
      .onConflict((conflict) => conflict.columns(['garden_id', 'member', 'monday']).doUpdateSet(row))
      .execute();
    return deliveryOf(row);
  });
}

/** Whether a list in the log may be tried now. */
function isFree(
  before: Delivery,
  claimedUntil: Instant | null,
  { letter, claim, again, atOnce = false }: Wanted,
): boolean {
  const elsewhere = before.to !== letter.to || before.from !== letter.from || before.way !== letter.way;
  switch (before.state) {
    case 'claimed':
      return (claimedUntil ?? '') <= claim.at;
    case 'delayed':
      return again || atOnce || elsewhere || (before.nextTryAt ?? '') <= claim.at;
    case 'refused':
      return again || elsewhere;
    case 'unknown':
      return again;
    case 'missed':
      // Whoever asks for it has its week before them: the clock that said it was over was wrong.
      return true;
    case 'handing over':
    case 'sent':
      return false;
    default:
      return before.state satisfies never;
  }
}

/**
 * Notes that the server is taking a list in, before its first octet goes out. Returns false where the claim has passed
 * to another meanwhile: then nothing may go out.
 */
export async function handOver(db: Database, name: DeliveryName, claim: Claim): Promise<boolean> {
  const result = await db
    .updateTable('deliveries')
    .where(({ and }) => and(keyOf(name)))
    .set({ state: 'handing over', changed_at: claim.at, claimed_until: claim.until })
    .where('state', '=', 'claimed')
    .where('claimed_by', '=', claim.by)
    .executeTakeFirst();
  return result.numUpdatedRows > 0n;
}

/** Notes how a try ended, late as it may be; returns false where another has claimed the list meanwhile. */
export async function settleDelivery(db: Database, name: DeliveryName, by: string, outcome: Outcome): Promise<boolean> {
  const { state, at, nextTryAt, problem, isUncounted = false } = outcome;
  const result = await db
    .updateTable('deliveries')
    .where(({ and }) => and(keyOf(name)))
    .set((column) => ({
      state,
      tries: column('tries', '-', isUncounted ? 1 : 0),
      changed_at: at,
      claimed_until: null,
      next_try_at: nextTryAt ?? null,
      sent_at: state === 'sent' ? at : null,
      problem: problem ?? null,
    }))
    .where('state', 'in', ['claimed', 'handing over', 'unknown'])
    .where('claimed_by', '=', by)
    .executeTakeFirst();
  return result.numUpdatedRows > 0n;
}

/** Notes as unknown what somebody began to hand over and never told the end of; returns how many. */
export async function noteBrokenOff(db: Database, gardenId: string, at: Instant, problem: string): Promise<number> {
  const result = await db
    .updateTable('deliveries')
    .set({ state: 'unknown', changed_at: at, problem })
    .where('garden_id', '=', gardenId)
    .where('state', '=', 'handing over')
    .where('claimed_until', '<=', at)
    .executeTakeFirst();
  return Number(result.numUpdatedRows);
}

/** Notes a list whose week was over before it went out. One that was sent, refused or is unknown stays what it is. */
export async function noteMissed(db: Database, name: DeliveryName, at: Instant): Promise<void> {
  await writing(db, async (transaction) => {
    const before = await rowOf(transaction, name);
    if (before === undefined) {
      const row = { ...keyOf(name), state: 'missed' as const, tries: 0, changed_at: at };
      await transaction.insertInto('deliveries').values(row).execute();
    } else if (before.state === 'delayed' || (before.state === 'claimed' && (before.claimed_until ?? '') <= at)) {
      const row = { state: 'missed' as const, changed_at: at, claimed_until: null, next_try_at: null };
      await transaction
        .updateTable('deliveries')
        .where(({ and }) => and(keyOf(name)))
        .set(row)
        .execute();
    }
  });
}

function rowOf(db: Database, name: DeliveryName): Promise<DeliveryRow | undefined> {
  return db
    .selectFrom('deliveries')
    .selectAll()
    .where(({ and }) => and(keyOf(name)))
    .executeTakeFirst();
}

function keyOf({ gardenId, member, monday }: DeliveryName) {
  return { garden_id: gardenId, member, monday };
}

function deliveryOf(row: DeliveryRow): Delivery {
  const { garden_id, member, monday, state, tries, changed_at } = row;
  const letter = {
    messageId: row.message_id,
    way: row.way,
    from: row.from_address,
    to: row.to_address,
    nextTryAt: row.next_try_at,
    sentAt: row.sent_at,
    problem: row.problem,
  };
  return { gardenId: garden_id, member, monday, state, tries, changedAt: changed_at, ...withoutNull(letter) };
}

type Present<Columns> = { [Name in keyof Columns]?: NonNullable<Columns[Name]> };

function withoutNull<Columns extends object>(columns: Columns): Present<Columns> {
  return Object.fromEntries(Object.entries(columns).filter(([, value]) => value !== null)) as Present<Columns>;
}
