/**
 * Links in mail: what each says, and where it leads.
 */
import type { Day } from '../../measures/days.ts';
import type { TaskKey } from '../../practices/draft.ts';

/** Whom the mail went to, and for which week. */
export interface MailLink {
  gardenId: string;
  /** The id of the member it was written to: it stays that person's, and nobody else's, whatever they are called. */
  memberId: string;
  /** The Monday of the list it came with. */
  monday: Day;
}

/** A link that answers for one task. */
export interface AnswerLink extends MailLink {
  key: TaskKey;
}

/** A link whose reader is of the household. */
export type OwnLink<Link extends MailLink> = Link & {
  /** What they are called now. */
  member: string;
};

/** A link followed. Nothing is said of one that was never sent: each kind of wrong looks the same. */
export type Followed<Link extends MailLink> =
  | { leads: 'nowhere' }
  /** It worked until this day. */
  | { leads: 'too late'; lastDay: Day; link: Link }
  /** It went to somebody who is not of the household any more. */
  | { leads: 'to a stranger'; link: Link }
  | { leads: 'on'; link: OwnLink<Link> };

/** What a steward does with links of its mail. */
export interface LinkDoings {
  /** Where the link of an answer leads. Reads only. */
  followAnswer(token: string): Promise<Followed<AnswerLink>>;
  /** Where the link that stops the mail leads. Reads only. */
  followStop(token: string): Promise<Followed<MailLink>>;
}
