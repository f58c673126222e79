/**
 * Programs killed in the middle of every kind of work: nothing promised is lost, nothing is half done. Hundreds of kills are in
 * tests/long/killed.test.ts.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Ground } from './kinds/kind.ts';
import { KINDS, killedOften, programsIn } from './kinds/kinds.ts';

/** Longest a handful of kills may take where many tests share the machine. */
const SLOW_MS = 120_000;
const KILLS = 2;
const SEED = 20270418;

const folder = mkdtempSync(join(tmpdir(), 'loamtide-programs-'));
let programs: Ground['programs'];

beforeAll(async () => {
  programs = await programsIn(folder);
}, SLOW_MS);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

test.each(KINDS)(
  'killed during $name: sound, whole, and all there',
  async (kind) => {
    const { kills } = await killedOften(kind, { times: KILLS, seed: SEED, programs });
    expect(kills).toBe(KILLS);
  },
  SLOW_MS,
);
