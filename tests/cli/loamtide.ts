import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { onTestFinished } from 'vitest';
import { secretInlet } from '../../src/cli/command-line/secret-inlet.ts';
import type { Surroundings } from '../../src/cli/command-line/surroundings.ts';
import { run } from '../../src/cli/run.ts';

/** What a run of the program came to. */
export interface Outcome {
  code: number;
  out: string;
  err: string;
}

/** A folder that is gone when the test has ended. */
export function tempFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'loamtide-cli-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Ten in the morning in Wisconsin on the day the tests stand on. */
export const NOW = '2027-04-18T15:00:00.000Z';

/** The program in a folder: each call is one run in this process, with its own folder, environment and clock. */
export function loamtideIn(cwd: string, other: Partial<Surroundings> = {}) {
  return async (...argv: string[]): Promise<Outcome> => {
    const written = { out: '', err: '' };
    const code = await run(argv, {
      stdout: { write: (text) => (written.out += text) },
      stderr: { write: (text) => (written.err += text) },
      secrets: secretInlet(Readable.from([]), { write: () => undefined }),
      env: {},
      cwd,
      now: () => NOW,
      untilStopped: () => Promise.resolve(),
      ...other,
    });
    return { code, ...written };
  };
}

/** A small garden in the units of its file, planned by two freeze dates. */
export const SMALL_GARDEN = `garden:
  id: hollow-lane
  name: Hollow Lane
  latitude: 44.5
  longitude: -88.1
  timeZone: America/Chicago
  units: us
  workDays: [wed, sat]
climate:
  frostDates: { lastSpring: "05-10", firstAutumn: "09-28" }
beds:
  - { name: North bed, lengthM: 2.4, widthM: 1.2 }
  - { name: South bed, lengthM: 2.4, widthM: 1.2 }
plantings:
  - { bed: North bed, crop: carrot, sow: "2027-05-20" }
coverStands:
  - { bed: South bed, cover: cereal_rye, sow: "2026-09-20" }
bins:
  - { name: Left bay, volumeL: 760 }
piles:
  - bin: Left bay
    built: "2027-04-04"
    method: hot
    ingredients: [{ material: leaves_dry_loose, litres: 400 }, { material: grass_clippings_fresh_loose, litres: 200 }]
topdressing: { depthMm: 13, season: spring }
`;

/** A folder with the small garden's file in it, and the program there. */
export function withGardenFile(text = SMALL_GARDEN) {
  const folder = tempFolder();
  writeFileSync(join(folder, 'garden.yaml'), text);
  return { folder, loamtide: loamtideIn(folder) };
}

/** The same, with the garden brought in. */
export async function withGarden(text = SMALL_GARDEN) {
  const { folder, loamtide } = withGardenFile(text);
  const { code, err } = await loamtide('garden', 'import', 'garden.yaml');
  if (code !== 0) throw new Error(err);
  return { folder, loamtide };
}
