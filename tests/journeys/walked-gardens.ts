/**
 * Two gardens to walk every page of: the demo garden with some news in it, and one with a bed and nothing else.
 */
import type { Hono } from 'hono';
import { gardenFileText } from '../../src/garden/export-garden-file.ts';
import type { GardenFile } from '../../src/garden/garden-file.ts';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import { EMPTY_DRAFT, SET_UP_STEPS, type SetUpDraft } from '../../src/garden/set-up-draft.ts';
import { createLog } from '../../src/log/log.ts';
import type { Instant } from '../../src/measures/days.ts';
import { listLinks } from '../../src/steward/answers/links.ts';
import { signerFor } from '../../src/steward/answers/signer.ts';
import { createSteward } from '../../src/steward/create-steward.ts';
import type { GardenView, Steward } from '../../src/steward/doings/steward.ts';
import { layDemo } from '../../src/steward/gardens/demo.ts';
import type { Feed } from '../../src/store/feeds.ts';
import { openStore, type Store } from '../../src/store/store.ts';
import type { WebSettings } from '../../src/web/addresses/settings.ts';
import { createApp, pagesOf } from '../../src/web/app.tsx';
import { toldDraft } from '../steward/told-draft.ts';

/** The day the gardens are walked on: covers stand and flower, piles work, crops wait to go in. */
export const WALKED_ON = '2027-05-05';

const NOW: Instant = `${WALKED_ON}T12:00:00.000Z`;

/** Links in mail are made for a public address; the pages themselves are asked for on this computer. */
const PUBLIC_URL = new URL('https://garden.example.org');

/** A garden with what the addresses of its pages are made from. */
export interface WalkedGarden {
  id: string;
  view: GardenView;
  feed?: Feed;
  /** Pages that show a file which was handed over. */
  files: readonly string[];
  /** Paths of links in mail. */
  answer?: string;
  stop?: string;
}

export type WalkedApp = Awaited<ReturnType<typeof walkedApp>>;

/** The app over both gardens, for a server on a port. */
export async function walkedApp(port = 8137) {
  const store = await openStore({ file: ':memory:', now: NOW });
  const clock = { now: () => NOW, today: WALKED_ON };
  const steward = createSteward({ store, clock });
  const settings: WebSettings = { port, hostNames: [], publicUrl: PUBLIC_URL };
  const demo = await newsIn(steward, await layDemo({ steward, clock }));
  const bare = 'lone-bed';
  await steward.importGarden({ file: checkGardenFile(bareFile(bare)), prefer: 'reported' }, 'test');
  const [feed] = await steward.feeds(demo);
  const drafts = { told: await draftIn(steward, TOLD), bare: await draftIn(steward, EMPTY_DRAFT) };
  const silent = createLog({ shape: 'plain', level: 'error', now: () => NOW, write: () => undefined });
  const parts = { steward, settings, log: silent };
  const fetch = madeOnce(createApp(parts));
  const links = await linksOf(steward, store, demo);
  const files = {
    changed: await handedOver(fetch, {
      port,
      at: `/gardens/${demo}/garden-file`,
      file: await changedFile(steward, demo),
    }),
    new: await handedOver(fetch, { port, at: '/bring-in', file: checkGardenFile(bareFile('other-bed')) }),
  };
  const gardens: Record<'demo' | 'bare', WalkedGarden> = {
    demo: { id: demo, view: await steward.view(demo), files: [files.changed], ...(feed && { feed }), ...links },
    bare: { id: bare, view: await steward.view(bare), files: [files.new] },
  };
  const routes = new Set(pagesOf(parts).routes.map(({ method, path }) => `${method} ${path}`));
  const ways = [...routes].filter((route) => !route.startsWith('ALL '));
  const get = async (path: string) =>
    fetch(new Request(`http://127.0.0.1:${port}${path}`, { headers: { Host: `127.0.0.1:${port}` } }));
  return { fetch, get, steward, gardens, drafts, routes: ways, close: () => steward.close() };
}

/** A file of a garden in which something was changed, added and left out. */
async function changedFile(steward: Steward, gardenId: string): Promise<GardenFile> {
  const file = await steward.fileNow(gardenId);
  const [first, ...others] = file.beds;
  if (first === undefined) throw new Error('The demo garden has no bed.');
  return {
    ...file,
    beds: [{ ...first, lengthM: first.lengthM + 1 }, ...others],
    gear: [],
    coverStands: file.coverStands.slice(1),
  };
}

/** Hands a garden file over, and returns the path of the page that shows it. */
async function handedOver(
  fetch: (request: Request) => Promise<Response>,
  { port, at, file }: { port: number; at: string; file: GardenFile },
): Promise<string> {
  const host = `127.0.0.1:${port}`;
  const body = new URLSearchParams({ text: gardenFileText(file) });
  const headers = { Host: host, 'Sec-Fetch-Site': 'same-origin' };
  let answer = await fetch(new Request(`http://${host}${at}`, { method: 'POST', headers, body }));
  for (let leads = answer.headers.get('location'); ; leads = answer.headers.get('location') ?? leads) {
    if (leads?.startsWith('/under-way/') !== true) return leads ?? at;
    answer = await fetch(new Request(`http://${host}${leads}`, { headers: { Host: host } }));
  }
}

/** Answers of an app, each page made once however often it is asked for. */
function madeOnce(app: Hono) {
  const made = new Map<string, Response>();
  return async (request: Request): Promise<Response> => {
    if (request.method !== 'GET') return app.fetch(request);
    const answer = made.get(request.url) ?? (await app.fetch(request));
    const stays = answer.status < 300 && !answer.headers.has('refresh');
    if (stays) made.set(request.url, answer);
    return stays ? answer.clone() : answer;
  };
}

/** An app over no garden at all. */
export async function emptyApp(port = 8137) {
  const store = await openStore({ file: ':memory:', now: NOW });
  const steward = createSteward({ store, clock: { now: () => NOW, today: WALKED_ON } });
  return { app: createApp({ steward, settings: { port, hostNames: [] } }), close: () => steward.close() };
}

/** A set-up told to its end, but for what may be passed over. */
const TOLD = toldDraft({
  beds: [1, 2].map((at) => ({
    id: `bed-${at}`,
    name: `Bed ${at}`,
    lengthM: 2.4,
    widthM: 1.2,
    depthM: 0.3,
    raised: true,
    watered: false,
  })),
  bins: [{ id: 'bin-1', name: 'Bin 1', volumeL: 760 }],
  past: [{ bed: 'bed-1', crop: 'tomato', season: 2026 }],
  plantings: [{ bed: 'bed-2', crop: 'garlic', sow: '2026-10-15' }],
  passed: [...SET_UP_STEPS],
});

async function draftIn(steward: Steward, draft: SetUpDraft): Promise<string> {
  const { id } = await steward.beginDraft();
  await steward.changeDraft(id, () => draft);
  return id;
}

function bareFile(id: string) {
  return {
    garden: { id, name: 'Lone Bed', latitude: 43.2, longitude: -88.1, timeZone: 'America/Chicago', units: 'metric' },
    climate: { frostDates: { lastSpring: '05-06', firstAutumn: '10-04' } },
    beds: [{ id: 'only', name: 'Only bed', lengthM: 2.4, widthM: 1.2 }],
  };
}

/** Somebody who gets mail, work done, weather told, a feed closed and a key given, so that the pages about them have something to show. */
async function newsIn(steward: Steward, gardenId: string): Promise<string> {
  const { garden, plan } = await steward.view(gardenId);
  const [member] = garden.household?.members ?? [];
  if (member === undefined) throw new Error('Nobody lives in the demo garden.');
  const mail = { to: 'ottilie@example.org', weekday: 1, hour: 7, tasks: 'own' } as const;
  await steward.report(gardenId, { kind: 'member-kept', member: { ...member, mail } }, 'test');
  const done = plan.tasks.find(({ state, day }) => state === 'open' && day <= plan.today);
  if (done !== undefined) await steward.markDone(gardenId, [done.key], plan.today, 'test');
  const seen = { day: plan.today, kind: 'observed' as const, tminC: 4, tmaxC: 19, rainMm: 3 };
  await steward.report(gardenId, { kind: 'weather-logged', days: [seen] }, 'test');
  const { id } = await steward.addFeed(gardenId, 'Kitchen wall');
  await steward.revokeFeed(gardenId, id);
  await steward.addReadingKey(gardenId, 'pile probe');
  return gardenId;
}

async function linksOf(steward: Steward, store: Store, gardenId: string) {
  const { plan, garden } = await steward.view(gardenId);
  const signer = await signerFor({ store, clock: { now: () => NOW } }, gardenId);
  const memberId = garden.household?.members?.[0]?.id ?? '';
  const task = plan.tasks.find(({ state, day }) => state === 'open' && day >= plan.today);
  const links = listLinks({ publicUrl: PUBLIC_URL, signer, gardenId, memberId, monday: '2027-05-03' });
  if (links === undefined || task === undefined) throw new Error('No link in mail can be made.');
  const pathOf = (url: string) => url.slice(PUBLIC_URL.origin.length);
  return { answer: pathOf(links.answer(task.key, 'done')), stop: pathOf(links.stop) };
}
