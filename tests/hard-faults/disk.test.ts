import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import SqliteFile from 'better-sqlite3';
import { describe, expect, onTestFinished, test } from 'vitest';
import { createSteward } from '../../src/steward/create-steward.ts';
import { openStore } from '../../src/store/store.ts';
import { createApp } from '../../src/web/app.tsx';
import { loamtideIn, SMALL_GARDEN, tempFolder, withGarden } from '../cli/loamtide.ts';
import { northernFile } from '../steward/gardens.ts';
import { clockAt, MORNING } from '../steward/household.ts';
import { smallDisk, whyNoDisk } from './small-disk.ts';

const DAY_MS = 86_400_000;
const noDisk = whyNoDisk();
if (noDisk !== undefined) console.warn(`Full and read-only disks are not tried: ${noDisk}.`);

/** A garden on a disk, its pages, and a feed. */
async function servedOn(folder: string) {
  const clock = clockAt(MORNING);
  const store = await openStore({ file: join(folder, 'loamtide.db'), now: MORNING, serves: true });
  const steward = createSteward({ store, clock, report: () => undefined });
  onTestFinished(() => steward.close().catch(() => undefined));
  await steward.importGarden({ file: northernFile(), prefer: 'reported' }, 'ada');
  const feed = await steward.addFeed('hollow-lane', 'Phone');
  const app = createApp({ steward, settings: { port: 8137, hostNames: ['127.0.0.1'] } });
  const own = { Host: '127.0.0.1:8137', Origin: 'http://127.0.0.1:8137', 'Sec-Fetch-Site': 'same-origin' };
  const ask = (path: string, body?: URLSearchParams) =>
    app.request(`http://127.0.0.1:8137${path}`, {
      headers: own,
      ...(body === undefined ? {} : { method: 'POST', body }),
    });
  const addFeed = async (label: string) => ask('/gardens/hollow-lane/feeds', new URLSearchParams({ label }));
  return { clock, store, steward, ask, addFeed, feedPath: `/feed/${feed.token}.ics` };
}

describe.skipIf(noDisk !== undefined)('a full disk', () => {
  test('refuses changes with 503 and the mend, keeps feeds served past midnight, and takes changes once there is room', async () => {
    const disk = smallDisk();
    const { clock, store, ask, addFeed, feedPath } = await servedOn(disk.folder);
    const before = await (await ask(feedPath)).text();
    const kept = await store.feeds('hollow-lane');
    disk.fill();
    let refused = await addFeed('Tablet');
    for (let tried = 0; refused.status === 303 && tried < 200; tried += 1) refused = await addFeed(`Tablet ${tried}`);
    expect(refused.status).toBe(503);
    const page = await refused.text();
    expect(page).toContain('The disk is full.');
    expect(page).toContain('Make room on the disk');
    const promised = await store.feeds('hollow-lane');
    clock.moment = new Date(Date.parse(MORNING) + DAY_MS).toISOString();
    const next = await ask(feedPath);
    expect(next.status).toBe(200);
    expect((await next.text()).slice(0, 200)).toBe(before.slice(0, 200));
    expect(await store.checkUp(MORNING)).toContainEqual(
      expect.objectContaining({ what: expect.stringMatching(/has \d+ MB left/) }),
    );
    await expect(store.renewCopies(MORNING, 3)).rejects.toThrow(/disk is full/);
    disk.empty();
    expect((await addFeed('Late')).status).toBe(303);
    const labels = (await store.feeds('hollow-lane')).map(({ label }) => label);
    expect(labels).toEqual([...promised.map(({ label }) => label), 'Late']);
    expect(promised.length).toBeGreaterThanOrEqual(kept.length);
    expect(await (await openStoreCopy(store, disk.folder)).checkUp(MORNING)).not.toContainEqual(
      expect.objectContaining({ what: expect.stringContaining('damaged') }),
    );
  });
});

/** The database of a folder opened anew, as after a start. */
async function openStoreCopy(store: { close(): Promise<void> }, folder: string) {
  await store.close();
  const again = await openStore({ file: join(folder, 'loamtide.db') });
  onTestFinished(() => again.close());
  return again;
}

describe.skipIf(noDisk !== undefined)('a disk that cannot be written', () => {
  test('is told with exit code 1 on the command line, and nothing is changed', async () => {
    const disk = smallDisk();
    writeFileSync(join(disk.folder, 'garden.yaml'), SMALL_GARDEN);
    const loamtide = loamtideIn(disk.folder);
    expect((await loamtide('garden', 'import', 'garden.yaml')).code).toBe(0);
    const database = join(disk.folder, 'data', 'loamtide.db');
    const before = readFileSync(database);
    expect(disk.readOnly(true)).toBe(true);
    const { code, err } = await loamtide('feed', 'add');
    expect({ code, err }).toMatchObject({ code: 1, err: expect.stringContaining(database) });
    expect(err).toMatch(/cannot be opened|may not be written|cannot be written/);
    expect(err).toMatch(/Give the user Loamtide runs as leave|Make the disk writable/);
    expect((await loamtide('backup', 'copy.db')).code).not.toBe(0);
    disk.readOnly(false);
    expect(readFileSync(database).equals(before)).toBe(true);
    expect((await loamtide('feed', 'add')).code).toBe(0);
  });
});

describe('a database another program holds', () => {
  test('refuses changes with 503 after a second, says when to try again, serves the feed, and takes changes once it is let go', async () => {
    const folder = tempFolder();
    const { addFeed, ask, feedPath } = await servedOn(folder);
    expect((await ask(feedPath)).status).toBe(200);
    const other = new SqliteFile(join(folder, 'loamtide.db'));
    onTestFinished(() => void other.close());
    other.exec('begin exclusive');
    const refused = await addFeed('Tablet');
    expect([refused.status, refused.headers.get('Retry-After')]).toEqual([503, '10']);
    expect(await refused.text()).toContain('Another program held the database');
    expect((await ask(feedPath)).status).toBe(200);
    other.exec('rollback');
    expect((await addFeed('Tablet')).status).toBe(303);
  });
});

describe('a garden whose facts cannot be read', () => {
  test('is told where the command ran, with exit code 1', async () => {
    const { folder, loamtide } = await withGarden();
    const sqlite = new SqliteFile(join(folder, 'data', 'loamtide.db'));
    sqlite.exec(`update ledger set fact = '{"kind":'`);
    sqlite.close();
    const { code, err } = await loamtide('week');
    expect(code).toBe(1);
    expect(err).toContain('ledger of hollow-lane, entry 1');
    expect(err).toContain('Put back a copy made before');
  });
});
