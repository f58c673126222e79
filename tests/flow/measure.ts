/**
 * The numbers the code is kept to: printed at every check, judged by people.
 */
import { countExports, namedFunctions } from './functions.ts';
import { countLines } from './lines.ts';
import { isPure } from './purity.ts';
import { ringOffences } from './rings.ts';
import type { SourceFile } from './source-tree.ts';

const LONGEST_SHOWN = 3;

/** The numbers of a tree and its tests, one a line, each with the aim it is held against. */
export function measurements(tree: readonly SourceFile[], tests: readonly SourceFile[]): string[] {
  const files = tree.map((file) => ({ file, lines: countLines(file) }));
  const code = files.map(({ lines }) => lines.code);
  const functions = tree.flatMap(namedFunctions).sort((a, b) => b.lines - a.lines);
  const lengths = functions.map(({ lines }) => lines);
  const pure = files.filter(({ file }) => isPure(file.path));
  const exported = pure.map(({ file }) => countExports(file));
  const rows: [string, string, string][] = [
    ['files, code lines', `${tree.length}, ${sum(code)}`, ''],
    ['code lines a file, median / 95th', `${percentile(code, 50)} / ${percentile(code, 95)}`, '≤ 60 / 250'],
    ['lines a function, median / 95th', `${percentile(lengths, 50)} / ${percentile(lengths, 95)}`, '≤ 10 / 40'],
    ['longest functions', functions.slice(0, LONGEST_SHOWN).map(functionText).join(', '), 'none > 80'],
    ['comment share, pure folders', share(commentShare(pure, 'comment')), '0.20–0.35'],
    ['inline comment share', share(commentShare(files, 'inlineComment')), '≤ 0.05'],
    ['exports with a doc comment, pure', documentedText(exported), 'all'],
    ['test code : code', share(sum(tests.map((file) => countLines(file).code)) / sum(code)), '≥ 1.0'],
    ['import rings', String(ringOffences(tree).length), '0'],
  ];
  return rows.map(([what, value, aim]) => `${what.padEnd(34)}${value}${aim && `   (aim ${aim})`}`);
}

/** The smallest value that at least `percent` of all values do not exceed; 0 of nothing. */
export function percentile(values: readonly number[], percent: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil((percent / 100) * sorted.length) - 1)] ?? 0;
}

type Counted = { lines: { code: number; comment: number; inlineComment: number } };

function commentShare(files: readonly Counted[], kind: 'comment' | 'inlineComment'): number {
  const written = sum(files.map(({ lines }) => lines.code + lines.comment));
  return sum(files.map(({ lines }) => lines[kind])) / written;
}

function documentedText(exported: readonly { all: number; documented: number }[]): string {
  return `${sum(exported.map(({ documented }) => documented))} of ${sum(exported.map(({ all }) => all))}`;
}

function functionText({ name, where, lines }: { name: string; where: string; lines: number }): string {
  return `${name} ${lines} (${where})`;
}

function share(value: number): string {
  return Number.isFinite(value) ? value.toFixed(2) : '–';
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
