import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { SMTPServerOptions } from 'smtp-server';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { openStore } from '../../../src/store/store.ts';
import { bundled } from '../../hard-faults/bundle.ts';
import { tempFolder } from '../../store/temp-folder.ts';
import { mailCatcher } from './mail-catcher.ts';
import { FIRST_SUNDAY, minutesAfter, postingHousehold } from './posting.ts';

/** Longest a program may take where many tests share the machine. */
const SLOW_MS = 60_000;

const folder = mkdtempSync(join(tmpdir(), 'loamtide-posting-'));
let program = '';
beforeAll(async () => {
  [program = ''] = await bundled(['tests/steward/post/posting-program.ts'], folder);
}, SLOW_MS);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A program that sends what is due: real, in a process of its own. */
function started(file: string, port: number, moment: string) {
  const running = spawn(process.execPath, [program, file, String(port), moment], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  onTestFinished(() => void running.kill('SIGKILL'));
  const said: string[] = [];
  running.stdout.on('data', (chunk) => said.push(String(chunk)));
  return {
    ready: once(running.stdout, 'data'),
    go: () => running.stdin.end(),
    kill: () => running.kill('SIGKILL'),
    ended: once(running, 'exit').then(() => said.join('').trim().split('\n').slice(1)),
  };
}

/** Lets a program send at a moment, and says how each list ended. */
async function sent(file: string, port: number, moment: string): Promise<string[]> {
  const running = started(file, port, moment);
  running.go();
  return running.ended;
}

/** A data folder with a garden whose reader's list comes due on Sunday, and a mail server. */
async function garden(wishes: SMTPServerOptions = {}) {
  const file = join(tempFolder(), 'loamtide.db');
  const catcher = await mailCatcher(wishes);
  const { steward } = await postingHousehold({ file, port: catcher.port });
  await steward.close();
  return { file, catcher };
}

async function standing(file: string) {
  const store = await openStore({ file });
  const [row] = await store.deliveries('hollow-lane');
  await store.close();
  return row;
}

test(
  'killed while the server is spoken to, before the message: the next run sends it, once the claim has run out',
  async () => {
    let kill = (): unknown => undefined;
    const { file, catcher } = await garden({
      // The first program dies as the server is asked for its reader, and gets no answer.
      onRcptTo: (_address, _session, callback) => (kill() === undefined ? callback() : undefined),
    });
    const first = started(file, catcher.port, FIRST_SUNDAY);
    kill = () => {
      kill = () => undefined;
      return first.kill();
    };
    first.go();
    expect(await first.ended).toEqual([]);
    expect(await standing(file)).toMatchObject({ state: 'claimed', tries: 1 });
    expect(await sent(file, catcher.port, minutesAfter(FIRST_SUNDAY, 1))).toEqual([]);
    expect(await sent(file, catcher.port, minutesAfter(FIRST_SUNDAY, 6))).toEqual(['sent']);
    expect(catcher.caught).toHaveLength(1);
  },
  SLOW_MS,
);

test(
  'killed after the server has the message and before its yes is in the log: nobody gets it twice, and it is shown',
  async () => {
    let arrived = 0;
    let first: ReturnType<typeof started> | undefined;
    const { file, catcher } = await garden({
      onData: (stream, _session, callback) => {
        stream.resume();
        stream.on('end', () => {
          // The server has all of it and will keep it: the program dies before it hears so.
          arrived += 1;
          first?.kill();
          void first?.ended.then(() => callback());
        });
      },
    });
    first = started(file, catcher.port, FIRST_SUNDAY);
    first.go();
    expect(await first.ended).toEqual([]);
    expect(await standing(file)).toMatchObject({ state: 'handing over' });
    for (const minutes of [1, 16]) {
      expect(await sent(file, catcher.port, minutesAfter(FIRST_SUNDAY, minutes))).toEqual([]);
    }
    expect(arrived).toBe(1);
    expect(await standing(file)).toMatchObject({ state: 'unknown', problem: expect.stringContaining('send it again') });
  },
  SLOW_MS,
);

test(
  'killed after its yes is in the log: the next run sends nothing',
  async () => {
    const { file, catcher } = await garden();
    expect(await sent(file, catcher.port, FIRST_SUNDAY)).toEqual(['sent']);
    expect(await sent(file, catcher.port, minutesAfter(FIRST_SUNDAY, 1))).toEqual([]);
    expect(catcher.caught).toHaveLength(1);
  },
  SLOW_MS,
);

test(
  'two programs on one data folder at the same moment send one list between them',
  async () => {
    const { file, catcher } = await garden();
    const both = [started(file, catcher.port, FIRST_SUNDAY), started(file, catcher.port, FIRST_SUNDAY)];
    await Promise.all(both.map(({ ready }) => ready));
    for (const { go } of both) go();
    expect((await Promise.all(both.map(({ ended }) => ended))).flat()).toEqual(['sent']);
    expect(catcher.caught).toHaveLength(1);
  },
  SLOW_MS,
);
