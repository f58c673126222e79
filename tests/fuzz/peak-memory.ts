/**
 * One run of the program in a process of its own, which tells how much memory it had at its most.
 */

import { secretInlet } from '../../src/cli/command-line/secret-inlet.ts';
import { run } from '../../src/cli/run.ts';

const code = await run(process.argv.slice(2), {
  stdout: { write: () => true },
  stderr: process.stderr,
  secrets: secretInlet(process.stdin, process.stderr),
  env: {},
  cwd: process.cwd(),
  now: () => '2027-04-18T15:00:00.000Z',
  untilStopped: () => Promise.resolve(),
});
process.stdout.write(JSON.stringify({ code, peakMiB: Math.round(process.resourceUsage().maxRSS / 1024) }));
