/**
 * Hundreds of kills. LOAMTIDE_SEED gives those of another run again.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Ground } from '../hard-faults/kinds/kind.ts';
import { KINDS, killedOften, programsIn } from '../hard-faults/kinds/kinds.ts';

const SLOW_MS = 2_400_000;
/** Over three hundred together, most of them of the kinds a day of use has. */
const KILLS: Readonly<Record<string, number>> = {
  'writes over HTTP': 70,
  'imports of garden and weather': 50,
  migrations: 60,
  'mail sending': 50,
  'copies by hand': 25,
  'daily copies': 25,
  'copies put back': 45,
};

const seed = Number(process.env.LOAMTIDE_SEED ?? Date.now() % 1_000_000_000);
const folder = mkdtempSync(join(tmpdir(), 'loamtide-programs-'));
let programs: Ground['programs'];

beforeAll(async () => {
  programs = await programsIn(folder);
  console.log(`The seed is ${seed}.`);
}, SLOW_MS);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

test.each(KINDS)(
  'killed during $name: sound, whole, and all there',
  async (kind) => {
    const times = KILLS[kind.name] ?? 0;
    const killed = await killedOften(kind, { times, seed, programs });
    console.log(`${kind.name}: ${killed.kills} kills, ${killed.escaped} through before, ${killed.promised} promised`);
    expect(killed.kills).toBe(times);
    // Kills that find nothing promised would prove nothing.
    expect(killed.promised).toBeGreaterThan(times / 4);
  },
  SLOW_MS,
);
