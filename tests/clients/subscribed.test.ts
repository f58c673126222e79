/**
 * Programs that people subscribe with, reading the running server over HTTP: every entry on its day, moved ones moved, and
 * what was skipped gone. None of them knows of this project.
 */
import { beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { feedUid } from '../../src/calendar/uid.ts';
import { addDays } from '../../src/measures/days.ts';
import { entryText } from '../../src/schedule/entry-text.ts';
import type { Entry, Plan } from '../../src/schedule/plan.ts';
import { createSteward } from '../../src/steward/create-steward.ts';
import { layDemo } from '../../src/steward/gardens/demo.ts';
import { openStore } from '../../src/store/store.ts';
import { createApp } from '../../src/web/app.tsx';
import { serveApp } from '../../src/web/server.ts';
import { readWith, type Seen, vdirsyncerAndKhal } from './subscribers.ts';
import { missingTools, missingWords } from './tools.ts';

const TODAY = '2027-09-08';
/** A day on which the demo garden's soil is being worked, and snow is late. */
const LATE_SNOW = '2027-04-20';
/** A plain feed shows the coming twelve months (docs/feeds.md). */
const DAYS_SHOWN = 366;

beforeAll(() => {
  const missing = missingTools();
  if (missing.length > 0) throw new Error(missingWords(missing));
});

/** The demo garden behind the real server, with a feed. */
async function served(today = TODAY) {
  const clock = { moment: `${today}T12:00:00.000Z`, now: () => clock.moment, today };
  const store = await openStore({ file: ':memory:' });
  const steward = createSteward({ store, clock });
  const gardenId = await layDemo({ steward, clock });
  const { token } = await steward.addFeed(gardenId, 'Test');
  const port = await freePort();
  const server = await serveApp(createApp({ steward, settings: { port, hostNames: [] } }), listeningOn(port));
  onTestFinished(async () => {
    server.close();
    await steward.close();
  });
  const { garden, plan } = await steward.view(gardenId);
  const { timeZone } = garden.place;
  return { steward, gardenId, clock, plan, timeZone, address: `http://127.0.0.1:${port}/feed/${token}.ics` };
}

const listeningOn = (port: number) => ({ hostname: '127.0.0.1', port });

async function freePort(): Promise<number> {
  const probe = await serveApp({ fetch: () => new Response() }, listeningOn(0));
  const bound = probe.address();
  await new Promise((resolve) => probe.close(resolve));
  if (typeof bound !== 'object' || bound === null) throw new Error('The port is not known.');
  return bound.port;
}

function shown(plan: Plan): Entry[] {
  return plan.entries.filter(({ state, day }) => state === 'open' && day <= addDays(plan.today, DAYS_SHOWN));
}

function title(plan: Plan, entry: Entry): string {
  return entryText(plan, entry, 'us').title;
}

function meant(plan: Plan): Seen[] {
  return shown(plan)
    .map((entry) => ({
      uid: feedUid(plan.gardenId, entry.lotId),
      start: entry.at?.from ?? entry.day,
      title: title(plan, entry),
      sequence: entry.sequence,
    }))
    .sort(byUid);
}

const byUid = (a: Seen, b: Seen) => (a.uid < b.uid ? -1 : 1);

function meantLines(plan: Plan): string[] {
  return shown(plan)
    .map((entry) => `${entry.day} ${title(plan, entry)}`)
    .sort();
}

/** Pins one job to another day and skips another, as somebody would on its page. */
async function moved({ steward, gardenId, clock, plan }: Awaited<ReturnType<typeof served>>) {
  const single = shown(plan).filter(
    ({ keys, at, day }) => keys.length === 1 && at === undefined && day > addDays(TODAY, 3),
  );
  const [pinned, skipped] = single;
  if (pinned === undefined || skipped === undefined) throw new Error('The demo garden has too little to do.');
  clock.moment = `${TODAY}T13:00:00.000Z`;
  await steward.pin(gardenId, pinned.keys[0] ?? '', addDays(pinned.day, 2), 'test');
  await steward.skip(gardenId, skipped.keys, 'test');
  return { pinned, skipped, after: (await steward.view(gardenId)).plan };
}

describe.each([
  ['python3-icalendar', 'read_with_icalendar.py'],
  ['libical', 'read_with_libical.py'],
])('%s', (_, program) => {
  it('reads every entry on its day, and after a change each under its old name on its new day', async () => {
    const house = await served();
    expect(meant(house.plan).length).toBeGreaterThan(30);
    expect((await readWith(program, house.address)).sort(byUid)).toEqual(meant(house.plan));
    const { pinned, skipped, after } = await moved(house);
    const seen = await readWith(program, house.address);
    expect(seen.sort(byUid)).toEqual(meant(after));
    const [uid, gone] = [pinned, skipped].map(({ lotId }) => feedUid(after.gardenId, lotId));
    expect(seen.filter((one) => one.uid === uid)).toMatchObject([
      { start: addDays(pinned.day, 2), sequence: pinned.sequence + 1 },
    ]);
    expect(seen.map((one) => one.uid)).not.toContain(gone);
  });
});

/** Snow lies on soil that was open, as somebody reports it. */
async function snowedOn({ steward, gardenId, clock, plan }: Awaited<ReturnType<typeof served>>) {
  clock.moment = `${LATE_SNOW}T13:00:00.000Z`;
  const day = { kind: 'observed', day: LATE_SNOW, snowDepthMm: 200, newSnowMm: 200, tminC: -6, tmaxC: 0 } as const;
  await steward.report(gardenId, { kind: 'weather-logged', days: [day] }, 'test');
  const after = (await steward.view(gardenId)).plan;
  const [was, now] = [meant(plan), meant(after)];
  const moves = now.filter(({ uid, start }) => was.some((old) => old.uid === uid && old.start !== start));
  const gone = was.filter(({ uid }) => !now.some((one) => one.uid === uid));
  return { after, was, now, moves, gone };
}

describe('after a late snow', () => {
  it.each(['read_with_icalendar.py', 'read_with_libical.py'])(
    '%s sees what moved on its new day, once, under a risen SEQUENCE, and nothing that left',
    async (program) => {
      const house = await served(LATE_SNOW);
      const { was, now, moves, gone } = await snowedOn(house);
      expect(moves.length).toBeGreaterThan(0);
      const seen = (await readWith(program, house.address)).sort(byUid);
      expect(seen).toEqual(now);
      for (const { uid, sequence } of moves) {
        expect(sequence).toBeGreaterThan(was.find((old) => old.uid === uid)?.sequence ?? Number.NaN);
        expect(seen.filter((one) => one.uid === uid)).toHaveLength(1);
      }
      for (const { uid } of gone) expect(seen.map((one) => one.uid)).not.toContain(uid);
    },
  );

  it('vdirsyncer and khal show the new days and none of the old ones', async () => {
    const house = await served(LATE_SNOW);
    const client = vdirsyncerAndKhal(house.address, house.timeZone);
    await client.sync();
    const before = await client.list(LATE_SNOW, DAYS_SHOWN + 1);
    expect(before.sort()).toEqual(meantLines(house.plan));
    const { after, moves } = await snowedOn(house);
    await client.sync();
    const listed = (await client.list(LATE_SNOW, DAYS_SHOWN + 1)).sort();
    expect(listed).toEqual(meantLines(after));
    expect(moves.length).toBeGreaterThan(0);
    expect(listed).not.toEqual(before);
  });
});

describe('vdirsyncer and khal', () => {
  it('list every entry on its day, and after a change neither double nor lose one', async () => {
    const house = await served();
    const client = vdirsyncerAndKhal(house.address, house.timeZone);
    await client.sync();
    expect((await client.list(TODAY, 367)).sort()).toEqual(meantLines(house.plan));
    const { pinned, skipped, after } = await moved(house);
    await client.sync();
    const listed = await client.list(TODAY, 367);
    expect(listed.sort()).toEqual(meantLines(after));
    const pinnedTitle = title(house.plan, pinned);
    expect(listed.filter((line) => line === `${addDays(pinned.day, 2)} ${pinnedTitle}`)).toHaveLength(1);
    expect(listed).not.toContain(`${pinned.day} ${pinnedTitle}`);
    expect(listed).not.toContain(`${skipped.day} ${title(house.plan, skipped)}`);
  });

  it('keep a second feed, of to-dos or of one entry a day, without an error', async () => {
    const house = await served();
    const shape = {
      practices: [],
      beds: [],
      alarm: { when: 'evening', hour: 19 },
      daysAhead: 60,
      daysBack: 7,
    } as const;
    for (const more of [{ by: 'day', todos: false } as const, { by: 'job', todos: true } as const]) {
      const { token } = await house.steward.addFeed(house.gardenId, 'More', { ...shape, ...more, done: true });
      const client = vdirsyncerAndKhal(new URL(`/feed/${token}.ics`, house.address).href, house.timeZone);
      await client.sync();
      // khal lists no to-dos; that it reads them without a complaint is all that can be seen.
      expect((await client.list(TODAY, 90)).length > 0).toBe(!more.todos);
    }
  });
});
