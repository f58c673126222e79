/**
 * What a steward does with post, and what it hands out of it.
 */
import type { DueList } from '../../digest/mail/due-lists.ts';
import type { ListMessage } from '../../digest/mail/list-message.ts';
import type { MemberMail } from '../../garden/household.ts';
import type { Delivery } from '../../store/deliveries.ts';

/** How the mail of one member stands. */
export interface MailStanding {
  member: string;
  mail: MemberMail;
  /** The list that goes out next, or is due and on its way. */
  next: DueList;
  /** Whether that list's hour has come. */
  isDue: boolean;
  /** The last list that went out, if one did. */
  sent?: Delivery;
  /** What is wrong with a newer list, if anything is. */
  wrong?: Delivery;
  /** Whether what is wrong is the list of now, which can be sent again by hand. */
  canSendAgain: boolean;
}

/** A list as it would go out. */
export interface MailPreview {
  message: ListMessage;
  /** The same as the octets that travel. */
  source: Buffer;
}

/** Where lists go, without secrets: "mail.example.org:587", or a folder. */
export type MailWay = { kind: 'server'; name: string } | { kind: 'outbox'; folder: string };

/** Which lists are sent, and how long. */
export interface SendAsked {
  /** Only those of this garden. */
  gardenId?: string;
  /** Also what waits for its next try: whoever has just started may have mended the settings. */
  atOnce?: boolean;
  /** Breaks off what is under way, and begins nothing more. */
  signal?: AbortSignal;
}

/** What a steward does with post. */
export interface MailDoings {
  /** The log of lists sent by mail, the newest week first. */
  deliveries(gardenId: string): Promise<Delivery[]>;
  /** How the mail of each member who gets it stands. */
  mailStandings(gardenId: string): Promise<MailStanding[]>;
  /** How lists leave the house. */
  mailWay(): MailWay;
  /** The list that goes to a member next, as it would go out now; its links lead nowhere. */
  previewMail(gardenId: string, member: string): Promise<MailPreview>;
  /** Sends every list that is due, once each; returns those tried and how they ended. */
  sendDue(asked?: SendAsked): Promise<Delivery[]>;
  /** Sends a member the list of the week once more, after it was refused or nobody knows whether it arrived. */
  sendAgain(gardenId: string, member: string): Promise<Delivery>;
}
