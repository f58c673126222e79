/**
 * Node.js of other lines for long use on this machine.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { delimiter, join } from 'node:path';

/** A Node.js by its version, and the folder its program lies in. */
export interface OtherNode {
  version: string;
  folder: string;
}

/** Least line the program runs on, as "engines" in package.json says. */
const LEAST_MAJOR = 20;

/** The folders a machine may keep others in: those that NODE_LTS names, and where the usual managers of versions put theirs. */
export function placesToLook(env: Readonly<Record<string, string | undefined>> = process.env): string[] {
  const named = (env.NODE_LTS ?? '').split(delimiter).filter((folder) => folder !== '');
  const managed = [
    [join(homedir(), '.nvm', 'versions', 'node'), 'bin'],
    [join(homedir(), '.local', 'share', 'fnm', 'node-versions'), join('installation', 'bin')],
    ['/usr/local/n/versions/node', 'bin'],
  ] as const;
  const kept = managed.flatMap(([root, below]) =>
    existsSync(root) ? readdirSync(root).map((version) => join(root, version, below)) : [],
  );
  return [...named, ...kept];
}

/** Of the folders given, one of each line for long use (even numbers) that is another than the present one. */
export function otherLines(folders: readonly string[], present = process.versions.node): OtherNode[] {
  const found = folders.flatMap((folder) => {
    const file = join(folder, 'node');
    if (!existsSync(file)) return [];
    return [{ folder, version: execFileSync(file, ['--version'], { encoding: 'utf8' }).trim().replace(/^v/, '') }];
  });
  const lines = new Map(found.map((node) => [majorOf(node.version), node]));
  lines.delete(majorOf(present));
  return [...lines].filter(([major]) => major >= LEAST_MAJOR && major % 2 === 0).map(([, node]) => node);
}

function majorOf(version: string): number {
  return Number(version.split('.')[0]);
}
