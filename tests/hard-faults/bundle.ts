/**
 * The program in one file, so that it can be started some hundred times: the same code, without a look for each module.
 */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const require = createRequire(import.meta.url);
const root = fileURLToPath(new URL('../..', import.meta.url));

/** What stays where it is installed: native code, and a solver that loads its own parts. */
const APART = ['better-sqlite3', 'highs'];

/**
 * Writes a program of the project into one file.
 *
 * @param entry the program, from the root of the project
 * @returns the file, to be run by Node
 */
export async function bundled(entry: string, folder: string): Promise<string> {
  const outfile = join(folder, `${entry.replaceAll('/', '-')}.mjs`);
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
          // Files the program reads lie beside its sources, not beside the one file.
          maker.onLoad({ filter: /\/(src|demo-data|migrations)\/.*\.tsx?$/ }, async ({ path }) => ({
            contents: (await readFile(path, 'utf8')).replaceAll(
              'import.meta.url',
              JSON.stringify(pathToFileURL(path).href),
            ),
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
