import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { dailyCopies } from '../../../src/store/daily-copies.ts';
import { openStore } from '../../../src/store/store.ts';
import { NOON } from '../../store/entries.ts';
import { someMoment, struck } from '../strike.ts';
import { expectSound, type Ground, type Kind, lastSaid, type Round } from './kind.ts';

/** Longest wait after a turn, ms: about as long as the next one takes. */
const SPAN_MS = 60;

/** Copies made while entries are added: one for each. */
async function layCopies(how: 'copies' | 'daily', { folder, chance, programs }: Ground): Promise<Round> {
  const file = join(folder, 'loamtide.db');
  const store = await openStore({ file, now: NOON });
  await store.createGarden({ id: 'plot', name: 'Hollow Lane', createdAt: NOON });
  await store.close();
  let turn = 0;
  let entries = 0;
  return async () => {
    const argv = [how, folder, String(turn)];
    const { said, wasKilled, complaints } = await struck(
      { program: programs.victim, argv },
      someMoment(chance, SPAN_MS),
    );
    expect(complaints).toBe('');
    const promised = lastSaid(said, turn - 1) - (turn - 1);
    expectSound(file);
    const kept = await entriesIn(file);
    expect(kept).toBeGreaterThanOrEqual(entries + promised);
    expect(kept).toBeLessThanOrEqual(entries + promised + 1);
    const copies = how === 'daily' ? dailyCopies(join(folder, 'copies')).map((copy) => copy.file) : byHand(folder);
    if (how === 'copies') expect(copies.length).toBeGreaterThanOrEqual(promised);
    else if (promised > 0) expect(copies.length).toBeGreaterThanOrEqual(1);
    for (const copy of copies) {
      expectSound(copy);
      expect(await entriesIn(copy)).toBeLessThanOrEqual(kept);
    }
    for (const copy of how === 'copies' ? copies : []) rmSync(copy);
    turn += promised + 1;
    entries = kept;
    return { promised, wasKilled };
  };
}

const byHand = (folder: string): string[] =>
  readdirSync(folder)
    .filter((name) => /^copy-\d+\.db$/.test(name))
    .map((name) => join(folder, name));

async function entriesIn(file: string): Promise<number> {
  const store = await openStore({ file, copies: 'none' });
  try {
    return (await store.ledger('plot')).length;
  } finally {
    await store.close();
  }
}

export const backups: Kind = { name: 'copies by hand', lay: (ground) => layCopies('copies', ground) };
export const dailies: Kind = { name: 'daily copies', lay: (ground) => layCopies('daily', ground) };
