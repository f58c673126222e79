/**
 * What no answer may be, whatever was asked.
 */
import type { Answered } from './household.ts';

/** What no answer says, unless it says back what was sent. */
const NEVER: readonly (readonly [string, RegExp])[] = [
  ['a line of a stack', /\n\s*at (?:async )?\S+ \(|\bat (?:async )?file:\/\/|node:internal/],
  ['a path of a file', /\/node_modules\/|\/src\/(?:web|steward|store|garden)\/|\.tsx?:\d+/],
  ['the word undefined', /\bundefined\b/],
  ['the word NaN', /\bNaN\b/],
  ['an object as text', /\[object \w+\]/],
  ['the words of a check', /Invalid input|ZodError|SQLITE_|invalid_type/],
];

/** Markup that was sent and came back as markup. */
const LIVE = /<script>alert|<img src=x/;

/**
 * What is amiss in an answer.
 *
 * @param sent everything that was sent: its own words may come back
 */
export function amissIn({ status, body, isPage }: Answered, sent: string): string[] {
  const wrong: string[] = [];
  if (status >= 500) wrong.push(`answers ${status}`);
  const tame = isPage ? withoutFields(body) : body;
  for (const [what, pattern] of NEVER) {
    const found = pattern.exec(tame)?.[0];
    if (found !== undefined && !pattern.test(sent)) wrong.push(`says ${what}: ${around(tame, pattern)}`);
  }
  if (LIVE.test(body)) wrong.push('gives markup back as markup');
  if (status >= 400 && status < 500 && !saysTheMend({ status, body, isPage })) wrong.push(`${status} without a mend`);
  return wrong;
}

/** A page without what stands in its fields: that is what was typed. */
function withoutFields(html: string): string {
  return html.replace(/\svalue="[^"]*"/g, '').replace(/(<textarea[^>]*>).*?<\/textarea>/gs, '$1</textarea>');
}

function around(text: string, pattern: RegExp): string {
  const at = pattern.exec(text)?.index ?? 0;
  return text.slice(Math.max(0, at - 80), at + 80).replace(/\s+/g, ' ');
}

/** Whether a refusal says what is wrong and how it is mended: to a person on a page, to a program in JSON. */
function saysTheMend({ status, body, isPage }: Pick<Answered, 'status' | 'body' | 'isPage'>): boolean {
  if (!isPage) return body.startsWith('{') ? saidInJson(body) : /\S+ \S+.*[.?!]\s*$/s.test(body);
  const main = /<main[^>]*>(.*)<\/main>/s.exec(body)?.[1] ?? '';
  const alerts = [...main.matchAll(/<section [^>]*role="alert"[^>]*>(.*?)<\/section>/gs)].map(([, said = '']) => said);
  const said = alerts.length > 0 ? alerts.join(' ') : main;
  const sentences = plain(said).match(/[^.!?:]+[.!?:]+(?=\s|$)/g) ?? [];
  return sentences.length >= (status === 409 ? 1 : 2);
}

function saidInJson(body: string): boolean {
  const { problems = [] } = JSON.parse(body) as { problems?: { where: string; what: string; mend: string }[] };
  return problems.length > 0 && problems.every(({ where, what, mend }) => where !== '' && what !== '' && mend !== '');
}

function plain(html: string): string {
  return html
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}
