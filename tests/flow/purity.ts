/**
 * The pure folders have no clock, no chance, no environment and no I/O: today is an argument.
 */
import { isBuiltin } from 'node:module';
import ts from 'typescript';
import { importsOf } from './imports.ts';
import type { Offence } from './offence.ts';
import { lineOf, type SourceFile, walk } from './source-tree.ts';

const PURE_FOLDERS = ['measures', 'log', 'handbook', 'garden', 'climate', 'practices', 'schedule'];

const TODAY = 'Take the day as an argument.';
const OUTSIDE = 'Take the value as an argument, or do this in store, steward, web or cli.';

/** Whether a file lies in one of the folders that must be pure. */
export function isPure(path: string): boolean {
  return PURE_FOLDERS.some((folder) => path.startsWith(`src/${folder}/`));
}

/** Every use of clock, chance, environment or Node in a pure folder. */
export function purityOffences(tree: readonly SourceFile[]): Offence[] {
  return tree.filter(({ path }) => isPure(path)).flatMap((file) => [...nodeImports(file), ...impureUses(file)]);
}

function nodeImports(file: SourceFile): Offence[] {
  return importsOf(file).flatMap((found) =>
    'package' in found && isBuiltin(found.package)
      ? [{ file: file.path, line: found.line, what: `A pure folder imports ${found.package}.`, mend: OUTSIDE }]
      : [],
  );
}

function impureUses({ path, syntax }: SourceFile): Offence[] {
  const offences: Offence[] = [];
  walk(syntax, (node) => {
    const trouble = impureUse(node);
    if (trouble) offences.push({ file: path, line: lineOf(node), ...trouble });
  });
  return offences;
}

function impureUse(node: ts.Node): Pick<Offence, 'what' | 'mend'> | undefined {
  if (ts.isNewExpression(node) && node.expression.getText() === 'Date' && !node.arguments?.length)
    return { what: 'new Date() without arguments reads the clock.', mend: TODAY };
  if (ts.isCallExpression(node) && node.expression.getText() === 'Date')
    return { what: 'Date() reads the clock.', mend: TODAY };
  if (ts.isPropertyAccessExpression(node) && node.name.text === 'now' && isClock(node))
    return { what: `${node.getText()} reads the clock.`, mend: TODAY };
  if (ts.isPropertyAccessExpression(node) && node.getText() === 'Math.random')
    return { what: 'Math.random gives another answer each time.', mend: 'Work it out from the input.' };
  if (ts.isIdentifier(node) && node.text === 'process' && !isMemberName(node))
    return { what: 'process belongs to the program, not to the garden.', mend: OUTSIDE };
  return undefined;
}

/** `clock.now()` and `Date.now` handed on are clocks; `input.now` is a moment somebody handed in. */
function isClock(node: ts.PropertyAccessExpression): boolean {
  const called = ts.isCallExpression(node.parent) && node.parent.expression === node;
  return called || ['Date', 'DateTime', 'performance'].includes(node.expression.getText());
}

/** `pile.process` and `{ process: 1 }` name a member; they are not the running program. */
function isMemberName(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.name === node;
  const named = ts.isPropertyAssignment(parent) || ts.isPropertySignature(parent) || ts.isPropertyDeclaration(parent);
  return named && parent.name === node;
}
