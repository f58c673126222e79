import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, onTestFinished, test } from 'vitest';
import { openStore } from '../../src/store/store.ts';
import { tempFolder } from './temp-folder.ts';

const program = fileURLToPath(new URL('eager-program.ts', import.meta.url));

/** Starts the program; it is ready once it has opened the database. */
function start(file: string, name: string) {
  const running = spawn(process.execPath, ['--import', 'tsx', program, file, name], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  return { ready: once(running.stdout, 'data'), ended: once(running, 'exit'), go: () => running.stdin.end() };
}

test('two programs on one new database each add a hundred entries, and none is lost or numbered twice', async () => {
  const file = join(tempFolder(), 'loamtide.db');
  const programs = [start(file, 'kitchen'), start(file, 'shed')];
  await Promise.all(programs.map(({ ready }) => ready));
  for (const { go } of programs) go();
  const exits = await Promise.all(programs.map(({ ended }) => ended));
  expect(exits).toEqual([
    [0, null],
    [0, null],
  ]);

  const store = await openStore({ file });
  onTestFinished(() => store.close());
  const entries = await store.ledger('plot');
  const keys = entries.flatMap(({ fact }) => (fact.kind === 'tasks-skipped' ? fact.tasks.map(({ key }) => key) : []));
  expect(entries.map(({ entry }) => entry)).toEqual(Array.from({ length: 200 }, (_, i) => i + 1));
  expect(new Set(keys).size).toBe(200);
  expect(await store.factsVersion('plot')).toBe(200);
});
