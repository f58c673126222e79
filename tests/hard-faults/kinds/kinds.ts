/**
 * Every kind of work that is killed.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { bundled } from '../bundle.ts';
import { seeded } from '../seeded.ts';
import { backups, dailies } from './copies.ts';
import { imports } from './imports.ts';
import type { Ground, Kind } from './kind.ts';
import { mail } from './mail.ts';
import { migrations } from './migrations.ts';
import { overHttp } from './over-http.ts';
import { restores } from './restores.ts';

export const KINDS: readonly Kind[] = [overHttp, imports, migrations, mail, backups, dailies, restores];

/** The programs, each in one file of a folder. */
export async function programsIn(folder: string): Promise<Ground['programs']> {
  const entries = ['tests/hard-faults/victim.ts', 'src/cli/main.ts', 'tests/steward/post/posting-program.ts'];
  const [victim, main, posting] = await bundled(entries, folder);
  return { victim: victim ?? '', main: main ?? '', posting: posting ?? '' };
}

/** Longest that clearing away may take on a busy machine. */
const CLEARING_MS = 120_000;

/** So many rounds may be through before the kill for each kill wanted, and so many more: few kills are soon missed by chance. */
const ESCAPES_PER_KILL = 2;
const MORE_ESCAPES = 12;

/** What came of some kills. */
export interface Killed {
  kills: number;
  /** Rounds in which the program was through before it could be killed. */
  escaped: number;
  promised: number;
}

/** Kills one kind of work as often as is wanted. */
export async function killedOften(
  kind: Kind,
  { times, seed, programs }: { times: number; seed: number; programs: Ground['programs'] },
): Promise<Killed> {
  const folder = mkdtempSync(join(tmpdir(), 'loamtide-killed-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }), CLEARING_MS);
  const round = await kind.lay({ folder, chance: seeded(seed), programs });
  const killed: Killed = { kills: 0, escaped: 0, promised: 0 };
  while (killed.kills < times && killed.escaped < ESCAPES_PER_KILL * times + MORE_ESCAPES) {
    const { promised, wasKilled } = await round();
    killed[wasKilled ? 'kills' : 'escaped'] += 1;
    killed.promised += promised;
  }
  return killed;
}
