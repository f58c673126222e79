/**
 * Which kind of program asks, by the name it gives itself (RFC 9110, 10.1.5). Neither its version nor its address is kept.
 */
import { recalled } from './recalled.ts';

/** Names that nearly every program carries and that tell nothing of it. */
const SAID_BY_ALL = new Set(['mozilla', 'gecko', 'applewebkit', 'khtml', 'safari', 'version', 'mobile', 'compatible']);

/** A product's name, its version behind a slash left out. */
const PRODUCT = /[A-Za-z][A-Za-z0-9._+-]*(?=\/)/g;

/** A name inside a comment, as programs give it that pass for a browser: "(compatible; Calendar-Reader; …)". */
const IN_COMMENT = /\(compatible; ([A-Za-z][A-Za-z0-9._+-]*)/;

/** Longest name kept. House default: one word on a phone. */
const NAME_CHARACTERS = 40;

/** The kind of program a User-Agent header names, such as "Thunderbird". */
export const clientKind = recalled((userAgent: string): string => {
  const text = userAgent.slice(0, 500);
  const named = IN_COMMENT.exec(text)?.[1];
  const products = [...text.matchAll(PRODUCT)].map(([name]) => name);
  const telling = products.filter((name) => !SAID_BY_ALL.has(name.toLowerCase()));
  const kind = named ?? telling[0] ?? (products.length > 0 ? 'a browser' : /^[A-Za-z][\w.+-]*/.exec(text)?.[0]);
  return (kind ?? 'an unnamed program').slice(0, NAME_CHARACTERS);
});
