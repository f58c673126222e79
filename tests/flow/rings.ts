/**
 * Rings: files that import each other round in a circle, types included.
 */
import { importsOf } from './imports.ts';
import type { Offence } from './offence.ts';
import type { SourceFile } from './source-tree.ts';

type Graph = ReadonlyMap<string, readonly { path: string; line: number }[]>;

/** One offence for each ring, at the import in its first file that leads round. */
export function ringOffences(tree: readonly SourceFile[]): Offence[] {
  const graph = importGraph(tree);
  const inRings = new Set<string>();
  return [...graph.keys()].flatMap((path) => {
    const ring = inRings.has(path) ? undefined : ringThrough(path, graph);
    if (!ring) return [];
    for (const member of ring) inRings.add(member);
    const line = graph.get(path)?.find((next) => next.path === (ring[1] ?? path))?.line ?? 1;
    const what = `These files import each other in a ring: ${[...ring, path].join(' → ')}.`;
    return [{ file: path, line, what, mend: 'Move what they share into a file of its own.' }];
  });
}

function importGraph(tree: readonly SourceFile[]): Graph {
  const known = new Set(tree.map(({ path }) => path));
  return new Map(
    tree.map((file) => [
      file.path,
      importsOf(file).flatMap((found) => ('path' in found && known.has(found.path) ? [found] : [])),
    ]),
  );
}

/** The shortest way from a file round to itself, the file first; nothing when there is none. */
function ringThrough(start: string, graph: Graph): string[] | undefined {
  const seen = new Set<string>();
  let ways: string[][] = [[start]];
  while (ways.length > 0) {
    const longer: string[][] = [];
    for (const way of ways) {
      for (const { path } of graph.get(way.at(-1) ?? start) ?? []) {
        if (path === start) return way;
        if (seen.has(path)) continue;
        seen.add(path);
        longer.push([...way, path]);
      }
    }
    ways = longer;
  }
  return undefined;
}
