/**
 * Long lines broken between words.
 */

/** Characters on a line of plain text: what a terminal and a printed page both hold. */
const LINE_CHARACTERS = 80;

/** A text as lines of at most 80 characters; a longer word stands alone. No lines for an empty text. */
export function wrapped(text: string, indent = '', hanging = indent): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter((part) => part !== '')) {
    const longer = line === '' ? `${indent}${word}` : `${line} ${word}`;
    if (longer.length <= LINE_CHARACTERS || line === '') line = longer;
    else {
      lines.push(line);
      line = `${hanging}${word}`;
    }
  }
  return line === '' ? lines : [...lines, line];
}
