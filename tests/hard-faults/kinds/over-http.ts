import { join } from 'node:path';
import { setTimeout as after } from 'node:timers/promises';
import ICAL from 'ical.js';
import { expect } from 'vitest';
import { createSteward } from '../../../src/steward/create-steward.ts';
import { openStore } from '../../../src/store/store.ts';
import { NORTH_TODAY, northernFile } from '../../steward/gardens.ts';
import { NOON } from '../../store/entries.ts';
import { type Running, started } from '../strike.ts';
import { expectSound, type Kind } from './kind.ts';

/** Most answers a server gives before it is killed, and the longest wait after the last of them, ms. */
const ANSWERS = 12;
const SPAN_MS = 40;
/** Longest a server is let start, where it is killed at that, ms. */
const STARTING_MS = 900;
/** One in so many is killed while it starts. */
const AT_START = 8;
/** Who write at once. */
const WRITERS = 3;

/** What was sent, and what of it the server said it had. */
class Told {
  readonly sent = new Set<string>();
  readonly promised = new Set<string>();
}

/** A real server, written to over HTTP by several at once. */
export const overHttp: Kind = {
  name: 'writes over HTTP',
  async lay({ folder, chance, programs }) {
    const file = join(folder, 'loamtide.db');
    const { key, token } = await laid(file);
    const told = { feeds: new Told(), readings: new Told(), drafts: new Told() };
    let count = 0;
    const write = async (page: string): Promise<void> => {
      count += 1;
      const number = count;
      const own = { Origin: new URL(page).origin, 'Sec-Fetch-Site': 'same-origin' };
      const form = { method: 'POST', redirect: 'manual' as const };
      if (number % 3 === 0) {
        const name = `Phone ${number}`;
        told.feeds.sent.add(name);
        const body = new URLSearchParams({ label: name });
        const { status } = await fetch(`${page}gardens/hollow-lane/feeds`, { ...form, headers: own, body });
        expect(status).toBe(303);
        told.feeds.promised.add(name);
      } else if (number % 3 === 1) {
        const tempC = 20 + number / 100;
        told.readings.sent.add(String(tempC));
        const headers = { Authorization: `Bearer ${key}`, 'Content-Type': 'application/json' };
        const body = JSON.stringify({ tempC });
        const { status } = await fetch(`${page}api/piles/spring-pile/readings`, { ...form, headers, body });
        expect(status).toBe(201);
        told.readings.promised.add(String(tempC));
      } else {
        const answer = await fetch(`${page}set-up`, { ...form, headers: own });
        const id = /set-up\/([^/]+)/.exec(answer.headers.get('location') ?? '')?.[1];
        expect(answer.status).toBe(303);
        told.drafts.promised.add(id ?? '');
      }
    };
    return async () => {
      const before = sizeOf(told);
      const running = started({
        program: programs.main,
        argv: ['serve', '--port', '0', '--today', NORTH_TODAY],
        env: { LOAMTIDE_DATA: folder },
      });
      if (chance() < 1 / AT_START) await after(chance() * STARTING_MS);
      else
        await written(running, { write, token, answers: Math.floor(chance() * ANSWERS), afterMs: chance() * SPAN_MS });
      running.kill();
      const { wasKilled } = await running.ended;
      await expectKept(file, told);
      return { promised: sizeOf(told) - before, wasKilled };
    };
  },
};

type AllTold = Readonly<Record<'feeds' | 'readings' | 'drafts', Told>>;

const sizeOf = (told: AllTold): number => Object.values(told).reduce((sum, { promised }) => sum + promised.size, 0);

async function laid(file: string): Promise<{ key: string; token: string }> {
  const store = await openStore({ file, now: NOON });
  const steward = createSteward({ store, clock: { now: () => NOON, today: NORTH_TODAY } });
  await steward.importGarden({ file: northernFile(), prefer: 'reported' }, 'ada');
  const { token } = await steward.addFeed('hollow-lane', 'First');
  const { key } = await steward.addReadingKey('hollow-lane', 'thermometer');
  await steward.close();
  return { key, token };
}

interface Writing {
  write(page: string): Promise<void>;
  token: string;
  answers: number;
  afterMs: number;
}

/** Reads the feed of a server that has just started again, and lets several write until it is killed. */
async function written(running: Running, { write, token, answers, afterMs }: Writing): Promise<void> {
  const page = /Loamtide is at (\S+)/.exec(await running.saying('Stop it with'))?.[1] ?? '';
  const feed = await fetch(`${page}feed/${token}.ics`);
  expect(feed.status).toBe(200);
  expect(new ICAL.Component(ICAL.parse(await feed.text())).getAllSubcomponents('vevent').length).toBeGreaterThan(0);
  let given = 0;
  let enough = (): void => undefined;
  const answered = new Promise<void>((resolve) => {
    enough = resolve;
  });
  const writer = async (): Promise<void> => {
    for (;;) {
      if (given >= answers) enough();
      try {
        await write(page);
      } catch (error) {
        if (!(error instanceof TypeError)) throw error;
        // The line broke off: whether it was taken in is not known, and nothing was promised.
        return;
      }
      given += 1;
    }
  };
  const writers = Array.from({ length: WRITERS }, writer);
  await answered;
  await after(afterMs);
  running.kill();
  await Promise.all(writers);
}

/** Everything promised is there, once; nothing is there that was not sent; and every fact can be read. */
async function expectKept(file: string, told: AllTold): Promise<void> {
  const store = await openStore({ file, now: NOON });
  const ledger = await store.ledger('hollow-lane');
  const kept = {
    feeds: (await store.feeds('hollow-lane')).slice(1).map(({ label }) => label),
    readings: ledger.flatMap(({ fact }) => (fact.kind === 'pile-read' ? [String(fact.tempC)] : [])),
    drafts: (await store.drafts()).map(({ id }) => id),
  };
  // One entry raises the version by one: none was written without the other.
  expect(await store.factsVersion('hollow-lane')).toBe(ledger.length);
  await store.close();
  for (const name of ['feeds', 'readings', 'drafts'] as const) {
    expect(new Set(kept[name]).size).toBe(kept[name].length);
    expect([...told[name].promised].filter((each) => !kept[name].includes(each))).toEqual([]);
    if (name !== 'drafts') expect(kept[name].filter((each) => !told[name].sent.has(each))).toEqual([]);
  }
  expectSound(file);
}
