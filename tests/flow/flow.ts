/**
 * The one-way flow of DEVELOPERS.md: which folder may import from which.
 */
import { importsOf } from './imports.ts';
import type { Offence } from './offence.ts';
import type { SourceFile } from './source-tree.ts';

/** Each folder of src with its rank: a file imports from its own folder and from lower ranks. */
export const RANKS: Readonly<Record<string, number>> = {
  measures: 0,
  log: 1,
  handbook: 2,
  garden: 3,
  climate: 4,
  practices: 5,
  schedule: 6,
  calendar: 7,
  digest: 7,
  store: 8,
  steward: 9,
  web: 10,
  cli: 11,
};

/** Packages that speak SQL. */
const SQL_PACKAGES = ['kysely', 'better-sqlite3'];

/** Every import that goes against the flow. */
export function flowOffences(tree: readonly SourceFile[]): Offence[] {
  return tree.flatMap((file) =>
    importsOf(file).flatMap((found) => {
      const trouble = 'path' in found ? wrongPath(file.path, found.path) : wrongPackage(file.path, found.package);
      return trouble ? [{ file: file.path, line: found.line, ...trouble }] : [];
    }),
  );
}

/** A file directly in src, or in a folder of it that has no rank. */
export function placeOffences(tree: readonly SourceFile[]): Offence[] {
  return tree.flatMap(({ path }) => {
    const folder = folderOf(path);
    if (!path.startsWith('src/') || (folder !== undefined && folder in RANKS)) return [];
    const what = folder === undefined ? 'This file lies directly in src/.' : `src/${folder}/ has no place in the flow.`;
    return [{ file: path, line: 1, what, mend: 'Move it into a folder named in RANKS of tests/flow/flow.ts.' }];
  });
}

type Trouble = Pick<Offence, 'what' | 'mend'>;

function wrongPath(from: string, to: string): Trouble | undefined {
  const [lower, upper] = [folderOf(to), folderOf(from)];
  if (from.startsWith('migrations/'))
    return to.startsWith('migrations/') ? undefined : { what: `A migration imports ${to}.`, mend: ALONE };
  if (to.startsWith('migrations/'))
    return upper === 'store' ? undefined : { what: `${to} is imported outside src/store/.`, mend: 'Ask the store.' };
  if (from.startsWith('demo-data/')) return demoImport(to);
  if (to.startsWith('demo-data/'))
    return upper === 'steward'
      ? undefined
      : { what: `${to} is imported outside src/steward/.`, mend: 'Ask the steward.' };
  if (!to.startsWith('src/')) return { what: `${to} lies outside src/.`, mend: 'Move what is needed into src/.' };
  if (lower === undefined) return { what: `${to} lies directly in src/.`, mend: 'Move it into the lowest folder.' };
  if (upper === undefined || upper === lower) return strangePractice(from, to);
  const [rank, own] = [RANKS[lower], RANKS[upper]];
  if (rank === undefined || own === undefined || rank < own) return undefined;
  return {
    what: `${upper} imports ${to}, but ${lower} ${rank === own ? 'stands beside it' : 'comes after it'} in the flow.`,
    mend: `Pass what is needed in as an argument, or move it to a folder both may import from.`,
  };
}

/** The demo garden is data written with the measures and nouns of the core; it knows nothing above them. */
function demoImport(to: string): Trouble | undefined {
  if (to.startsWith('demo-data/') || ['measures', 'garden'].includes(folderOf(to) ?? '')) return undefined;
  return {
    what: `The demo garden imports ${to}.`,
    mend: 'Use the measures and nouns of src/measures/ and src/garden/ only.',
  };
}

const ALONE = 'Write what it needs into the migration: the program moves on and a migration does not.';

/** A practice sees the results of those before it, handed to it; it never imports another. */
function strangePractice(from: string, to: string): Trouble | undefined {
  const [own, other] = [practiceOf(from), practiceOf(to)];
  if (own === undefined || other === undefined || own === other) return undefined;
  return {
    what: `The practice ${own} imports the practice ${other}.`,
    mend: 'Hand its results over in the pass, or move what both need up into src/practices/.',
  };
}

function wrongPackage(from: string, name: string): Trouble | undefined {
  if (!SQL_PACKAGES.includes(name) || /^(src\/store|migrations)\//.test(from)) return undefined;
  return { what: `${name} is imported outside src/store/.`, mend: 'Ask the store: only it knows SQL.' };
}

function folderOf(path: string): string | undefined {
  return /^src\/([^/]+)\//.exec(path)?.[1];
}

function practiceOf(path: string): string | undefined {
  return /^src\/practices\/([^/]+)\//.exec(path)?.[1];
}
