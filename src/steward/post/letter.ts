/**
 * A member's list of one week, written as the message it goes out as.
 */
import type { ListLinks } from '../../digest/list-links.ts';
import { type ListMessage, listMessage } from '../../digest/mail/list-message.ts';
import { weekListHtml } from '../../digest/week-html.ts';
import { weekList } from '../../digest/week-list.ts';
import { weekListText } from '../../digest/week-text.ts';
import type { Day, Instant } from '../../measures/days.ts';
import type { Letter } from '../../store/deliveries.ts';
import type { GardenView } from '../doings/steward.ts';
import { messageIdOf } from './message-id.ts';
import { lastSentAt, type Recipient } from './recipients.ts';
import type { PostSettings } from './settings.ts';

/**
 * The sender of a file that nobody sends: a message must have one (RFC 5322, 3.6), and this name is nobody else's
 * (RFC 6761, 6.3).
 */
const NOBODYS_ADDRESS = 'loamtide@localhost';

/** Which list, and where it goes, as the log keeps it. */
export function letterOf({ garden }: GardenView, { member, mail }: Recipient, monday: Day, post: PostSettings): Letter {
  const way = post.server === undefined ? 'outbox' : 'server';
  const from = mail.from ?? post.from ?? (way === 'outbox' ? NOBODYS_ADDRESS : '');
  const to = mail.to;
  return { way, from, to, messageId: messageIdOf({ gardenId: garden.id, member: member.id, monday, from, to }) };
}

/** What a message is written from. */
export interface Writing {
  view: GardenView;
  recipient: Recipient;
  monday: Day;
  letter: Pick<Letter, 'from' | 'to' | 'messageId'>;
  links: ListLinks | undefined;
  now: Instant;
}

/** The message of a list as the plan stands now. */
export function messageOf({ view, recipient, monday, letter, links, now }: Writing): ListMessage {
  const { garden, plan } = view;
  const { units } = garden.place;
  const since = lastSentAt(recipient);
  const { member, mail } = recipient;
  const list = weekList(plan, garden, monday, {
    ...(mail.tasks === 'own' ? { person: member.name } : {}),
    ...(since === undefined ? {} : { since }),
  });
  return listMessage({
    list,
    units,
    text: weekListText(list, units, links),
    html: weekListHtml(list, units, links),
    from: letter.from,
    to: { name: member.name, address: letter.to },
    messageId: letter.messageId,
    date: now,
    stop: links?.stop,
  });
}
