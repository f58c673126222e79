/**
 * One list to one member: claimed, written, handed in, and the end of it noted. Whatever stops in between, the log says
 * how far it came, and nobody gets the list twice.
 */
import { randomUUID } from 'node:crypto';
import type { DueList } from '../../digest/mail/due-lists.ts';
import type { Claim, Delivery, DeliveryName, Letter } from '../../store/deliveries.ts';
import type { Store } from '../../store/store.ts';
import { listLinks } from '../answers/links.ts';
import { signerFor } from '../answers/signer.ts';
import type { MailLink } from '../doings/mail-links.ts';
import type { GardenView } from '../doings/steward.ts';
import type { Clock } from '../planning/planner.ts';
import { encoded } from './encoded.ts';
import { type Handed, handIn, PATIENT, type Waits } from './hand-in.ts';
import { letterOf, messageOf } from './letter.ts';
import { putInOutbox } from './outbox.ts';
import type { Recipient } from './recipients.ts';
import type { PostSettings } from './settings.ts';
import { handingUntil, nextTryAt, readyUntil } from './tries.ts';

/** What the post works with. */
export interface PostRoom {
  store: Store;
  clock: Clock;
  post: PostSettings;
  /** Told of a fault of the program behind a list that did not go out. */
  report(fault: unknown): void;
}

/** A list to deliver. */
interface Errand {
  view: GardenView;
  recipient: Recipient;
  list: Pick<DueList, 'monday'>;
  /** Whether the gardener asked for it, after it was refused or became unknown. */
  again: boolean;
  /** Whether it is tried though it waits for its next try. */
  atOnce?: boolean | undefined;
  signal?: AbortSignal | undefined;
  waits?: Waits;
}

/** Delivers a list. Returns how it ended; nothing where it is not to be tried, or is another program's. */
export async function deliver(room: PostRoom, errand: Errand): Promise<Delivery | undefined> {
  const { store, clock } = room;
  const { view, recipient, list, again, atOnce = false } = errand;
  const name = { gardenId: view.garden.id, member: recipient.member.id, monday: list.monday };
  const letter = letterOf(view, recipient, list.monday, room.post);
  const now = clock.now();
  const claim = { by: randomUUID(), at: now, until: readyUntil(now) };
  const claimed = await store.claimDelivery(name, { letter, claim, again, atOnce });
  if (claimed === undefined) return undefined;
  const { state, problem, isOurStop = false } = await tried(room, errand, { name, letter, claim });
  const at = clock.now();
  const outcome = {
    state,
    at,
    isUncounted: isOurStop,
    ...(state === 'delayed' && !isOurStop ? { nextTryAt: nextTryAt(claimed.tries, at) } : {}),
    ...(problem === undefined ? {} : { problem }),
  };
  const isOurs = await store.settleDelivery(name, claim.by, outcome);
  return isOurs ? (await store.deliveries(name.gardenId)).find((row) => isOf(row, name)) : undefined;
}

interface Hold {
  name: DeliveryName;
  letter: Letter;
  claim: Claim;
}

/** Tries once. A fault of our own is told, and tried again like any other. */
async function tried(room: PostRoom, errand: Errand, hold: Hold): Promise<Handed> {
  try {
    if (hold.letter.from === '') return { state: 'delayed', problem: NO_SENDER };
    const message = await written(room, errand, hold);
    return await (room.post.server === undefined
      ? laidOut(room, hold, message)
      : handedIn(room, errand, hold, message));
  } catch (error) {
    room.report(error);
    return { state: 'delayed', problem: 'Something inside Loamtide failed; the window it runs in says what it was.' };
  }
}

async function written(room: PostRoom, { view, recipient }: Errand, { name, letter }: Hold): Promise<Buffer> {
  const { publicUrl } = room.post;
  const links = publicUrl && listLinks({ ...linkOf(name), publicUrl, signer: await signerFor(room, name.gardenId) });
  return encoded(messageOf({ view, recipient, monday: name.monday, letter, links, now: room.clock.now() }));
}

/** A file of the same name takes the place of the one before it, so that this may be done twice over without harm. */
async function laidOut({ post: { outbox } }: PostRoom, { name }: Hold, message: Buffer): Promise<Handed> {
  if (outbox === undefined) return { state: 'delayed', problem: `No folder is named for it. ${MEND_OUTBOX}` };
  try {
    await putInOutbox(outbox, name, message);
    return { state: 'sent' };
  } catch (error) {
    const why = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    return { state: 'delayed', problem: `The list could not be written into ${outbox} (${why}). ${MEND_OUTBOX}` };
  }
}

async function handedIn(
  room: PostRoom,
  { signal, waits = PATIENT }: Errand,
  hold: Hold,
  message: Buffer,
): Promise<Handed> {
  const { store, clock, post } = room;
  if (post.server === undefined) return laidOut(room, hold, message);
  const { from, to } = hold.letter;
  const mayBegin = async (): Promise<boolean> => {
    if (!(await store.gardenIds()).includes(hold.name.gardenId)) return false;
    const now = clock.now();
    return store.handOver(hold.name, { ...hold.claim, at: now, until: handingUntil(now) });
  };
  return handIn(post.server, { from, to, message }, { mayBegin, signal, waits });
}

function linkOf({ gardenId, member, monday }: DeliveryName): MailLink {
  return { gardenId, memberId: member, monday };
}

function isOf(row: DeliveryName, { gardenId, member, monday }: DeliveryName): boolean {
  return row.gardenId === gardenId && row.member === member && row.monday === monday;
}

const NO_SENDER =
  'Nobody is named as its sender. Set LOAMTIDE_MAIL_FROM, or a sender in the mail settings of this member.';
const MEND_OUTBOX = 'Give yourself leave to write there, or name another folder with LOAMTIDE_OUTBOX.';
