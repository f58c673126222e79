/**
 * The members of a household who get the weekly list by mail, each with what is due to them.
 */
import { type DueLists, dueLists } from '../../digest/mail/due-lists.ts';
import { mailHistories } from '../../digest/mail/mail-history.ts';
import type { Member, MemberMail } from '../../garden/garden.ts';
import { membersOf } from '../../garden/household-changes.ts';
import type { Instant } from '../../measures/days.ts';
import type { Delivery } from '../../store/deliveries.ts';
import type { GardenView } from '../steward.ts';

/** A member who gets lists. */
export interface Recipient {
  member: Member;
  mail: MemberMail;
  due: DueLists;
  /** The log of their lists, also under names they had before; the newest week first. */
  log: readonly Delivery[];
}

/** Everybody of a garden who gets lists, in the order of the household. */
export function recipientsOf(view: GardenView, log: readonly Delivery[], now: Instant): Recipient[] {
  const histories = mailHistories(view.ledger);
  const { timeZone } = view.garden.place;
  return membersOf(view.garden).flatMap((member) => {
    const { mail } = member;
    if (mail === undefined) return [];
    const { names, since } = histories.get(member.name) ?? { names: [member.name], since: now };
    const due = dueLists({ timeZone, mail, since, now });
    return [{ member, mail, due, log: log.filter((row) => names.includes(row.member)) }];
  });
}

/** The list to be sent to somebody now, if it was not sent, nor is on its way, under whatever name they had. */
export function unsentOf({ due, log, member }: Recipient): DueLists['now'] {
  const { now } = due;
  const elsewhere = log.some((row) => row.member !== member.name && row.monday === now?.monday && isSettled(row));
  return elsewhere ? undefined : now;
}

function isSettled({ state }: Delivery): boolean {
  return ['claimed', 'handing over', 'sent', 'unknown'].includes(state);
}

/** When the last list went out to somebody, if one did. */
export function lastSentAt({ log }: Pick<Recipient, 'log'>): Instant | undefined {
  return log
    .flatMap(({ sentAt }) => sentAt ?? [])
    .sort()
    .at(-1);
}
