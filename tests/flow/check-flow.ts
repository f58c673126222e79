/**
 * Holds the code against the design: prints every offence, then the numbers, and fails when there is an offence.
 */
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
for (const line of measurements(tree, readTree(root, ['tests']))) console.log(line);
console.log(offences.length === 0 ? 'The flow is kept.' : `Offences against the flow: ${offences.length}.`);
process.exitCode = offences.length === 0 ? 0 : 1;
