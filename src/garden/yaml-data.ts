/**
 * From YAML text to plain data: what is written to swell up, to go round in a ring or to take for ever is refused.
 */
import { Lexer, Parser, parseDocument } from 'yaml';
import type { Problem } from './problem.ts';

/** Uses of anchors a file may make: enough for any garden, too few to swell into a flood. */
const MOST_ALIASES = 50;

/** Lists and rows within one another. House default: many times what a garden file has, which is six. */
const MOST_DEEP = 60;

/** Keys of one row. House default: some ten times what the longest has. Each is held against every other. */
const MOST_KEYS = 400;

/** The data of a text, or everything that stands in its way. */
export type YamlData = { data: unknown } | { problems: Problem[] };

/** Reads YAML, or JSON, which is YAML too. */
export function yamlData(text: string): YamlData {
  const outsized = outsizedIn(text);
  if (outsized !== undefined) return { problems: [outsized] };
  const document = parseDocument(text, { uniqueKeys: true });
  if (document.errors.length > 0) return { problems: document.errors.map(yamlProblem) };
  const [tag] = document.warnings.filter(({ code }) => code === 'TAG_RESOLVE_FAILED');
  if (tag !== undefined) return { problems: [{ ...yamlProblem(tag), ...UNKNOWN_TAG }] };
  try {
    const data: unknown = document.toJS({ maxAliasCount: MOST_ALIASES });
    return isDeeper(data) ? { problems: [TOO_DEEP] } : { data };
  } catch (error) {
    if (!(error instanceof ReferenceError)) throw error;
    return { problems: [aliasProblem(error)] };
  }
}

/** What no garden file has so much of that reading it whole would take long, or fail; nothing where all is well. */
export function outsizedIn(text: string): Problem | undefined {
  const parser = new Parser();
  let line = 1;
  for (const lexeme of new Lexer().lex(text)) {
    // What is made of it does not matter here: only how it lies within one another.
    for (const _ of parser.next(lexeme));
    if (parser.stack.length > MOST_DEEP) return { ...TOO_DEEP, where: `line ${line}` };
    const top = parser.stack.at(-1);
    const isRow = top?.type === 'block-map' || (top?.type === 'flow-collection' && top.start.source === '{');
    if (isRow && top.items.length > MOST_KEYS) return { ...TOO_MANY_KEYS, where: `line ${line}` };
    line += lexeme.split('\n').length - 1;
  }
  return undefined;
}

/** Whether data lies deeper within itself than a file may; in a ring it is deeper than any depth. */
function isDeeper(data: unknown): boolean {
  const waiting: [unknown, number][] = [[data, 0]];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const [value, depth] = next;
    if (typeof value !== 'object' || value === null) continue;
    if (depth > MOST_DEEP) return true;
    for (const held of Object.values(value)) waiting.push([held, depth + 1]);
  }
  return false;
}

const TOO_DEEP: Problem = {
  where: 'the file',
  what: `Rows lie within rows more than ${MOST_DEEP} deep.`,
  mend: 'Check the indentation and the brackets: a garden file is a few lists of rows.',
};

const TOO_MANY_KEYS: Problem = {
  where: 'the file',
  what: `One row has more than ${MOST_KEYS} keys.`,
  mend: 'Begin each row of a list with a dash of its own.',
};

const UNKNOWN_TAG = { what: 'A tag stands here that is not known.', mend: 'Take out the word that begins with "!".' };

const NO_ALIASES = 'Write the text out in each place instead of using * and &.';

function aliasProblem({ message }: ReferenceError): Problem {
  const [, name] = /^Unresolved alias.*: (\S{1,60})$/.exec(message) ?? [];
  const what =
    name === undefined
      ? 'It repeats its own parts by an alias too often.'
      : `It points at *${name}, which is not there.`;
  return { where: 'the file', what, mend: NO_ALIASES };
}

function yamlProblem(error: { code: string; message: string; linePos?: readonly { line: number }[] }): Problem {
  const where = `line ${error.linePos?.[0]?.line ?? 1}`;
  if (error.code === 'MULTIPLE_DOCS')
    return { where, what: 'A second file begins here.', mend: 'Take the line --- out: a garden has one file.' };
  const [what = ''] = error.message.split(/ at line|\n/);
  return { where, what: `${what}.`, mend: 'Check the indentation and the quotes on this line.' };
}
