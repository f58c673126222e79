/**
 * How deep imports go, and whether folders import each other in a ring.
 */
import { posix } from 'node:path';
import { importsOf } from './imports.ts';
import type { SourceFile } from './source-tree.ts';

/** What each file, or folder, imports of the others. */
type Graph = ReadonlyMap<string, ReadonlySet<string>>;

function fileGraph(tree: readonly SourceFile[]): Graph {
  const known = new Set(tree.map(({ path }) => path));
  const imported = (file: SourceFile) =>
    importsOf(file).flatMap((found) => ('path' in found && known.has(found.path) ? [found.path] : []));
  return new Map(tree.map((file) => [file.path, new Set(imported(file))]));
}

/** Files in the longest chain of imports from one file to the next, types included; in a ring each file counts once. */
export function importDepth(tree: readonly SourceFile[]): number {
  const graph = fileGraph(tree);
  const depths = new Map<string, number>();
  const depthOf = (path: string): number => {
    const known = depths.get(path);
    if (known !== undefined) return known;
    depths.set(path, 0);
    const depth = 1 + Math.max(0, ...[...(graph.get(path) ?? [])].map(depthOf));
    depths.set(path, depth);
    return depth;
  };
  return Math.max(0, ...[...graph.keys()].map(depthOf));
}

/** Rings of folders: each is the folders that reach each other through the imports of their own files. */
export function folderRings(tree: readonly SourceFile[]): string[][] {
  const graph = new Map<string, Set<string>>();
  for (const [path, imported] of fileGraph(tree)) {
    const folder = posix.dirname(path);
    const others = graph.get(folder) ?? new Set();
    for (const other of imported) if (posix.dirname(other) !== folder) others.add(posix.dirname(other));
    graph.set(folder, others);
  }
  const reached = new Map([...graph.keys()].map((folder) => [folder, reachedFrom(folder, graph)]));
  const seen = new Set<string>();
  return [...graph.keys()].flatMap((folder) => {
    if (seen.has(folder) || !reached.get(folder)?.has(folder)) return [];
    const ring = [...graph.keys()].filter(
      (other) => reached.get(folder)?.has(other) && reached.get(other)?.has(folder),
    );
    for (const member of ring) seen.add(member);
    return [ring];
  });
}

/** All that can be reached from a start; the start too, where a way leads back to it. */
function reachedFrom(start: string, graph: Graph): Set<string> {
  const reached = new Set<string>();
  const next = [...(graph.get(start) ?? [])];
  for (let at = next.pop(); at !== undefined; at = next.pop()) {
    if (reached.has(at)) continue;
    reached.add(at);
    next.push(...(graph.get(at) ?? []));
  }
  return reached;
}
