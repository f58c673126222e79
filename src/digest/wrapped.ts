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

/** A text of wrapped lines with each one whole again, for paper of another width. */
export function unwrapped(text: string): string {
  const whole: string[] = [];
  let last = '';
  for (const line of text.split('\n')) {
    const [word = ''] = line.trimStart().split(' ');
    const held = whole.at(-1);
    const isBroken = last !== '' && word !== '' && last.length + 1 + word.length > LINE_CHARACTERS;
    if (held !== undefined && isBroken && indentOf(line) >= indentOf(last))
      whole[whole.length - 1] = `${held} ${line.trimStart()}`;
    else whole.push(line);
    last = line;
  }
  return whole.join('\n');
}

function indentOf(line: string): number {
  return line.length - line.trimStart().length;
}
