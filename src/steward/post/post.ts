/**
 * The post of a steward: sends what is due, sends again what the gardener asks for, and says how it stands.
 */
import { InputRefused } from '../../garden/problem.ts';
import type { Delivery } from '../../store/deliveries.ts';
import { listLinks } from '../answers/links.ts';
import { strangeSigner } from '../answers/signer.ts';
import type { MailDoings, MailPreview, MailWay, SendAsked } from '../doings/mail-doings.ts';
import type { GardenView } from '../doings/steward.ts';
import type { Planner } from '../planning/planner.ts';
import { deliver, type PostRoom } from './deliver.ts';
import { encoded } from './encoded.ts';
import { BROKEN_OFF } from './fault-words.ts';
import { BRISK } from './hand-in.ts';
import { letterOf, messageOf } from './letter.ts';
import { serverName } from './mail-server.ts';
import { type Recipient, recipientsOf } from './recipients.ts';
import { sendTo } from './rounds.ts';
import type { PostSettings } from './settings.ts';
import { standingOf } from './standings.ts';
import type { UnderWay } from './under-way.ts';

interface PostOffice extends PostRoom {
  planner: Planner;
  underWay: UnderWay;
}

/** The post over a store. */
export function postIn(office: PostOffice): MailDoings {
  const { store, planner, post } = office;
  return {
    deliveries: (gardenId) => store.deliveries(gardenId),
    mailWay: () => wayOf(post),
    mailStandings: async (gardenId) => (await everybody(office, await planner.view(gardenId))).map(standingOf),
    previewMail: (gardenId, member) => preview(office, gardenId, member),
    sendDue: (asked = {}) => sendDue(office, asked),
    sendAgain: (gardenId, member) => sendAgain(office, gardenId, member),
  };
}

async function everybody({ store, clock }: PostRoom, view: GardenView): Promise<Recipient[]> {
  return recipientsOf(view, await store.deliveries(view.garden.id), clock.now());
}

/** The same, once what broke off is noted. */
async function everybodySettled(office: PostOffice, gardenId: string) {
  const view = await office.planner.view(gardenId);
  await office.store.noteBrokenOff(gardenId, office.clock.now(), BROKEN_OFF);
  return { view, recipients: await everybody(office, view) };
}

async function preview(office: PostOffice, gardenId: string, name: string): Promise<MailPreview> {
  const { post, clock } = office;
  const view = await office.planner.view(gardenId);
  const recipient = knownRecipient(await everybody(office, view), name);
  const { monday } = standingOf(recipient).next;
  const letter = letterOf(view, recipient, monday, post);
  // By this signer no link works: what is only looked at must not be able to answer.
  const link = { gardenId, memberId: recipient.member.id, monday };
  const links = listLinks({ ...link, publicUrl: post.publicUrl, signer: strangeSigner() });
  const message = messageOf({ view, recipient, monday, letter, links, now: clock.now() });
  return { message, source: await encoded(message) };
}

async function sendDue(office: PostOffice, { gardenId, atOnce = false, signal }: SendAsked): Promise<Delivery[]> {
  const { store, post, underWay } = office;
  if (post.server === undefined && post.outbox === undefined) return [];
  const ids = gardenId === undefined ? await store.gardenIds() : [gardenId];
  const sendIn = async (id: string, stop: AbortSignal): Promise<Delivery[]> => {
    try {
      return await sendTo(office, await everybodySettled(office, id), { atOnce, signal: stop });
    } catch (error) {
      office.report(error);
      return [];
    }
  };
  // All at once: one that a server keeps waiting must not hold up the others.
  return (await underWay.run((stop) => Promise.all(ids.map((id) => sendIn(id, stop))), signal)).flat();
}

async function sendAgain(office: PostOffice, gardenId: string, name: string): Promise<Delivery> {
  const { view, recipients } = await everybodySettled(office, gardenId);
  const recipient = knownRecipient(recipients, name);
  const list = recipient.due.now;
  if (list === undefined) throw refusal(name, 'No list of this week has been due yet.', WAIT);
  const ended = await office.underWay.run((signal) =>
    deliver(office, { view, recipient, list, again: true, signal, waits: BRISK }),
  );
  if (ended === undefined) throw refusal(name, 'This list is sent already, or on its way.', LOOK);
  return ended;
}

function wayOf({ server, outbox = 'no folder' }: PostSettings): MailWay {
  return server === undefined ? { kind: 'outbox', folder: outbox } : { kind: 'server', name: serverName(server) };
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
