/**
 * HTML written by hand: whatever is put into it is escaped, unless it is markup itself.
 */

/** A piece of HTML that is safe to send. */
export class Markup {
  constructor(readonly text: string) {}
}

type Part = string | number | Markup | readonly Markup[];

/** HTML with its values escaped; pieces of markup and rows of them are taken as they are. */
export function html(strings: TemplateStringsArray, ...parts: Part[]): Markup {
  return new Markup(strings.map((string, index) => string + written(parts[index] ?? '')).join(''));
}

function written(part: Part): string {
  if (part instanceof Markup) return part.text;
  if (typeof part === 'object') return part.map(({ text }) => text).join('');
  return escaped(String(part));
}

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (character) => ESCAPES[character] ?? character);
}
