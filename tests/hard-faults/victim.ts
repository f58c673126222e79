/**
 * A program to be killed: it does one kind of work over and over, as the program itself does it, and says after each time that it
 * is done. What it has said is promised.
 */
import { join } from 'node:path';
import { createSteward } from '../../src/steward/create-steward.ts';
import { openStore, restoreStore, type Store } from '../../src/store/store.ts';
import { NOON, skipping } from '../store/entries.ts';
import { fileOf, recordOf } from './turns.ts';

const DAY_MS = 86_400_000;

const [kind = '', folder = '', begin = '0'] = process.argv.slice(2);
const file = join(folder, 'loamtide.db');

const say = (word: string | number): void => {
  process.stdout.write(`${word}\n`);
};

/** Does it for ever, from a number on. */
async function turns(work: (turn: number) => Promise<unknown>): Promise<never> {
  say('ready');
  for (let turn = Number(begin); ; turn += 1) {
    await work(turn);
    say(turn);
  }
}

async function withStore(work: (store: Store) => Promise<never>): Promise<never> {
  return work(await openStore({ file, now: NOON }));
}

const kinds: Readonly<Record<string, () => Promise<unknown>>> = {
  imports: () =>
    withStore(async (store) => {
      const steward = createSteward({ store, clock: { now: () => NOON, today: NOON.slice(0, 10) } });
      return turns((turn) =>
        steward.importGarden({ file: fileOf(turn), prefer: 'reported', record: recordOf(turn) }, 'ada'),
      );
    }),
  async migration() {
    say('ready');
    await (await openStore({ file, now: NOON })).close();
    say('done');
  },
  copies: () =>
    withStore(async (store) =>
      turns(async (turn) => {
        await store.append('plot', await store.factsVersion('plot'), [skipping(`task-${turn}`)]);
        await store.backup(join(folder, `copy-${turn}.db`));
      }),
    ),
  daily: () =>
    withStore(async (store) =>
      turns(async (turn) => {
        await store.append('plot', await store.factsVersion('plot'), [skipping(`task-${turn}`)]);
        await store.renewCopies(new Date(Date.parse(NOON) + turn * DAY_MS).toISOString(), 3);
      }),
    ),
  restores: () =>
    turns((turn) => {
      const now = new Date(Date.parse(NOON) + turn * 1000).toISOString();
      return restoreStore({ file, copy: join(folder, `${['first', 'second', 'third'][turn % 3]}.copy`), now });
    }),
};

await kinds[kind]?.();
