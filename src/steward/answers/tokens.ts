/**
 * The secret part of a link in mail: what it is about, signed. It is one run of letters that need no escaping in an
 * address, too long for anything else the program prints to be taken for one.
 */
import { type Day, dayFromSerial, serialOf, weekStart } from '../../measures/days.ts';
import type { TaskKey } from '../../practices/draft.ts';
import { type LinkUse, MARK_OCTETS, type Signer } from './signer.ts';

/** Whom the mail went to, and for which week. */
export interface MailLink {
  gardenId: string;
  /** The member of the household it was written to, by name. */
  member: string;
  /** The Monday of the list it came with. */
  monday: Day;
}

/** A link that answers for one task. */
export interface AnswerLink extends MailLink {
  key: TaskKey;
}

/** What a token says, not yet believed. */
export interface ReadToken {
  said: MailLink & { key?: TaskKey };
  /** Whether it was signed for this use. */
  signedBy(signer: Signer): boolean;
}

/** First octet of every token: the way this version writes it. */
const VERSION = 1;

/** Longest token looked at: many times what one is. House default. */
const MOST_CHARACTERS = 2_000;

/** The token of an answer's link. */
export function answerToken(signer: Signer, { gardenId, member, monday, key }: AnswerLink): string {
  return tokenOf(signer, 'answer', [gardenId, member, serialOf(monday), key]);
}

/** The token of the link that stops somebody's mail. */
export function stopToken(signer: Signer, { gardenId, member, monday }: MailLink): string {
  return tokenOf(signer, 'stop', [gardenId, member, serialOf(monday)]);
}

function tokenOf(signer: Signer, use: LinkUse, parts: readonly (string | number)[]): string {
  const said = Buffer.from(JSON.stringify(parts));
  return Buffer.concat([Buffer.of(VERSION), signer.sign(use, said), said]).toString('base64url');
}

/** Reads a token for a use. Nothing where it is none; whether it is to be believed, the garden's signer says. */
export function readToken(use: LinkUse, token: string): ReadToken | undefined {
  if (token.length > MOST_CHARACTERS) return undefined;
  const octets = Buffer.from(token, 'base64url');
  // One token has one spelling: letters that decoding would pass over, or bits it would drop, make it another.
  if (octets.toString('base64url') !== token || octets[0] !== VERSION) return undefined;
  const [mark, text] = [octets.subarray(1, 1 + MARK_OCTETS), octets.subarray(1 + MARK_OCTETS)];
  const said = linkOf(use, parsed(text.toString()));
  return said && { said, signedBy: (signer) => signer.signed(use, text, mark) };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function linkOf(use: LinkUse, parts: unknown): ReadToken['said'] | undefined {
  if (!Array.isArray(parts) || parts.length !== (use === 'answer' ? 4 : 3)) return undefined;
  const [gardenId, member, serial, key] = parts as unknown[];
  if (typeof gardenId !== 'string' || typeof member !== 'string' || !Number.isSafeInteger(serial)) return undefined;
  const monday = dayFromSerial(Number(serial));
  if (weekStart(monday) !== monday) return undefined;
  if (use === 'stop') return { gardenId, member, monday };
  return typeof key === 'string' ? { gardenId, member, monday, key } : undefined;
}
