/**
 * The post of a steward: sends what is due, sends again what the gardener asks for, and says how it stands.
 */
import { InputRefused } from '../../garden/problem.ts';
import { weekStart } from '../../measures/days.ts';
import type { Delivery } from '../../store/deliveries.ts';
import { listLinks } from '../answers/links.ts';
import { strangeSigner } from '../answers/signer.ts';
import type { Planner } from '../planner.ts';
import { dayIn } from '../planner.ts';
import type { GardenView } from '../steward.ts';
import { deliver, type PostRoom } from './deliver.ts';
import { encoded } from './encoded.ts';
import { BROKEN_OFF } from './fault-words.ts';
import { BRISK } from './hand-in.ts';
import { letterOf, messageOf } from './letter.ts';
import type { MailDoings, MailWay } from './mail-doings.ts';
import { serverName } from './mail-server.ts';
import { type Recipient, recipientsOf } from './recipients.ts';
import type { PostSettings } from './settings.ts';
import { standingOf } from './standings.ts';
import type { UnderWay } from './under-way.ts';

/** The post over a store. */
export function postIn(room: PostRoom & { planner: Planner; underWay: UnderWay }): MailDoings {
  const { store, clock, planner, post, report, underWay } = room;

  async function everybody(view: GardenView): Promise<Recipient[]> {
    return recipientsOf(view, await store.deliveries(view.garden.id), clock.now());
  }

  async function sendDueOf(gardenId: string, atOnce: boolean, signal: AbortSignal): Promise<Delivery[]> {
    const view = await planner.view(gardenId);
    await store.noteBrokenOff(gardenId, clock.now(), BROKEN_OFF);
    const ended = await Promise.all(
      (await everybody(view)).map(async (recipient) => {
        try {
          await noteOver(room, view, recipient);
          const list = recipient.due.now;
          if (list === undefined || signal.aborted) return undefined;
          return await deliver(room, { view, recipient, list, again: false, atOnce, signal });
        } catch (error) {
          // One member's list must not keep the others' from them.
          report(error);
          return undefined;
        }
      }),
    );
    return ended.flatMap((delivery) => delivery ?? []);
  }

  return {
    deliveries: (gardenId) => store.deliveries(gardenId),
    mailWay: () => wayOf(post),
    async mailStandings(gardenId) {
      return (await everybody(await planner.view(gardenId))).map(standingOf);
    },
    async previewMail(gardenId, member) {
      const view = await planner.view(gardenId);
      const recipient = knownRecipient(await everybody(view), member);
      const { monday } = standingOf(recipient).next;
      const letter = letterOf(view, recipient, monday, post);
      // By this signer no link works: what is only looked at must not be able to answer.
      const name = { gardenId, memberId: recipient.member.id, monday };
      const links = listLinks({ ...name, publicUrl: post.publicUrl, signer: strangeSigner() });
      const message = messageOf({ view, recipient, monday, letter, links, now: clock.now() });
      return { message, source: await encoded(message) };
    },
    async sendDue({ gardenId, atOnce = false, signal } = {}) {
      if (post.server === undefined && post.outbox === undefined) return [];
      const ids = gardenId === undefined ? await store.gardenIds() : [gardenId];
      // All at once: one that a server keeps waiting must not hold up the others.
      const ended = await underWay.run(
        (stop) =>
          Promise.all(
            ids.map((id) =>
              sendDueOf(id, atOnce, stop).catch((error): Delivery[] => {
                report(error);
                return [];
              }),
            ),
          ),
        signal,
      );
      return ended.flat();
    },
    async sendAgain(gardenId, member) {
      const view = await planner.view(gardenId);
      await store.noteBrokenOff(gardenId, clock.now(), BROKEN_OFF);
      const recipient = knownRecipient(await everybody(view), member);
      const list = recipient.due.now;
      if (list === undefined) throw refusal(member, 'No list of this week has been due yet.', WAIT);
      const ended = await underWay.run((signal) =>
        deliver(room, { view, recipient, list, again: true, signal, waits: BRISK }),
      );
      if (ended === undefined) throw refusal(member, 'This list is sent already, or on its way.', LOOK);
      return ended;
    },
  };
}

function wayOf({ server, outbox = 'no folder' }: PostSettings): MailWay {
  return server === undefined ? { kind: 'outbox', folder: outbox } : { kind: 'server', name: serverName(server) };
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

function knownRecipient(recipients: readonly Recipient[], name: string): Recipient {
  const found = recipients.find(({ member }) => member.name === name);
  if (found !== undefined) return found;
  const names = recipients.map(({ member }) => member.name).join(', ');
  const mend = names === '' ? 'Nobody gets lists yet; the Household page sets it.' : `Those who do: ${names}.`;
  throw refusal('member', `"${name}" gets no lists by mail.`, mend);
}

function refusal(where: string, what: string, mend: string): InputRefused {
  return new InputRefused('Nothing was sent.', [{ where, what, mend }]);
}

const WAIT = 'It goes out by itself at its hour; the preview shows it now.';
const LOOK = 'Look into the inbox, or the outbox folder.';
