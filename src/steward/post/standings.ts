/**
 * How each member's mail stands: what went out, what comes next, and what is wrong.
 */
import type { Delivery } from '../../store/deliveries.ts';
import type { MailStanding } from '../doings/mail-doings.ts';
import { isClosed, type Recipient } from './recipients.ts';

/** The standing of somebody's mail. */
export function standingOf(recipient: Recipient): MailStanding {
  const { member, mail, log, due } = recipient;
  const sent = log.find(({ state }) => state === 'sent');
  const [newest] = log;
  const wrong = newest !== undefined && isWrong(newest) ? newest : undefined;
  const { now } = due;
  const isOpen = now !== undefined && !log.some(({ monday, state }) => monday === now.monday && isClosed(state));
  return {
    member: member.name,
    mail,
    next: isOpen ? now : due.next,
    isDue: isOpen,
    ...(sent === undefined ? {} : { sent }),
    ...(wrong === undefined ? {} : { wrong }),
    canSendAgain: wrong !== undefined && wrong.monday === due.now?.monday,
  };
}

function isWrong({ state, problem }: Delivery): boolean {
  return ['delayed', 'refused', 'unknown', 'missed'].includes(state) || (state === 'claimed' && problem !== undefined);
}
