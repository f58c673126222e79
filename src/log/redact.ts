/**
 * The one place where secrets are blotted out of what is printed: lines of the log may be kept for years, and passed on.
 */

/** What stands where a secret was. */
const SECRET = '[secret]';
/** What stands where a mail address was. */
const ADDRESS = '[address]';

/**
 * A text with everything blotted out that could be a token of a feed, of a session or of a link in mail, and with
 * whatever follows the addresses of such links, however it is spelt.
 */
export function withoutTokens(text: string): string {
  return text
    .replace(/\/(answer|stop)\/[^\s?#"'<>)]+/g, `/$1/${SECRET}`)
    .replace(/\/feed\/(?!:)[^\s?#"'<>)/]+/g, `/feed/${SECRET}`)
    .replace(/[A-Za-z0-9_-]{43,}/g, SECRET);
}

/** Header lines that hold a secret whole (RFC 9110, 11.6.2; RFC 6265, 4): all that follows, up to the end of the line. */
const SECRET_HEADERS = /\b((?:proxy-)?authorization|(?:set-)?cookie)(["']?\s*[:=]\s*)[^\r\n]+/gi;

/** A word that says what stands behind it is a secret, with "=" or ":" between, as in forms, settings and JSON. */
const NAMED_SECRETS =
  /((?:password|passwd|passphrase|secret|token|csrf|session|api[-_]?key|signing[-_]?key|key[-_]?hash)(?:["']?\s*[:=]\s*))("(?:[^"\\]|\\.)*"|'(?:[^'\\]|\\.)*'|[^\s&;,"'}]+)/gi;

/** User and password inside an address (RFC 3986, 3.2.1); to the last "@", for one in a password may stand uncoded. */
const LOGINS = /\b([a-z][a-z0-9+.-]{0,20}:\/\/)[^\s/?#"'<>]*@/gi;

/** A mail address (RFC 5321, 4.1.2), quoted or not, in any script. */
const MAIL_ADDRESSES =
  /(?:"[^"\r\n]{1,64}"|[\p{L}\p{N}.!#$%&'*+=?^_`{|}~-]{1,64})@[\p{L}\p{N}](?:[\p{L}\p{N}.-]{0,253}[\p{L}\p{N}])?/gu;

/**
 * A text without secrets: tokens and keys, cookies, passwords, logins in addresses, mail addresses, and what is known to
 * be secret besides.
 *
 * @param known secrets of this run, such as the mail server's password
 */
export function redacted(text: string, known: readonly string[] = []): string {
  const plain = known.reduce((rest, secret) => (secret === '' ? rest : rest.replaceAll(secret, SECRET)), text);
  return withoutTokens(
    plain
      .replace(SECRET_HEADERS, `$1$2${SECRET}`)
      .replace(NAMED_SECRETS, `$1${SECRET}`)
      .replace(LOGINS, `$1${SECRET}@`),
  ).replace(MAIL_ADDRESSES, (address) => (address.startsWith(SECRET) ? address : ADDRESS));
}
