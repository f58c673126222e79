import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/measures/days.ts';
import { createSteward } from '../../src/steward/create-steward.ts';
import { dayBegins, dayIn } from '../../src/steward/planning/planner.ts';
import { openStore } from '../../src/store/store.ts';
import { NORTH_TODAY, northernFile, SOUTH_TODAY, southernFile } from './gardens.ts';
import { emptyHousehold, household, later } from './household.ts';

describe('the day of a garden', () => {
  it.each([
    ['America/Chicago', '2027-04-20T04:59:59.999Z', '2027-04-19'],
    ['America/Chicago', '2027-04-20T05:00:00.000Z', '2027-04-20'],
    ['Pacific/Auckland', '2027-04-20T11:59:59.999Z', '2027-04-20'],
    ['Pacific/Auckland', '2027-04-20T12:00:00.000Z', '2027-04-21'],
    ['Asia/Kolkata', '2027-12-31T18:30:00.000Z', '2028-01-01'],
    ['America/Chicago', '2028-02-29T06:00:00.000Z', '2028-02-29'],
  ])('in %s at %s is %s', (zone, moment, day) => {
    expect(dayIn(zone, moment)).toBe(day);
  });

  // Clocks go forward on 14 March and back on 7 November 2027 in Chicago (second Sunday, first Sunday: US law since
  // 2007); in Auckland back on 4 April and forward on 26 September (first and last Sunday: NZ order since 2007).
  it.each([
    ['America/Chicago', '2027-03-14', '2027-03-14T06:00:00.000Z', 23],
    ['America/Chicago', '2027-11-07', '2027-11-07T05:00:00.000Z', 25],
    ['Pacific/Auckland', '2027-04-04', '2027-04-03T11:00:00.000Z', 25],
    ['Pacific/Auckland', '2027-09-26', '2027-09-25T12:00:00.000Z', 23],
  ])('in %s on %s begins at %s and lasts %i hours', (zone, day, begins, hours) => {
    expect(dayBegins(zone, day)).toBe(begins);
    const ends = Date.parse(dayBegins(zone, addDays(day, 1)));
    expect((ends - Date.parse(begins)) / 3_600_000).toBe(hours);
    expect([dayIn(zone, begins), dayIn(zone, new Date(ends - 1).toISOString())]).toEqual([day, day]);
  });

  it('begins with the first moment there is where clocks skip midnight', () => {
    // Santiago goes forward at midnight on the first Sunday on or after 2 September: 5 September 2027 (from memory).
    const begins = dayBegins('America/Santiago', '2027-09-05');
    expect(dayIn('America/Santiago', begins)).toBe('2027-09-05');
    expect(dayIn('America/Santiago', new Date(Date.parse(begins) - 1).toISOString())).toBe('2027-09-04');
  });
});

describe('at midnight', () => {
  it.each([
    ['in Chicago', northernFile(), '2027-04-20T13:00:00.000Z', NORTH_TODAY, '2027-04-21T05:00:00.000Z'],
    [
      'in Chicago on the day clocks go back',
      northernFile(),
      '2027-11-07T13:00:00.000Z',
      '2027-11-07',
      '2027-11-08T06:00:00.000Z',
    ],
    ['in Auckland', southernFile(), '2027-10-19T20:00:00.000Z', SOUTH_TODAY, '2027-10-20T11:00:00.000Z'],
    [
      'in Auckland on the day clocks go forward',
      southernFile(),
      '2027-09-25T20:00:00.000Z',
      '2027-09-26',
      '2027-09-26T11:00:00.000Z',
    ],
  ])('%s the plan is made for the next day, and not a moment before', async (_, file, morning, today, midnight) => {
    const { steward, clock, garden } = await household(file, morning);
    expect((await steward.view(garden)).plan.today).toBe(today);
    clock.moment = new Date(Date.parse(midnight) - 1).toISOString();
    expect(await steward.refresh()).toEqual([]);
    expect((await steward.view(garden)).plan.today).toBe(today);
    clock.moment = midnight;
    expect(await steward.refresh()).toEqual([garden]);
    expect((await steward.view(garden)).plan.today).toBe(addDays(today, 1));
    expect(await steward.refresh()).toEqual([]);
  });

  it('only the gardens whose day has turned are planned again', async () => {
    const { steward, clock } = await household(northernFile(), '2027-10-19T20:00:00.000Z');
    await steward.importGarden({ file: southernFile(), prefer: 'reported' }, 'ada');
    clock.moment = '2027-10-20T11:00:00.000Z';
    expect(await steward.refresh()).toEqual(['far-terrace', 'hollow-lane']);
    clock.moment = '2027-10-20T12:00:00.000Z';
    expect(await steward.refresh()).toEqual([]);
    clock.moment = '2027-10-21T05:00:00.000Z';
    expect(await steward.refresh()).toEqual(['hollow-lane']);
  });

  it('a plan is refreshed by whoever looks, too', async () => {
    const { steward, clock, garden } = await household();
    const { token } = await steward.addFeed(garden, 'Phone');
    clock.moment = '2027-04-25T13:00:00.000Z';
    const feed = await steward.feedBody(token);
    expect((await steward.view(garden)).plan.today).toBe('2027-04-25');
    expect(feed?.changedAt).toBe('2027-04-25T13:00:00.000Z');
  });

  it('work that was not done moves, and says so', async () => {
    const { steward, clock, garden } = await household();
    const { plan } = await steward.view(garden);
    const [first] = plan.tasks.filter(({ state }) => state === 'open');
    clock.moment = `${addDays(first?.day ?? '', 1)}T13:00:00.000Z`;
    const next = (await steward.view(garden)).plan;
    const change = next.changes.find(({ key }) => key === first?.key);
    expect(change).toMatchObject({ kind: 'moved', from: first?.day });
    expect(['schedule.not-done', 'schedule.lapsed']).toContain(change?.because[0]?.rule);
  });

  it('a garden that cannot be planned does not keep the others from it', async () => {
    const { steward, store, clock } = await emptyHousehold();
    await store.createGarden({ id: 'a-broken-one', name: 'Broken', createdAt: clock.now() });
    later(clock);
    await steward.importGarden({ file: northernFile(), prefer: 'reported' }, 'ada');
    clock.moment = '2027-04-22T13:00:00.000Z';
    await expect(steward.refresh()).rejects.toThrow('a-broken-one: has no garden file.');
    expect((await store.plan('hollow-lane'))?.today).toBe('2027-04-22');
  });
});

describe('a clock told which day it is', () => {
  it('stays on that day whatever the moment', async () => {
    const store = await openStore({ file: ':memory:', now: '2026-01-01T00:00:00.000Z' });
    const steward = createSteward({ store, clock: { now: () => '2026-01-01T00:00:00.000Z', today: NORTH_TODAY } });
    const plan = await steward.importGarden({ file: northernFile(), prefer: 'reported' }, 'ada');
    expect([plan.today, await steward.today(plan.gardenId)]).toEqual([NORTH_TODAY, NORTH_TODAY]);
    const { token } = await steward.addFeed(plan.gardenId, 'Phone');
    expect((await steward.feedBody(token))?.body).toContain('BEGIN:VEVENT');
    await steward.close();
  });
});

it('a plan that an older program left on disk is made again at the start', async () => {
  const { store, clock, steward, garden } = await household();
  const { plan } = await steward.view(garden);
  await store.savePlan(garden, { ...plan, tasks: [], entries: [] }, plan.factsVersion);
  const restarted = createSteward({ store, clock });
  expect((await restarted.view(garden)).plan.entries.map(({ title }) => title)).toEqual(
    plan.entries.map(({ title }) => title),
  );
});
