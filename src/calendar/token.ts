/**
 * The secret part of a feed's address. Whoever holds it can read the feed, since hosted calendars cannot log in.
 */
import { randomBytes } from 'node:crypto';

/** 256 bits: more than the 160 that RFC 6749, 10.10 recommends against guessing. */
const TOKEN_OCTETS = 32;

/** A new token: 43 characters that need no escaping in an address. */
export function newFeedToken(): string {
  return randomBytes(TOKEN_OCTETS).toString('base64url');
}
