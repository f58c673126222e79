/**
 * One server with many gardens: what a nightly re-plan of all of them does to whoever reads a feed meanwhile.
 */
import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { setTimeout as pause } from 'node:timers/promises';
import { createSteward } from '../../src/steward/create-steward.ts';
import { type Crew, inThisThread } from '../../src/steward/crew/crew.ts';
import { inThreads } from '../../src/steward/crew/in-threads.ts';
import { openStore, type Store } from '../../src/store/store.ts';
import type { WebSettings } from '../../src/web/addresses/settings.ts';
import { createApp } from '../../src/web/app.tsx';
import { serveApp } from '../../src/web/server.ts';
import { northernFile } from '../steward/gardens.ts';
import type { Walk, Walked } from './feed-walk.ts';
import type { Load, LoadResult } from './load.ts';
import { NOT_BEGUN, type Told } from './scale-told.ts';

/** Planned in threads, as the server does it; beside that one count is planned by the thread that answers. */
const GARDENS = [1, 10, 100, 1000];
const IN_MAIN = 100;
/** Longest a nightly round is followed. */
const NIGHT_MS = 12_000;
const IDLE_MS = 4_000;
const EVERY_MS = 25;
const PORT = 8141;
const HOST = `127.0.0.1:${PORT}`;

interface Figures {
  gardens: number;
  dbMiB: number;
  rssMiB: number;
  feedsPerSecond: number;
  replansPerSecond: number;
}

/** Tells a row for each count of gardens and way of planning, and how the figures grow. */
export async function reportServers(told: Told): Promise<void> {
  const latency = 'feed latency, ms, half / 99 of 100';
  told.table(
    ...['gardens', 'plans made', 'database, MiB', 'memory, MiB', 'feeds a second', 're-plans a second'],
    ...[`${latency}, by day`, `${latency}, in the nightly round, of ${NIGHT_MS / 1000} s at most`],
  );
  const known: Figures[] = [];
  for (const gardens of GARDENS) {
    if (told.isTimeLeft) known.push(await row(told, { gardens, how: 'in threads' }, inThreads()));
    else told.row(gardens, NOT_BEGUN, ...Array(6).fill(''));
  }
  if (told.isTimeLeft) await row(told, { gardens: IN_MAIN, how: 'by the thread that answers' }, inThisThread());
  const [first, last] = [known[0], known.at(-1)];
  if (first !== undefined && last !== undefined && last !== first) told.say('', growth(first, last));
}

function growth(a: Figures, b: Figures): string {
  const power = (of: keyof Figures) => (Math.log(b[of] / a[of]) / Math.log(b.gardens / a.gardens)).toFixed(1);
  return `From ${a.gardens} to ${b.gardens} gardens the database grows with them to the power of ${power('dbMiB')}, memory ${power('rssMiB')}, feeds a second ${power('feedsPerSecond')}, re-plans a second ${power('replansPerSecond')}.`;
}

async function row(told: Told, { gardens, how }: { gardens: number; how: string }, crew: Crew): Promise<Figures> {
  const folder = mkdtempSync(join(tmpdir(), 'loamtide-scale-'));
  const file = join(folder, 'loamtide.db');
  const clock = { moment: '2027-04-20T13:00:00.000Z', now: () => clock.moment };
  const store = await openStore({ file });
  const paths = await lay(store, clock, gardens);
  const steward = createSteward({ store, clock, crew });
  const settings: WebSettings = { port: PORT, hostNames: [] };
  const server = await serveApp(createApp({ steward, settings }), { hostname: '127.0.0.1', port: PORT });
  const walk = fork(new URL('./feed-walk.ts', import.meta.url));
  const load = fork(new URL('./load.ts', import.meta.url));
  try {
    const from = performance.now();
    await steward.refresh();
    const replansPerSecond = (gardens * 1000) / (performance.now() - from);
    for (const path of paths) await (await fetch(`http://${HOST}${path}`)).arrayBuffer();
    const feedsPerSecond = await rate(load, paths[0] ?? '');
    const idle = await walked(walk, paths, () => pause(IDLE_MS));
    clock.moment = '2027-04-21T13:00:00.000Z';
    const night = await walked(walk, paths, () => steward.refresh(AbortSignal.timeout(NIGHT_MS)));
    const made = await Promise.all((await store.gardenIds()).map((id) => store.planMade(id)));
    const planned = made.filter((plan) => plan?.today === clock.moment.slice(0, 10)).length;
    // What was written last stands in the log beside the file.
    const octets = [file, `${file}-wal`].reduce(
      (sum, each) => sum + (statSync(each, { throwIfNoEntry: false })?.size ?? 0),
      0,
    );
    const dbMiB = octets / 2 ** 20;
    const rssMiB = process.memoryUsage().rss / 2 ** 20;
    const figures = { gardens, dbMiB, rssMiB, feedsPerSecond, replansPerSecond };
    const numbers = [
      dbMiB.toFixed(1),
      rssMiB.toFixed(0),
      feedsPerSecond.toFixed(0),
      figures.replansPerSecond.toFixed(1),
    ];
    told.row(gardens, how, ...numbers, spread(idle), `${spread(night)}; ${planned} planned by its end`);
    return figures;
  } finally {
    walk.kill();
    load.kill();
    server.close();
    await steward.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

/**
 * Gardens as another program left them before midnight, each with a plan and a feed: one is planned, the others are like it. A
 * program just begun plans each of them once.
 */
async function lay(store: Store, clock: { now(): string }, gardens: number): Promise<string[]> {
  const steward = createSteward({ store, clock });
  const paths: string[] = [];
  const { gardenId } = await steward.importGarden({ file: northernFile(), prefer: 'file' }, 'bench');
  const { plan, ledger } = await steward.view(gardenId);
  for (let made = 0; made < gardens; made += 1) {
    const id = made === 0 ? gardenId : `garden-${made}`;
    if (made > 0) {
      await store.createGarden({ id, name: id, createdAt: clock.now() });
      const file = northernFile();
      const fact = {
        kind: 'garden-imported' as const,
        file: { ...file, garden: { ...file.garden, id } },
        prefer: 'file' as const,
      };
      const { recordedAt, recordedOn, by } = ledger[0] ?? { recordedAt: '', recordedOn: '', by: '' };
      const added = await store.append(id, 0, [{ recordedAt, recordedOn, by, fact }]);
      if (added.outcome !== 'added') throw new Error('The garden could not be laid.');
      await store.savePlan(id, { ...plan, gardenId: id, factsVersion: added.version }, added.version);
    }
    paths.push(`/feed/${(await steward.addFeed(id, 'Calendar')).token}.ics`);
  }
  return paths;
}

async function rate(load: ChildProcess, path: string): Promise<number> {
  const asked: Load = { port: PORT, path, headers: { Host: HOST, Accept: 'text/calendar' }, readers: 8, each: 100 };
  load.send(asked);
  const [{ seconds }] = (await once(load, 'message')) as [LoadResult];
  return (asked.readers * asked.each) / seconds;
}

async function walked(
  child: ChildProcess,
  paths: readonly string[],
  meanwhile: () => Promise<unknown>,
): Promise<Walked> {
  const walk: Walk = { port: PORT, host: HOST, paths, everyMs: EVERY_MS };
  child.send(walk);
  await pause(EVERY_MS * 10);
  await meanwhile();
  child.send('end');
  const [result] = (await once(child, 'message')) as [Walked];
  return result;
}

function spread({ latenciesMs, statuses }: Walked): string {
  const at = (share: number) => (latenciesMs[Math.floor((latenciesMs.length - 1) * share)] ?? Number.NaN).toFixed(0);
  return `${at(0.5)} / ${at(0.99)} (${latenciesMs.length} answers, status ${statuses.join()})`;
}
