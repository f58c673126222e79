/**
 * Where a link in mail leads today: whether it was sent from here, still works, and went to somebody who is still there.
 */
import { membersOf } from '../../garden/household-changes.ts';
import type { Store } from '../../store/store.ts';
import type { Followed, LinkDoings, MailLink } from '../doings/mail-links.ts';
import { gardenOf, type Planner } from '../planning/planner.ts';
import { lastDayOf } from './links.ts';
import { type LinkUse, signerOfSent } from './signer.ts';
import { type ReadToken, readAnswerToken, readStopToken } from './tokens.ts';

/** What links are followed with. */
interface LinkRoom {
  store: Store;
  planner: Planner;
}

/** Follows links over a store. */
export function linksIn(room: LinkRoom): LinkDoings {
  return {
    followAnswer: (token) => follow(room, 'answer', readAnswerToken(token)),
    followStop: (token) => follow(room, 'stop', readStopToken(token)),
  };
}

async function follow<Link extends MailLink>(
  { store, planner }: LinkRoom,
  use: LinkUse,
  read: ReadToken<Link> | undefined,
): Promise<Followed<Link>> {
  if (read === undefined) return { leads: 'nowhere' };
  const { said: link } = read;
  if (!read.signedBy(await signerOfSent(store, link.gardenId))) return { leads: 'nowhere' };
  // Nothing is written down for a garden that was put away.
  if (!(await store.gardenIds()).includes(link.gardenId)) return { leads: 'nowhere' };
  const garden = gardenOf(link.gardenId, await store.ledger(link.gardenId));
  const lastDay = lastDayOf(use, link.monday);
  if (planner.dayOf(garden) > lastDay) return { leads: 'too late', lastDay, link };
  const member = membersOf(garden).find(({ id }) => id === link.memberId);
  return member === undefined
    ? { leads: 'to a stranger', link }
    : { leads: 'on', link: { ...link, member: member.name } };
}
