#!/usr/bin/env node
/**
 * The program itself: the world as it is, handed to one run.
 */
import { once } from 'node:events';
import { run } from './run.ts';

// Whoever reads our output may stop early ("loamtide plan | head"): that is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
});

process.exitCode = await run(process.argv.slice(2), {
  stdout: process.stdout,
  stderr: process.stderr,
  env: process.env,
  cwd: process.cwd(),
  now: () => new Date().toISOString(),
  untilStopped: async () => {
    await Promise.race([once(process, 'SIGINT'), once(process, 'SIGTERM')]);
  },
});
