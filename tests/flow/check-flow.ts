/**
 * Holds the code against the design: prints every offence, then the numbers, and fails when there is an offence.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { flowOffences, placeOffences } from './flow.ts';
import { measurements } from './measure.ts';
import { purityOffences } from './purity.ts';
import { ringOffences } from './rings.ts';
import { readTree } from './source-tree.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const tree = readTree(root, ['src', 'migrations', 'demo-data']);
const offences = [placeOffences, flowOffences, ringOffences, purityOffences].flatMap((rule) => rule(tree));

for (const { file, line, what, mend } of offences) console.error(`${file}:${line} ${what} ${mend}`);
for (const line of measurements({ tree, tests: readTree(root, ['tests']), packages: packagesOf(root) }))
  console.log(line);
console.log(offences.length === 0 ? 'The flow is kept.' : `Offences against the flow: ${offences.length}.`);
process.exitCode = offences.length === 0 ? 0 : 1;

/** How many packages the program names, to run and to be developed. */
function packagesOf(top: string): { runtime: number; development: number } {
  const { dependencies, devDependencies } = JSON.parse(readFileSync(join(top, 'package.json'), 'utf8'));
  return { runtime: Object.keys(dependencies).length, development: Object.keys(devDependencies).length };
}
