/**
 * What answering for a feed costs, against a bare route that always has the same to say.
 */
import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { serve } from '@hono/node-server';
import { Hono } from 'hono';
import type { DemoServer } from './demo-server.ts';
import type { Load, LoadResult } from './load.ts';
import { median } from './median.ts';

const PAIRS = 15;
/** Readers at once, over kept-alive connections. */
const READERS = 8;
const SUBSCRIBERS = 200;

/** What a calendar app sends along. */
const AS_AN_APP = {
  'User-Agent': 'CalendarReader/4.2 (Linux)',
  Accept: 'text/calendar',
  'Accept-Encoding': 'identity',
};

type Asked = Pick<Load, 'port' | 'path' | 'headers'>;

interface Served {
  ratePerSecond: number;
  /** Processor time of this process, which is the server's, an answer. */
  costMicroseconds: number;
}

/** Prints what answering costs. */
export async function reportServing(demo: DemoServer): Promise<void> {
  const load = fork(new URL('./load.ts', import.meta.url));
  const feedUrl = new URL(demo.feedUrl);
  const whole = { port: Number(feedUrl.port), path: feedUrl.pathname, headers: { Host: feedUrl.host, ...AS_AN_APP } };
  const answer = await fetch(feedUrl, { headers: { 'accept-encoding': 'identity' } });
  const body = await answer.text();
  const etag = answer.headers.get('etag') ?? '';
  const constant = await constantServer(body, etag);
  const bare = { ...whole, port: constant.port, path: '/constant' };
  const holding = (asked: Asked): Asked => ({ ...asked, headers: { ...asked.headers, 'If-None-Match': etag } });
  await reportPairs(`the whole feed, ${Math.round(body.length / 1024)} KiB`, load, { feed: whole, bare, each: 100 });
  await reportPairs('the feed unchanged (304)', load, { feed: holding(whole), bare: holding(bare), each: 600 });
  const all = await asking(load, { ...whole, readers: SUBSCRIBERS, each: 5 });
  reportLatencies(`${SUBSCRIBERS} subscribers at once, five looks each`, all);
  await demo.steward.addFeed(demo.gardenId, 'bench');
  reportLatencies(
    'the same, one look each, just after a write',
    await asking(load, { ...whole, readers: SUBSCRIBERS, each: 1 }),
  );
  constant.close();
  load.kill();
}

function reportLatencies(what: string, { latenciesMs, statuses }: LoadResult): void {
  const at = (share: number) => (latenciesMs[Math.floor((latenciesMs.length - 1) * share)] ?? Number.NaN).toFixed(0);
  console.log(`${what}: median ${at(0.5)} ms, 99 of 100 within ${at(0.99)} ms (status ${statuses.join()})`);
}

async function reportPairs(
  what: string,
  load: ChildProcess,
  { feed, bare, each }: { feed: Asked; bare: Asked; each: number },
): Promise<void> {
  const pairs: { feed: Served; bare: Served }[] = [];
  for (let pair = 0; pair <= PAIRS; pair += 1) {
    const measured = { feed: await served(load, feed, each), bare: await served(load, bare, each) };
    if (pair > 0) pairs.push(measured);
  }
  const rates = median(pairs.map((pair) => pair.feed.ratePerSecond / pair.bare.ratePerSecond));
  const costs = median(pairs.map((pair) => pair.bare.costMicroseconds / pair.feed.costMicroseconds));
  const own = median(pairs.map((pair) => pair.feed.ratePerSecond));
  const cost = median(pairs.map((pair) => pair.feed.costMicroseconds));
  console.log(
    `${what}, against a bare constant route: ratio of rates ${rates.toFixed(2)}, of processor time ${costs.toFixed(2)} ` +
      `(${Math.round(own)} a second, ${Math.round(cost)} µs each)`,
  );
}

async function served(load: ChildProcess, asked: Asked, each: number): Promise<Served> {
  const before = process.cpuUsage();
  const { seconds } = await asking(load, { ...asked, readers: READERS, each });
  const { user, system } = process.cpuUsage(before);
  const count = READERS * each;
  return { ratePerSecond: count / seconds, costMicroseconds: (user + system) / count };
}

async function asking(load: ChildProcess, asked: Load): Promise<LoadResult> {
  load.send(asked);
  const [result] = (await once(load, 'message')) as [LoadResult];
  return result;
}

/** A server that does nothing but hold one text and its tag: the least a feed could cost. */
async function constantServer(body: string, etag: string): Promise<{ port: number; close: () => void }> {
  const octets = Buffer.from(body);
  const app = new Hono().get('/constant', (c) =>
    c.req.header('if-none-match') === etag ? c.body(null, 304, { ETag: etag }) : c.body(octets, 200, { ETag: etag }),
  );
  return new Promise((resolve) => {
    const server = serve({ fetch: app.fetch, hostname: '127.0.0.1', port: 0 }, ({ port }) =>
      resolve({ port, close: () => server.close() }),
    );
  });
}
