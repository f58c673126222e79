/**
 * The secret part of a link in mail: what it is about, signed. It is one run of letters that need no escaping in an
 * address, too long for anything else the program prints to be taken for one.
 */
import { dayFromSerial, serialOf, weekStart } from '../../measures/days.ts';
import type { AnswerLink, MailLink } from '../doings/mail-links.ts';
import { type LinkUse, MARK_OCTETS, type Signer } from './signer.ts';

/** What a token says, not yet believed. */
export interface ReadToken<Link extends MailLink> {
  said: Link;
  /** Whether it was signed for this use. */
  signedBy(signer: Signer): boolean;
}

/** First octet of every token: the way this version writes it. */
const VERSION = 1;

/** Longest token looked at: many times what one is. House default. */
const MOST_CHARACTERS = 2_000;

/** The token of an answer's link. */
export function answerToken(signer: Signer, { gardenId, memberId, monday, key }: AnswerLink): string {
  return tokenOf(signer, 'answer', [gardenId, memberId, serialOf(monday), key]);
}

/** The token of the link that stops somebody's mail. */
export function stopToken(signer: Signer, { gardenId, memberId, monday }: MailLink): string {
  return tokenOf(signer, 'stop', [gardenId, memberId, serialOf(monday)]);
}

function tokenOf(signer: Signer, use: LinkUse, parts: readonly (string | number)[]): string {
  const said = Buffer.from(JSON.stringify(parts));
  return Buffer.concat([Buffer.of(VERSION), signer.sign(use, said), said]).toString('base64url');
}

/** Reads the token of an answer. Nothing where it is none; whether it is to be believed, the garden's signer says. */
export function readAnswerToken(token: string): ReadToken<AnswerLink> | undefined {
  return readToken('answer', token, ([gardenId, memberId, serial, key, ...rest]) => {
    const mail = rest.length === 0 ? mailOf(gardenId, memberId, serial) : undefined;
    return mail && typeof key === 'string' ? { ...mail, key } : undefined;
  });
}

/** The same of a token that stops the mail. */
export function readStopToken(token: string): ReadToken<MailLink> | undefined {
  return readToken('stop', token, ([gardenId, memberId, serial, ...rest]) =>
    rest.length === 0 ? mailOf(gardenId, memberId, serial) : undefined,
  );
}

function readToken<Link extends MailLink>(
  use: LinkUse,
  token: string,
  linkOf: (parts: readonly unknown[]) => Link | undefined,
): ReadToken<Link> | undefined {
  if (token.length > MOST_CHARACTERS) return undefined;
  const octets = Buffer.from(token, 'base64url');
  // One token has one spelling: letters that decoding would pass over, or bits it would drop, make it another.
  if (octets.toString('base64url') !== token || octets[0] !== VERSION) return undefined;
  const [mark, text] = [octets.subarray(1, 1 + MARK_OCTETS), octets.subarray(1 + MARK_OCTETS)];
  const parts = parsed(text.toString());
  const said = Array.isArray(parts) ? linkOf(parts as unknown[]) : undefined;
  return said && { said, signedBy: (signer) => signer.signed(use, text, mark) };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function mailOf(gardenId: unknown, memberId: unknown, serial: unknown): MailLink | undefined {
  if (typeof gardenId !== 'string' || typeof memberId !== 'string' || !Number.isSafeInteger(serial)) return undefined;
  const monday = dayFromSerial(Number(serial));
  return weekStart(monday) === monday ? { gardenId, memberId, monday } : undefined;
}
