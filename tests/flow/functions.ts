/**
 * Named functions and exports of a file.
 */
import ts from 'typescript';
import { lineOf, type SourceFile, walk } from './source-tree.ts';

/** A function with a name, and the lines it takes from its first word to its last bracket. */
export interface NamedFunction {
  name: string;
  where: string;
  lines: number;
}

/** Functions, methods and functions held by a constant. */
export function namedFunctions({ path, syntax }: SourceFile): NamedFunction[] {
  const found: NamedFunction[] = [];
  walk(syntax, (node) => {
    const name = functionName(node);
    if (name === undefined) return;
    const last = syntax.getLineAndCharacterOfPosition(node.end).line + 1;
    found.push({ name, where: `${path}:${lineOf(node)}`, lines: last - lineOf(node) + 1 });
  });
  return found;
}

function functionName(node: ts.Node): string | undefined {
  if (ts.isFunctionDeclaration(node) || ts.isMethodDeclaration(node)) return node.body && node.name?.getText();
  const held = ts.isVariableDeclaration(node) ? node.initializer : undefined;
  return held && (ts.isArrowFunction(held) || ts.isFunctionExpression(held))
    ? (node as ts.VariableDeclaration).name.getText()
    : undefined;
}

/** Lines of each test of a file, from its call to its last bracket: `test('…', …)`, `it.each(…)('…', …)`. */
export function testCaseLines({ syntax }: SourceFile): number[] {
  const found: number[] = [];
  walk(syntax, (node) => {
    if (!ts.isCallExpression(node) || !isTestCall(node)) return;
    const last = syntax.getLineAndCharacterOfPosition(node.end).line + 1;
    found.push(last - lineOf(node) + 1);
  });
  return found;
}

/** Whether a call names a test and gives it a body: the first part of `test.each(…)('…', …)` does neither. */
function isTestCall({ expression, arguments: given }: ts.CallExpression): boolean {
  const hasBody = given.some((argument) => ts.isArrowFunction(argument) || ts.isFunctionExpression(argument));
  return hasBody && /^(?:test|it)(?:\.\w+)?(?:\(|`|$)/.test(expression.getText());
}

/** How many things a file exports by name, and how many of them have a doc comment. */
export function countExports({ syntax }: SourceFile): { all: number; documented: number } {
  const exported = syntax.statements.filter(
    (statement) =>
      ts.canHaveModifiers(statement) &&
      ts.getModifiers(statement)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword),
  );
  const documented = exported.filter((statement) => ts.getJSDocCommentsAndTags(statement).length > 0);
  return { all: exported.length, documented: documented.length };
}
