/**
 * The numbers the code is kept to: printed at every check, judged by people.
 */
import { folderRings, importDepth } from './depth.ts';
import { countExports, type NamedFunction, namedFunctions, testCaseLines } from './functions.ts';
import { countLines, type LineCount } from './lines.ts';
import { isPure } from './purity.ts';
import { ringOffences } from './rings.ts';
import type { SourceFile } from './source-tree.ts';

/** How many of the longest functions and files are shown. */
const LONGEST_SHOWN = 10;

/** What is measured: the program, its tests, and how many packages it stands on. */
export interface Measured {
  tree: readonly SourceFile[];
  tests: readonly SourceFile[];
  packages: { runtime: number; development: number };
}

/** A number with its name and its aim; it has none where it is only told. */
type Row = [what: string, value: string, aim?: string];

/** The numbers of a tree and its tests, one a line, each with the aim it is held against. */
export function measurements({ tree, tests, packages }: Measured): string[] {
  const files = tree.map((file) => ({ file, lines: countLines(file) }));
  const functions = tree.flatMap(namedFunctions).sort((a, b) => b.lines - a.lines);
  const longFiles = [...files].sort((a, b) => b.lines.all - a.lines.all).slice(0, LONGEST_SHOWN);
  const rows: Row[] = [
    ...sizeRows(files, functions),
    ...commentRows(files),
    ...testRows(files, tests),
    ['import depth', String(importDepth(tree)), '≤ 8'],
    ['import rings', String(ringOffences(tree).length), '0'],
    ['folder rings', ringsText(folderRings(tree)), '0'],
    ['packages, runtime / development', `${packages.runtime} / ${packages.development}`, '≤ 8 / ≤ 12'],
  ];
  return [
    ...rows.map(([what, value, aim]) => `${what.padEnd(34)}${value}${aim === undefined ? '' : `   (aim ${aim})`}`),
    'longest functions, lines (aim none > 80)',
    ...functions.slice(0, LONGEST_SHOWN).map(({ name, where, lines }) => longText(lines, `${name} (${where})`)),
    'longest files, lines (aim ≤ 400)',
    ...longFiles.map(({ file, lines }) => longText(lines.all, file.path)),
  ];
}

function sizeRows(files: readonly Counted[], functions: readonly NamedFunction[]): Row[] {
  const code = files.map(({ lines }) => lines.code);
  const all = files.map(({ lines }) => lines.all);
  return [
    ['files, code lines', `${files.length}, ${sum(code)}`],
    ['code lines a file, median / 95th', spread(code), '≤ 60 / 250'],
    ['all lines a file, median / 95th', spread(all), '≤ 90 / 400'],
    ['lines a function, median / 95th', spread(functions.map(({ lines }) => lines)), '≤ 10 / 40'],
    ['functions over 80 lines', String(functions.filter(({ lines }) => lines > 80).length), '0'],
  ];
}

function commentRows(files: readonly Counted[]): Row[] {
  const pure = files.filter(({ file }) => isPure(file.path));
  const exported = pure.map(({ file }) => countExports(file));
  return [
    ['comment share, pure folders', share(commentShare(pure, 'comment')), '0.20–0.35'],
    ['inline comment share', share(commentShare(files, 'inlineComment')), '≤ 0.05'],
    ['exports with a doc comment, pure', documentedText(exported), 'all'],
  ];
}

function testRows(files: readonly Counted[], tests: readonly SourceFile[]): Row[] {
  const codeOf = (counted: readonly Counted[]) => sum(counted.map(({ lines }) => lines.code));
  const tested = tests.map((file) => ({ file, lines: countLines(file) }));
  const ofPure = tested.filter(({ file }) => isPure(file.path.replace(/^tests/, 'src')));
  const pure = files.filter(({ file }) => isPure(file.path));
  return [
    ['test code : code, all', share(codeOf(tested) / codeOf(files)), '≥ 1.0'],
    ['test code : code, pure folders', share(codeOf(ofPure) / codeOf(pure)), '≥ 1.5'],
    ['lines a test, median / 95th', spread(tests.flatMap(testCaseLines)), '≤ 12 / 40'],
  ];
}

/** The smallest value that at least `percent` of all values do not exceed; 0 of nothing. */
export function percentile(values: readonly number[], percent: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil((percent / 100) * sorted.length) - 1)] ?? 0;
}

type Counted = { file: SourceFile; lines: LineCount };

function commentShare(files: readonly Counted[], kind: 'comment' | 'inlineComment'): number {
  const written = sum(files.map(({ lines }) => lines.code + lines.comment));
  return sum(files.map(({ lines }) => lines[kind])) / written;
}

function documentedText(exported: readonly { all: number; documented: number }[]): string {
  return `${sum(exported.map(({ documented }) => documented))} of ${sum(exported.map(({ all }) => all))}`;
}

function ringsText(rings: readonly (readonly string[])[]): string {
  return `${rings.length}${rings.map((ring) => `; ${ring.join(' ↔ ')}`).join('')}`;
}

function longText(lines: number, what: string): string {
  return `  ${String(lines).padStart(4)}  ${what}`;
}

function spread(values: readonly number[]): string {
  return `${percentile(values, 50)} / ${percentile(values, 95)}`;
}

function share(value: number): string {
  return Number.isFinite(value) ? value.toFixed(2) : '–';
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
