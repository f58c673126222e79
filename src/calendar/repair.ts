/**
 * What ical-generator 10.2 leaves wrong, put right in one place: texts are cleaned before they reach it, its output is
 * mended after. Everything here answers to RFC 5545.
 */

/** Longest content line in octets, its CRLF left out (RFC 5545, 3.1). */
const MAX_LINE_OCTETS = 75;

/** Line breaks in every writing: CR LF, CR, LF, VT, FF, next line, line separator, paragraph separator. */
const ANY_LINE_BREAK = /\r\n|[\r\n\v\f\u0085\u2028\u2029]/g;

const URL_LINE_START = 'URL;VALUE=URI:';

/**
 * A text that TEXT can hold: line breaks of every kind become LF, other control characters go (3.3.11 forbids them;
 * the library lets them through), half surrogate pairs become the replacement character so that UTF-8 can carry them.
 */
export function cleanText(text: string): string {
  return text
    .replace(ANY_LINE_BREAK, '\n')
    .replace(/(?![\t\n])\p{Cc}/gu, '')
    .replace(/\p{Surrogate}/gu, '\uFFFD');
}

/** Clean texts for a list of values; one with nothing left is no value, and the library throws at it. */
export function cleanTexts(texts: readonly string[]): string[] {
  return texts.map(cleanText).filter((text) => text !== '');
}

/**
 * A clean text escaped as a TEXT value (3.3.11), for the properties that the library writes raw: NAME, X-WR-CALNAME,
 * X-WR-CALDESC and UID.
 */
export function escapedText(text: string): string {
  return cleanText(text)
    .replace(/[\\;,]/g, (special) => `\\${special}`)
    .replace(/\n/g, '\\n');
}

/** The content lines the library wrote, folds undone and URL values freed of TEXT escapes (3.3.13). */
export function contentLines(written: string): string[] {
  return written.replace(/\r\n /g, '').split('\r\n').map(withPlainUrl);
}

/** Content lines as they are sent: folded at 75 octets, CRLF after each, the last one too. */
export function sentLines(lines: readonly string[]): string {
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

function withPlainUrl(line: string): string {
  return line.startsWith(URL_LINE_START) ? line.replace(/\\([\\;,])/g, '$1') : line;
}

/** A content line cut into lines of at most 75 octets, each further one led by a space, never inside a character. */
export function folded(line: string): string {
  const parts: string[] = [];
  let [start, room] = [0, MAX_LINE_OCTETS];
  for (let at = 0; at < line.length; ) {
    const character = line.codePointAt(at) ?? 0;
    if (octetsOf(character) > room) {
      parts.push(line.slice(start, at));
      [start, room] = [at, MAX_LINE_OCTETS - 1];
    }
    room -= octetsOf(character);
    at += character > LAST_OF_ONE_UNIT ? 2 : 1;
  }
  parts.push(line.slice(start));
  return parts.join('\r\n ');
}

/** The last character that a string holds in one unit; all after it take two. */
const LAST_OF_ONE_UNIT = 0xffff;

/** Octets a character takes in UTF-8 (RFC 3629, 3). */
function octetsOf(character: number): number {
  if (character <= 0x7f) return 1;
  if (character <= 0x7ff) return 2;
  return character <= LAST_OF_ONE_UNIT ? 3 : 4;
}
