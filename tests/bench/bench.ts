/**
 * How fast it is, as ratios measured in one run: `npm run bench`. Nothing here passes or fails.
 *
 * Each pair is run in turn, A B A B …, and the median of the ratios is printed, so that a noisy machine disturbs both
 * sides alike.
 */
import { Agent, request } from 'node:http';
import { performance } from 'node:perf_hooks';
import { serve } from '@hono/node-server';
import { Hono } from 'hono';
import ical from 'ical-generator';
import { addDays } from '../../src/measures/days.ts';
import { draftsOf } from '../../src/practices/catalogue.ts';
import { entryText } from '../../src/schedule/entry-text.ts';
import { makePlan } from '../../src/schedule/reconcile.ts';
import type { GardenView } from '../../src/steward/steward.ts';
import { demoServer } from './demo-server.ts';
import { reportPlanning } from './planning.ts';

const ANCHOR = '2027-05-12';
const ROUNDS = 7;
const REQUESTS = 400;
const AT_ONCE = 8;

const started = performance.now();
const demo = await demoServer(ANCHOR);
await get(demo.feedUrl);
const startUpMs = performance.now() - started;
const view = await demo.steward.view(demo.gardenId);
const constant = await constantServer((await get(demo.feedUrl)).body);

console.log(`Demo garden on ${ANCHOR}: ${view.plan.tasks.length} tasks, ${view.plan.entries.length} entries.`);
report('planning the year against rendering its feed with bare ical-generator', planning, bareRendering);
reportPlanning(view);
await reportServing('serving the feed, whole, against a bare constant route', {});
const { etag = '' } = (await get(demo.feedUrl)).headers;
await reportServing('serving the feed, unchanged (304), against a bare constant route', {
  'if-none-match': String(etag),
});
console.log(
  `From nothing to the first feed served: ${Math.round(startUpMs)} ms in this process (modules loaded before).`,
);
console.log(`Resident memory: ${Math.round(process.memoryUsage().rss / 2 ** 20)} MiB.`);
await demo.close();
constant.close();

function planning(): void {
  const { garden, climate, plan } = view;
  const drafts = draftsOf({ garden, climate, today: plan.today, until: addDays(plan.today, 396) });
  makePlan({ garden, drafts, today: plan.today, now: plan.revisedAt, factsVersion: plan.factsVersion });
}

function bareRendering(): void {
  bareCalendar(view);
}

function bareCalendar({ plan, garden }: GardenView): string {
  const calendar = ical({ name: garden.name });
  for (const entry of plan.entries) {
    const { title, description } = entryText(plan, entry, garden.place.units);
    calendar.createEvent({ id: entry.lotId, start: new Date(entry.day), allDay: true, summary: title, description });
  }
  return calendar.toString();
}

function report(what: string, a: () => void, b: () => void): void {
  a();
  b();
  const ratios: number[] = [];
  const times: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const [timeA, timeB] = [timed(a), timed(b)];
    ratios.push(timeA / timeB);
    times.push(timeA);
  }
  console.log(`${what}: ratio of times ${median(ratios).toFixed(2)} (${median(times).toFixed(1)} ms a plan)`);
}

function timed(work: () => void): number {
  const from = performance.now();
  work();
  return performance.now() - from;
}

async function reportServing(what: string, headers: Record<string, string>): Promise<void> {
  const ratios: number[] = [];
  const rates: number[] = [];
  for (let round = 0; round < ROUNDS + 1; round += 1) {
    const feedRate = await requestRate(demo.feedUrl, headers);
    const constantRate = await requestRate(constant.url, {});
    if (round === 0) continue;
    ratios.push(feedRate / constantRate);
    rates.push(feedRate);
  }
  console.log(`${what}: ratio of rates ${median(ratios).toFixed(2)} (${Math.round(median(rates))} requests a second)`);
}

/** Requests answered a second, {@link AT_ONCE} at once over kept-alive connections. */
async function requestRate(url: string, headers: Record<string, string>): Promise<number> {
  const agent = new Agent({ keepAlive: true, maxSockets: AT_ONCE });
  const from = performance.now();
  const worker = async () => {
    for (let sent = 0; sent < REQUESTS / AT_ONCE; sent += 1) await get(url, headers, agent);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, worker));
  agent.destroy();
  return REQUESTS / ((performance.now() - from) / 1000);
}

interface Answer {
  status: number;
  headers: Record<string, string | string[] | undefined>;
  body: string;
}

function get(url: string, headers: Record<string, string> = {}, agent?: Agent): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const call = request(url, { headers, ...(agent ? { agent } : {}) }, (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(part));
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, body: Buffer.concat(parts).toString() }),
      );
    });
    call.on('error', reject);
    call.end();
  });
}

/** A server with one route that always gives the same text: the least a feed could cost. */
async function constantServer(body: string): Promise<{ url: string; close: () => void }> {
  const app = new Hono().get('/constant', (context) => context.text(body));
  return new Promise((resolve) => {
    const server = serve({ fetch: app.fetch, hostname: '127.0.0.1', port: 0 }, ({ port }) =>
      resolve({ url: `http://127.0.0.1:${port}/constant`, close: () => server.close() }),
    );
  });
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}
