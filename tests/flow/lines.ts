/**
 * Lines of a file by what stands on them.
 */
import ts from 'typescript';
import type { SourceFile } from './source-tree.ts';

/** Counts of a file's lines. A line with code on it is a code line, whatever else is there. */
export interface LineCount {
  all: number;
  code: number;
  /** Lines that hold only comment, doc comments included. */
  comment: number;
  /** Of these, lines of comments that are not doc comments. */
  inlineComment: number;
}

/** Counts the lines of a file. */
export function countLines({ syntax }: SourceFile): LineCount {
  const code = new Set<number>();
  const doc = new Set<number>();
  const inline = new Set<number>();
  visitTokens(syntax, (token) => {
    addLines(code, syntax, token.getStart(), token.end);
    for (const { pos, end } of commentsBefore(token)) {
      addLines(syntax.text.startsWith('/**', pos) ? doc : inline, syntax, pos, end);
    }
  });
  const commentOnly = (lines: Set<number>) => [...lines].filter((line) => !code.has(line)).length;
  const all = syntax.text.split('\n').length - (syntax.text.endsWith('\n') ? 1 : 0);
  return { all, code: code.size, comment: commentOnly(doc) + commentOnly(inline), inlineComment: commentOnly(inline) };
}

function visitTokens(node: ts.Node, visit: (token: ts.Node) => void): void {
  const children = node.getChildren().filter((child) => !isDocComment(child));
  if (children.length === 0) visit(node);
  for (const child of children) visitTokens(child, visit);
}

function isDocComment({ kind }: ts.Node): boolean {
  return kind >= ts.SyntaxKind.FirstJSDocNode && kind <= ts.SyntaxKind.LastJSDocNode;
}

function commentsBefore(token: ts.Node): readonly ts.CommentRange[] {
  // What looks like a comment between two tags of JSX is text.
  if (token.kind === ts.SyntaxKind.JsxText) return [];
  const { text } = token.getSourceFile();
  return [
    ...(ts.getLeadingCommentRanges(text, token.pos) ?? []),
    ...(ts.getTrailingCommentRanges(text, token.pos) ?? []),
  ];
}

function addLines(lines: Set<number>, file: ts.SourceFile, from: number, to: number): void {
  if (from === to) return;
  const first = file.getLineAndCharacterOfPosition(from).line;
  const last = file.getLineAndCharacterOfPosition(to).line;
  for (let line = first; line <= last; line += 1) lines.add(line);
}
