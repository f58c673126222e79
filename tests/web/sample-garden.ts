import type { Hono } from 'hono';
import { onTestFinished } from 'vitest';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import { createLog } from '../../src/log/log.ts';
import { createSteward } from '../../src/steward/create-steward.ts';
import type { Steward } from '../../src/steward/doings/steward.ts';
import { openStore } from '../../src/store/store.ts';
import type { WebSettings } from '../../src/web/addresses/settings.ts';
import { createApp } from '../../src/web/app.tsx';
import { CHEAP } from '../steward/sign-in/cheap-cost.ts';

/** The day it is in these tests: a Tuesday with covers growing, piles working and beds waiting. */
export const TODAY = '2027-04-20';
export const NOW = '2027-04-20T12:00:00.000Z';
export const GARDEN = '/gardens/mill-row';
export const HOST = '127.0.0.1:8137';

/** A small invented garden with work in the week of {@link TODAY}. */
export function sampleFile(change: Record<string, unknown> = {}) {
  return {
    garden: {
      id: 'mill-row',
      name: 'Mill Row',
      latitude: 43.1,
      longitude: -89.4,
      timeZone: 'America/Chicago',
      units: 'us',
      workDays: ['tue', 'sat', 'sun'],
      hoursPerWeek: 5,
    },
    climate: { frostDates: { lastSpring: '05-06', firstAutumn: '10-04' } },
    beds: ['North', 'Middle', 'South', 'Wall'].map((name) => ({
      id: name.toLowerCase(),
      name: `${name} bed`,
      lengthM: 3,
      widthM: 1.2,
    })),
    plantings: [
      { bed: 'north', crop: 'snap-bean', sow: '2027-06-01' },
      { bed: 'middle', crop: 'tomato', setOut: '2027-05-28' },
      { bed: 'south', crop: 'carrot', sow: '2027-06-15', lastHarvest: '2027-09-20' },
      { bed: 'wall', crop: 'spinach', sow: '2026-09-01', lastHarvest: '2027-04-24' },
    ],
    coverStands: [
      { id: 'rye-north', bed: 'north', cover: 'cereal_rye', sow: '2026-09-20' },
      { id: 'vetch-middle', bed: 'middle', mix: 'rye-vetch', sow: '2026-09-10' },
      { id: 'oats-south', bed: 'south', cover: 'oats', sow: '2027-04-25' },
    ],
    bins: [
      { id: 'left', name: 'Left bay', volumeL: 760 },
      { id: 'right', name: 'Right bay', volumeL: 760 },
    ],
    piles: [
      {
        id: 'spring-pile',
        bin: 'left',
        built: '2027-04-06',
        method: 'hot',
        ingredients: [
          { material: 'leaves_dry_loose', litres: 400 },
          { material: 'grass_clippings_fresh_loose', litres: 200 },
        ],
        readings: [{ on: '2027-04-12', tempC: 58 }],
        turns: ['2027-04-13'],
      },
    ],
    topdressing: { depthMm: 13, season: 'spring' },
    ...change,
  };
}

/** A file as a browser sends it. */
export interface SentFile {
  name: string;
  content: string | Uint8Array<ArrayBuffer>;
}

/** The web view over a real steward with a database of its own. */
export interface SampleApp {
  /** Sends a form with a file in its field "file", as a browser would. */
  sendFile(path: string, file: SentFile | undefined, fields?: Record<string, string>): Promise<Response>;
  app: Hono;
  steward: Steward;
  reported: string[];
  /** GETs a page under the garden's own name. */
  get(path: string, headers?: Record<string, string>): Promise<Response>;
  /** Sends a form as a browser would from one of the pages. */
  send(path: string, fields: Record<string, string | string[]>, headers?: Record<string, string>): Promise<Response>;
}

/** Opens the web view with a garden in it, or with none. */
export async function sampleApp(
  file: object | null = sampleFile(),
  settings: WebSettings = { port: 8137, hostNames: [] },
): Promise<SampleApp & { clock: { moment: string; today: string } }> {
  const store = await openStore({ file: ':memory:', now: NOW });
  const clock = { moment: NOW, now: () => clock.moment, today: TODAY };
  const steward = createSteward({ store, clock, passwordCost: CHEAP });
  onTestFinished(() => steward.close());
  if (file !== null) await steward.importGarden({ file: checkGardenFile(file), prefer: 'reported' }, 'test');
  return { ...appOver(steward, settings), clock };
}

/** The web view over a steward. */
export function appOver(steward: Steward, settings: WebSettings = { port: 8137, hostNames: [] }): SampleApp {
  const reported: string[] = [];
  const write = (line: string) => reported.push(line);
  const log = createLog({ shape: 'plain', level: 'error', now: () => NOW, write });
  const app = createApp({ steward, settings, log });
  return {
    app,
    steward,
    reported,
    get: async (path, headers = {}) => followed(app, await app.request(path, { headers: { Host: HOST, ...headers } })),
    sendFile: async (path, file, fields = {}) => {
      const body = new FormData();
      for (const [name, value] of Object.entries(fields)) body.set(name, value);
      body.set('file', new File(file === undefined ? [] : [file.content], file?.name ?? ''));
      const headers = { Host: HOST, 'Sec-Fetch-Site': 'same-origin' };
      return ended(app, await app.request(path, { method: 'POST', headers, body }));
    },
    send: async (path, fields, headers = { 'Sec-Fetch-Site': 'same-origin' }) => {
      const body = formOf(fields);
      return ended(app, await app.request(path, { method: 'POST', headers: { Host: HOST, ...headers }, body }));
    },
  };
}

/** Waits, as a browser does, for work that takes a while. */
async function ended(app: Hono, answer: Response): Promise<Response> {
  const leads = answer.status === 303 ? answer.headers.get('location') : undefined;
  if (leads?.startsWith('/under-way/') !== true) return answer;
  for (;;) {
    const next = await app.request(leads, { headers: { Host: HOST } });
    if (next.headers.get('refresh') === null) return next;
  }
}

/** The same, and then follows to the page it leads to. */
async function followed(app: Hono, answer: Response): Promise<Response> {
  const end = await ended(app, answer);
  if (end === answer) return answer;
  const leads = end.headers.get('location');
  return leads === null ? end : followed(app, await app.request(leads, { headers: { Host: HOST } }));
}

function formOf(fields: Record<string, string | string[]>): URLSearchParams {
  const pairs = Object.entries(fields).flatMap(([name, value]) =>
    [value].flat().map((one): [string, string] => [name, one]),
  );
  return new URLSearchParams(pairs);
}
