import { afterAll, beforeAll, expect, test } from 'vitest';
import { isStillToBeMade } from '../../src/garden/planned-beds.ts';
import { createSteward } from '../../src/steward/create-steward.ts';
import { layDemo } from '../../src/steward/gardens/demo.ts';
import type { Clock } from '../../src/steward/planning/planner.ts';
import { openStore } from '../../src/store/store.ts';

const ANCHOR = '2027-04-18';

/** The demo garden laid into an empty household. */
async function laid(clock: Clock) {
  const store = await openStore({ file: ':memory:', now: clock.now() });
  const steward = createSteward({ store, clock });
  const gardenId = await layDemo({ steward, clock });
  return { gardenId, steward, store, view: await steward.view(gardenId) };
}

let demo: Awaited<ReturnType<typeof laid>>;
beforeAll(async () => {
  demo = await laid({ now: () => `${ANCHOR}T15:00:00.000Z`, today: ANCHOR });
});
afterAll(() => demo.steward.close());

test('the demo garden has a plan of the coming year, planned by thirty real seasons', () => {
  const { view } = demo;
  expect(view.garden.beds.filter(({ plannedFor }) => plannedFor === undefined)).toHaveLength(12);
  expect(view.garden.beds.filter(isStillToBeMade).map(({ name }) => name)).toEqual(['Lane bed']);
  expect(view.garden.bins).toHaveLength(3);
  expect(view.climate).toMatchObject({ basis: 'daily-record', confidence: 'recorded' });
  expect(view.climate.seasons).toHaveLength(30);
  expect(view.plan.entries.filter(({ state }) => state === 'open').length).toBeGreaterThan(20);
});

test('this year is a past year of the record, which the odds leave out', async () => {
  const { gardenId, store, view } = demo;
  const log = view.garden.weather;
  const record = await store.weatherRecord(gardenId);
  const [past] = record?.leftOut ?? [];
  expect(view.climate.seasons.map(({ season }) => season)).not.toContain(past);
  expect(log.map(({ kind }) => kind)).not.toContain('expected');
  expect(log.at(-1)?.day).toBe(ANCHOR);
  const { day: _day, ...sameDay } = record?.days.find(({ day }) => day === `${past}-04-18`) ?? { day: '' };
  expect(log.at(-1)).toMatchObject(sameDay);
});

test('it opens without news: its weather is told before its first plan', async () => {
  for (const day of [ANCHOR, '2026-11-25']) {
    const { view, steward } = await laid({ now: () => `${day}T15:00:00.000Z`, today: day });
    await steward.close();
    expect(view.plan.changes).toEqual([]);
    expect(view.ledger.map(({ fact }) => fact.kind)).toEqual(['garden-imported', 'weather-logged']);
  }
});

test('it has one feed, for everything', async () => {
  const { gardenId, steward } = demo;
  const [feed, ...others] = await steward.feeds(gardenId);
  expect([feed?.label, others]).toEqual(['Everything', []]);
  expect((await steward.feedBody(feed?.token ?? ''))?.body).toMatch(/^BEGIN:VCALENDAR/);
});

test('it is laid around the day of its own time zone', async () => {
  const halfPastEleven = await laid({ now: () => '2027-04-19T04:30:00.000Z' });
  const log = halfPastEleven.view.garden.weather;
  await halfPastEleven.steward.close();
  expect(log.at(-1)?.day).toBe(ANCHOR);
});
