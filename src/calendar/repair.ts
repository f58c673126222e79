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
  const octets = Buffer.from(line);
  const parts: string[] = [];
  let start = 0;
  let room = MAX_LINE_OCTETS;
  while (octets.length - start > room) {
    let end = start + room;
    while (continuesCharacter(octets[end])) end -= 1;
    parts.push(octets.toString('utf8', start, end));
    start = end;
    room = MAX_LINE_OCTETS - 1;
  }
  parts.push(octets.toString('utf8', start));
  return parts.join('\r\n ');
}

/** Whether an octet is the second or a later one of a UTF-8 character: its two high bits are 10. */
function continuesCharacter(octet: number | undefined): boolean {
  return octet !== undefined && octet >> 6 === 0b10;
}
