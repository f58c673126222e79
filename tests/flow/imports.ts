/**
 * What a file imports, in every way TypeScript has of saying so: types count as much as values.
 */
import { posix } from 'node:path';
import ts from 'typescript';
import { lineOf, type SourceFile, walk } from './source-tree.ts';

/** One import: a path of this project, or the name of a package or a part of Node. */
export type Import = { line: number; path: string } | { line: number; package: string };

/** Every import, re-export, `import()` and `import('…')` type of a file. */
export function importsOf({ path, syntax }: SourceFile): Import[] {
  const found: Import[] = [];
  walk(syntax, (node) => {
    const name = importedName(node);
    if (name === undefined) return;
    const line = lineOf(node);
    found.push(name.startsWith('.') ? { line, path: posix.join(posix.dirname(path), name) } : { line, package: name });
  });
  return found;
}

function importedName(node: ts.Node): string | undefined {
  if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return textOf(node.moduleSpecifier);
  if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) return textOf(node.argument.literal);
  const dynamic = ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword;
  return dynamic ? textOf(node.arguments[0]) : undefined;
}

function textOf(node: ts.Node | undefined): string | undefined {
  return node && ts.isStringLiteralLike(node) ? node.text : undefined;
}
