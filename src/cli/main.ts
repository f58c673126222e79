#!/usr/bin/env node
/**
 * The program itself: the world as it is, handed to one run.
 */
import { once } from 'node:events';
import { secretInlet } from './command-line/secret-inlet.ts';
import { run } from './run.ts';

// Whoever reads our output may stop early ("loamtide plan | head"): that is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
});

/**
 * Longest the program may take to end once it is asked to: less than the 10 s after which a container is killed. What is
 * bounded inside ends earlier. House default.
 */
const STOPPING_MS = 9_500;

/** The first signal asks; both then have their usual effect again, so that a second one ends the program at once. */
async function untilStopped(): Promise<void> {
  const asked = new AbortController();
  const signal = asked.signal;
  await Promise.race([once(process, 'SIGINT', { signal }), once(process, 'SIGTERM', { signal })]);
  asked.abort();
  setTimeout(() => process.exit(1), STOPPING_MS).unref();
}

process.exitCode = await run(process.argv.slice(2), {
  stdout: process.stdout,
  stderr: process.stderr,
  secrets: secretInlet(process.stdin, process.stderr),
  env: process.env,
  cwd: process.cwd(),
  now: () => new Date().toISOString(),
  untilStopped,
});
