/**
 * The program in one file, so that it can be started some hundred times: the same code, without a look for each module.
 */
import { readFile, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const require = createRequire(import.meta.url);
const root = fileURLToPath(new URL('../..', import.meta.url));

/** What stays where it is installed: native code, and a solver that loads its own parts. */
const APART = ['better-sqlite3', 'highs'];

/** The thread plans are made in, beside the program that begins it. */
const THREAD = { entry: 'src/steward/crew/thread.ts', begunBy: '/crew/in-threads.ts', name: 'thread.js' };

/**
 * Writes programs of the project into one file each, and the thread they begin.
 *
 * @param entries the programs, from the root of the project
 * @returns the files, to be run by Node
 */
export async function bundled(entries: readonly string[], folder: string): Promise<string[]> {
  await writeFile(join(folder, 'package.json'), '{ "type": "module" }');
  await written(THREAD.entry, join(folder, THREAD.name));
  return Promise.all(entries.map((entry, index) => written(entry, join(folder, `program-${index}.js`))));
}

async function written(entry: string, outfile: string): Promise<string> {
  // Files the program reads lie beside its sources, and the thread beside the one file.
  const placeOf = (path: string) => pathToFileURL(path.endsWith(THREAD.begunBy) ? outfile : path).href;
  await build({
    entryPoints: [join(root, entry)],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    jsx: 'automatic',
    jsxImportSource: 'hono/jsx',
    external: ['*.node'],
    logLevel: 'error',
    banner: {
      js: `import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);`,
    },
    plugins: [
      {
        name: 'places',
        setup(maker) {
          maker.onLoad({ filter: /\/(src|demo-data|migrations)\/.*\.tsx?$/ }, async ({ path }) => ({
            contents: (await readFile(path, 'utf8')).replaceAll('import.meta.url', JSON.stringify(placeOf(path))),
            loader: path.endsWith('x') ? 'tsx' : 'ts',
          }));
          maker.onResolve({ filter: new RegExp(`^(${APART.join('|')})$`) }, ({ path }) => ({
            path: require.resolve(path),
            external: true,
          }));
        },
      },
    ],
  });
  return outfile;
}
