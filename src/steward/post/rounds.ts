/**
 * A round of the post: what is due in a garden is sent, and what never went out in time is noted.
 */
import { weekStart } from '../../measures/days.ts';
import type { Delivery } from '../../store/deliveries.ts';
import type { GardenView } from '../doings/steward.ts';
import { dayIn } from '../planning/planner.ts';
import { deliver, type PostRoom } from './deliver.ts';
import type { Recipient } from './recipients.ts';

/** Sends each of a garden's members what is due to them; one member's list does not keep the others' from them. */
export async function sendTo(
  room: PostRoom,
  { view, recipients }: { view: GardenView; recipients: readonly Recipient[] },
  { atOnce, signal }: { atOnce: boolean; signal: AbortSignal },
): Promise<Delivery[]> {
  const sendOne = async (recipient: Recipient): Promise<Delivery | undefined> => {
    await noteOver(room, view, recipient);
    const list = recipient.due.now;
    if (list === undefined || signal.aborted) return undefined;
    return deliver(room, { view, recipient, list, again: false, atOnce, signal });
  };
  const ended = await Promise.all(
    recipients.map((recipient) => sendOne(recipient).catch((error) => void room.report(error))),
  );
  return ended.flatMap((delivery) => delivery ?? []);
}

/** Notes what was due and never went out before its week was over. */
async function noteOver({ store, clock }: PostRoom, { garden }: GardenView, recipient: Recipient): Promise<void> {
  const { due, log, member } = recipient;
  const now = clock.now();
  const thisMonday = weekStart(dayIn(garden.place.timeZone, now));
  const past = due.past.filter(({ monday }) => !log.some((row) => row.monday === monday));
  for (const { monday } of past) await store.noteMissed({ gardenId: garden.id, member: member.id, monday }, now);
  const late = log.filter(({ monday }) => monday < thisMonday || monday < (due.now?.monday ?? ''));
  for (const row of late.filter(isWaiting)) await store.noteMissed(row, now);
}

function isWaiting({ state }: Delivery): boolean {
  return state === 'delayed' || state === 'claimed';
}
