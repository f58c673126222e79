/**
 * The name a list goes by among mail programs: the same at every try, and telling nobody whose it is.
 */
import { createHash } from 'node:crypto';
import { domainOf } from '../../digest/mail/list-message.ts';
import type { Day } from '../../measures/days.ts';

/** What names one list to one recipient. */
interface ListName {
  gardenId: string;
  member: string;
  monday: Day;
  from: string;
  to: string;
}

/** Octets kept of the hash: as many as make two names alike by chance unthinkable. */
const KEPT_OCTETS = 18;

/** RFC 5322, 3.6.4: one name for one message, in angle brackets, its right side the sender's own domain. */
export function messageIdOf({ gardenId, member, monday, from, to }: ListName): string {
  const hash = createHash('sha256')
    .update(JSON.stringify([gardenId, member, monday, from, to]))
    .digest();
  return `<${hash.subarray(0, KEPT_OCTETS).toString('hex')}@${domainOf(from)}>`;
}
