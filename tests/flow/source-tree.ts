/**
 * Source files read into memory, parsed once.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import ts from 'typescript';

/** A parsed file, its path written from the top of the project with forward slashes. */
export interface SourceFile {
  path: string;
  syntax: ts.SourceFile;
}

/** Parses texts by path. */
export function parseTree(texts: Readonly<Record<string, string>>): SourceFile[] {
  return Object.entries(texts)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([path, text]) => ({ path, syntax: ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true) }));
}

/** Reads and parses every TypeScript file under some folders of the project. */
export function readTree(root: string, folders: readonly string[]): SourceFile[] {
  const paths = folders.flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .map((name) => posix.join(folder, name.replaceAll('\\', '/')))
      .filter((path) => /\.tsx?$/.test(path)),
  );
  return parseTree(Object.fromEntries(paths.map((path) => [path, readFileSync(join(root, path), 'utf8')])));
}

/** Calls `look` on a node and everything in it. */
export function walk(node: ts.Node, look: (node: ts.Node) => void): void {
  look(node);
  ts.forEachChild(node, (child) => walk(child, look));
}

/** The line a node starts on, counted from 1. */
export function lineOf(node: ts.Node): number {
  return node.getSourceFile().getLineAndCharacterOfPosition(node.getStart()).line + 1;
}
