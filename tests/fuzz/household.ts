/**
 * A household of two gardens that can be laid anew as often as a change was made in it: the database is copied from one
 * that was laid once. What the database holds is compared by digests of its rows.
 */
import { createHash } from 'node:crypto';
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import SqliteFile from 'better-sqlite3';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import { readWeatherFile } from '../../src/garden/weather-file.ts';
import { createLog, type Log } from '../../src/log/log.ts';
import { listLinks } from '../../src/steward/answers/links.ts';
import { signerFor } from '../../src/steward/answers/signer.ts';
import { createSteward } from '../../src/steward/create-steward.ts';
import type { Steward } from '../../src/steward/doings/steward.ts';
import { recordOf } from '../../src/steward/files/record-join.ts';
import { openStore, type Store } from '../../src/store/store.ts';
import type { WebSettings } from '../../src/web/addresses/settings.ts';
import { createApp, pagesOf } from '../../src/web/app.tsx';
import { inventedRecord } from '../cli/invented-record.ts';
import { toldDraft } from '../steward/told-draft.ts';
import { HOST, NOW, TODAY } from '../web/sample-garden.ts';
import { HITHER, hitherFile, NAME_MARK, YONDER, yonderFile } from './two-gardens.ts';

/** Links in mail are made for a public address; everything is asked for on this computer. */
const PUBLIC_URL = new URL('https://garden.example.org');
const SETTINGS: WebSettings = { port: 8137, hostNames: [], publicUrl: PUBLIC_URL };

/** What the two gardens have that no file names: their feeds, keys and links. */
export interface Handles {
  feeds: readonly { id: string; token: string }[];
  /** A key for readings: its id, and the key itself. */
  key: { id: string; key: string };
  /** Paths of links in mail. */
  answer: string;
  stop: string;
}

/** An answer as it came, after the work that led to it. */
export interface Answered {
  status: number;
  body: string;
  isPage: boolean;
  location: string | undefined;
}

/** A household that is open. */
export interface Household {
  steward: Steward;
  /** What the program told its own window of. */
  reported: string[];
  /** Asks for a path, waiting for work that takes a while; says "from one of the pages" unless other headers do. */
  ask(path: string, init?: RequestInit): Promise<Answered>;
  /** Sends a form. */
  send(path: string, fields: readonly (readonly [string, string])[]): Promise<Answered>;
  /** Whether anything was written since this was last asked. */
  wasWritten(): boolean;
  /** Of all that was told; of one garden's rows alone where it is named. What is worked out from it does not count. */
  digest(gardenId?: string): string;
  close(): Promise<void>;
}

/** A household laid once. */
export interface Laid {
  routes: readonly string[];
  handles: Record<'hither' | 'yonder', Handles>;
  draft: string;
  open(): Promise<Household>;
  close(): void;
}

/** Tables of what is worked out from the others, or of who looked when. */
const WORKED_OUT: ReadonlySet<string> = new Set(['plans', 'feed_texts', 'sessions', 'migrations']);
/** Columns that say when something was last read. */
const LAST_READ: ReadonlySet<string> = new Set(['fetched_at', 'fetched_by']);

/** Lays both gardens. */
async function laidHousehold(): Promise<Laid> {
  const folder = mkdtempSync(join(tmpdir(), 'loamtide-fuzz-'));
  const laid = join(folder, 'laid.db');
  const store = await openStore({ file: laid, now: NOW });
  const steward = createSteward({ store, clock: { now: () => NOW, today: TODAY } });
  await steward.importGarden({ file: checkGardenFile(hitherFile()), prefer: 'reported' }, 'test');
  await steward.importGarden({ file: checkGardenFile(yonderFile()), prefer: 'reported' }, 'test');
  const handles = {
    hither: await livedIn({ store, steward }, HITHER, ''),
    yonder: await livedIn({ store, steward }, YONDER, `${NAME_MARK} `),
  };
  const { id: draft } = await steward.beginDraft();
  await steward.changeDraft(draft, () => toldDraft());
  const routes = pagesOf({ steward, settings: SETTINGS, log: faultsTo(() => undefined) })
    .routes.map(({ method, path }) => `${method} ${path}`)
    .filter((route) => !route.startsWith('ALL '));
  await steward.close();
  let count = 0;
  return {
    routes: [...new Set(routes)],
    handles,
    draft,
    open: () => {
      count += 1;
      const file = join(folder, `${count}.db`);
      copyFileSync(laid, file);
      return opened(file);
    },
    close: () => rmSync(folder, { recursive: true, force: true }),
  };
}

let shared: Promise<Laid> | undefined;

/** One household for all tests of a process: it is copied, never changed. */
export function sharedHousehold(): Promise<Laid> {
  shared ??= laidHousehold().then((laid) => {
    process.once('exit', () => laid.close());
    return laid;
  });
  return shared;
}

/** What happens in a garden in some weeks: each table with a row of it gets one. */
async function livedIn(
  { store, steward }: { store: Store; steward: Steward },
  gardenId: string,
  mark: string,
): Promise<Handles> {
  for (const to of ['2025-12-31', '2026-12-31']) {
    const { rows } = readWeatherFile(inventedRecord('2014-01-01', to));
    await steward.importWeather(gardenId, recordOf(`${mark}weather.csv`, rows));
  }
  const { plan, garden } = await steward.view(gardenId);
  const due = plan.tasks.find(({ state, day }) => state === 'open' && day <= plan.today);
  if (due !== undefined) await steward.markDone(gardenId, [due.key], plan.today, `${mark}test`);
  const seen = { day: plan.today, kind: 'observed' as const, tminC: 4, tmaxC: 19, rainMm: 3 };
  await steward.report(gardenId, { kind: 'weather-logged', days: [seen] }, `${mark}test`);
  const feeds = [];
  // One more of each in the second garden: ids are counted, and that one's are of no other garden.
  const labels = ['Kitchen wall', 'Old phone', 'Tablet', ...(mark === '' ? [] : ['Shed'])];
  for (const label of labels) feeds.push(await steward.addFeed(gardenId, mark + label));
  await steward.revokeFeed(gardenId, feeds[1]?.id ?? '');
  if (mark !== '') await steward.addReadingKey(gardenId, `${mark}old probe`);
  const { kept, key } = await steward.addReadingKey(gardenId, `${mark}pile probe`);
  const signer = await signerFor({ store, clock: { now: () => NOW } }, gardenId);
  const memberId = garden.household?.members?.[0]?.id ?? '';
  const task = (await steward.view(gardenId)).plan.tasks.find(({ state, day }) => state === 'open' && day >= TODAY);
  const links = listLinks({ publicUrl: PUBLIC_URL, signer, gardenId, memberId, monday: '2027-04-19' });
  if (links === undefined || task === undefined) throw new Error('No link in mail can be made.');
  const pathOf = (url: string) => url.slice(PUBLIC_URL.origin.length);
  return {
    feeds: feeds.map(({ id, token }) => ({ id, token })),
    key: { id: kept.id, key },
    answer: pathOf(links.answer(task.key, 'done')),
    stop: pathOf(links.stop),
  };
}

async function opened(file: string): Promise<Household> {
  const store = await openStore({ file, now: NOW });
  const steward = createSteward({ store, clock: { now: () => NOW, today: TODAY } });
  const reported: string[] = [];
  const log = faultsTo((line) => reported.push(line));
  const app = createApp({ steward, settings: SETTINGS, log });
  const reader = new SqliteFile(file, { readonly: true });
  const version = () => reader.pragma('data_version', { simple: true });
  let known = version();
  const once = async (path: string, init: RequestInit = {}) => {
    const headers = new Headers(init.headers);
    if (!headers.has('Host')) headers.set('Host', HOST);
    if (!headers.has('Sec-Fetch-Site')) headers.set('Sec-Fetch-Site', 'same-origin');
    return app.fetch(new Request(`http://${HOST}${path}`, { ...init, headers }));
  };
  const ask: Household['ask'] = async (path, init) => {
    let answer = await once(path, init);
    for (let leads = led(answer); leads !== undefined; leads = led(answer, leads)) answer = await once(leads);
    const isPage = (answer.headers.get('content-type') ?? '').startsWith('text/html');
    const location = answer.headers.get('location') ?? undefined;
    return { status: answer.status, body: await answer.text(), isPage, location };
  };
  return {
    steward,
    reported,
    ask,
    send: (path, fields) => ask(path, { method: 'POST', body: formBody(fields) }),
    wasWritten() {
      const before = known;
      known = version();
      return known !== before;
    },
    digest: (gardenId) => digestOf(reader, gardenId),
    async close() {
      reader.close();
      await steward.close();
      for (const end of ['', '-wal', '-shm']) rmSync(file + end, { force: true });
    },
  };
}

/** Fields as a browser sends them, in order. */
export function formBody(fields: readonly (readonly [string, string])[]): URLSearchParams {
  return new URLSearchParams(fields.map(([name, value]): [string, string] => [name, value]));
}

/** A log of faults alone. */
export function faultsTo(write: (line: string) => unknown): Log {
  return createLog({ shape: 'plain', level: 'error', now: () => NOW, write });
}

/** Where work under way is followed: the page it leads to, or the same one again while it goes on. */
function led(answer: Response, at?: string): string | undefined {
  const leads = answer.headers.get('location');
  if (leads?.startsWith('/under-way/')) return leads;
  return answer.headers.has('refresh') ? at : undefined;
}

function digestOf(reader: SqliteFile.Database, gardenId: string | undefined): string {
  const tables = reader.prepare("select name from sqlite_master where type = 'table' order by name").pluck().all();
  const hash = createHash('sha256');
  for (const table of tables as string[]) {
    if (WORKED_OUT.has(table)) continue;
    const columns = reader.prepare(`select name from pragma_table_info('${table}')`).pluck().all() as string[];
    const kept = columns.filter((column) => !LAST_READ.has(column));
    const owner = table === 'gardens' ? 'id' : 'garden_id';
    if (gardenId !== undefined && !columns.includes(owner)) continue;
    const rows = reader.prepare(
      `select ${kept.join(', ')} from "${table}" ${gardenId === undefined ? '' : `where ${owner} = ?`} order by 1, 2, 3`,
    );
    hash.update(table).update(JSON.stringify(gardenId === undefined ? rows.all() : rows.all(gardenId)));
  }
  return hash.digest('hex');
}
