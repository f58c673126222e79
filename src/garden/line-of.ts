/**
 * The line of a garden file's text that a problem is about.
 */
import { isMap, isNode, isScalar, isSeq, LineCounter, type Node, parseDocument } from 'yaml';
import { outsizedIn } from './yaml-data.ts';

/** Of a file that is not read whole nothing is found. */
const EMPTY = { contents: null };

/**
 * Finds the line a path leads to, or, where its end is missing, the line of the item it is missing from.
 *
 * @returns for a path such as "beds[2].lengthM" a line from 1 on; nothing where the path leads nowhere in the text
 */
export function linesIn(text: string): (where: string) => number | undefined {
  const counter = new LineCounter();
  const { contents } = outsizedIn(text) === undefined ? parseDocument(text, { lineCounter: counter }) : EMPTY;
  return (where) => {
    const told = /^line (\d+)$/.exec(where);
    if (told) return Number(told[1]);
    const start = startOf(contents, stepsOf(where));
    return start === undefined ? undefined : counter.linePos(start).line;
  };
}

function stepsOf(where: string): string[] {
  return where.match(/[^.[\]]+/g) ?? [];
}

/** Where in the text the deepest node stands that a path reaches; nothing where it reaches none. */
function startOf(root: unknown, steps: readonly string[]): number | undefined {
  let node: unknown = root;
  let start: number | undefined;
  for (const step of steps) {
    const next = childOf(node, step);
    if (next === undefined) return start;
    start = next.start ?? start;
    node = next.value;
  }
  return start;
}

function childOf(node: unknown, step: string): { value: unknown; start: number | undefined } | undefined {
  if (isSeq(node)) {
    const value = node.items[Number(step)];
    return value === undefined ? undefined : { value, start: isNode(value) ? beginOf(value) : undefined };
  }
  if (!isMap(node)) return undefined;
  const pair = node.items.find(({ key }) => isScalar(key) && String(key.value) === step);
  if (pair === undefined) return undefined;
  return { value: pair.value, start: isNode(pair.key) ? beginOf(pair.key) : undefined };
}

function beginOf({ range }: Node): number | undefined {
  return range?.[0];
}
