/**
 * The members of a household who get the weekly list by mail, each with what is due to them.
 */
import { type DueLists, dueLists } from '../../digest/mail/due-lists.ts';
import { mailSince } from '../../digest/mail/mail-history.ts';
import type { Member, MemberMail } from '../../garden/household.ts';
import { membersOf } from '../../garden/household-changes.ts';
import type { Instant } from '../../measures/days.ts';
import type { Delivery } from '../../store/deliveries.ts';
import type { GardenView } from '../doings/steward.ts';

/** A member who gets lists. */
export interface Recipient {
  member: Member;
  mail: MemberMail;
  due: DueLists;
  /** The log of their lists, the newest week first. */
  log: readonly Delivery[];
}

/** Everybody of a garden who gets lists, in the order of the household. */
export function recipientsOf(view: GardenView, log: readonly Delivery[], now: Instant): Recipient[] {
  const mailed = membersOf(view.garden).flatMap((member) => (member.mail ? [{ member, mail: member.mail }] : []));
  // The whole ledger is gone through for it, and most gardens send no mail.
  if (mailed.length === 0) return [];
  const begun = mailSince(view.ledger);
  const { timeZone } = view.garden.place;
  return mailed.map(({ member, mail }) => {
    const theirs = log.filter((row) => row.member === member.id);
    const settled = theirs.filter(({ state }) => isClosed(state)).map(({ monday }) => monday);
    const due = dueLists({ timeZone, mail, since: begun.get(member.id) ?? now, now, settled });
    return { member, mail, due, log: theirs };
  });
}

/** Whether a list never goes out by itself any more. */
export function isClosed(state: Delivery['state']): boolean {
  return ['sent', 'refused', 'unknown'].includes(state);
}

/** When the last list went out to somebody, if one did. */
export function lastSentAt({ log }: Pick<Recipient, 'log'>): Instant | undefined {
  return log
    .flatMap(({ sentAt }) => sentAt ?? [])
    .sort()
    .at(-1);
}
