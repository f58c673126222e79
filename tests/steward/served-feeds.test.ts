import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { createSteward } from '../../src/steward/create-steward.ts';
import { inThisThread } from '../../src/steward/crew/crew.ts';
import { ServedFeeds } from '../../src/steward/feeds/served-feeds.ts';
import { Planner } from '../../src/steward/planning/planner.ts';
import { openStore, type Store } from '../../src/store/store.ts';
import { seenByIcalJs } from '../calendar/read-feed.ts';
import { tempFolder } from '../store/temp-folder.ts';
import { heldCrew } from './crew/held-crew.ts';
import { northernFile } from './gardens.ts';
import { clockAt, type Household, household, later, MORNING, openTask, type StandingClock } from './household.ts';

/** A household with a feed. */
async function withFeed(path?: string) {
  const house = await household(northernFile(), MORNING, path);
  return { ...house, feed: await house.steward.addFeed(house.garden, 'Phone') };
}

/** A steward over a store of which one shelf can be made to fail, with what it told of. */
function failingSteward(store: Store, clock: StandingClock, shelf: 'ledger' | 'findFeedAddress') {
  const state = { fails: false, told: [] as unknown[] };
  const failing: Store = {
    ...store,
    [shelf]: async (name: string) => {
      if (state.fails) throw new Error('The disk is gone.');
      return store[shelf](name);
    },
  };
  const steward = createSteward({ store: failing, clock, report: (fault) => state.told.push(fault) });
  return { steward, state };
}

async function pinned({ steward, garden }: Household, day: string) {
  const { key } = openTask((await steward.view(garden)).plan, 'clear-bed');
  return steward.pin(garden, key, day, 'ada');
}

describe('a closed address', () => {
  it('serves one notice for 30 days, the same octets each day, and is then as good as unknown', async () => {
    const { steward, garden, feed, clock } = await withFeed();
    await steward.revokeFeed(garden, feed.id);
    const first = await steward.feedBody(feed.token);
    expect(seenByIcalJs(first?.body ?? '')).toMatchObject([
      { day: '2027-04-19', lastDay: '2027-05-20', title: 'This calendar is no longer kept' },
    ]);
    clock.moment = '2027-05-20T12:59:59.999Z';
    expect(await steward.feedBody(feed.token)).toEqual(first);
    clock.moment = '2027-05-20T13:00:00.000Z';
    expect(await steward.feedBody(feed.token)).toBeUndefined();
  });

  it('of a feed that got a new one says so, and does not tell the new one', async () => {
    const { steward, garden, feed } = await withFeed();
    const before = await steward.feedBody(feed.token);
    const anew = await steward.rotateFeed(garden, feed.id);
    if (anew === undefined) throw new Error('The feed is gone.');
    expect(anew.token).not.toBe(feed.token);
    expect(await steward.feedBody(anew.token)).toEqual(before);
    const notice = (await steward.feedBody(feed.token))?.body ?? '';
    expect(seenByIcalJs(notice)[0]?.description).toContain('It has a new address now');
    expect(notice).not.toContain(anew.token);
  });

  it('of a feed revoked later says that there is none', async () => {
    const { steward, garden, feed } = await withFeed();
    await steward.rotateFeed(garden, feed.id);
    await steward.revokeFeed(garden, feed.id);
    const [seen] = seenByIcalJs((await steward.feedBody(feed.token))?.body ?? '');
    expect(seen?.description).toContain('It was revoked');
    expect(await steward.rotateFeed(garden, feed.id)).toBeUndefined();
  });
});

describe('a feed that cannot be made', () => {
  it('is served as it last was, the fault told once a minute, and is itself again afterwards', async () => {
    const { store, clock, feed } = await withFeed();
    const { steward, state } = failingSteward(store, clock, 'ledger');
    const good = await steward.feedBody(feed.token);
    state.fails = true;
    clock.moment = '2027-05-20T13:00:00.000Z';
    for (let asked = 0; asked < 3; asked += 1) expect(await steward.feedBody(feed.token)).toEqual(good);
    expect(state.told.map(String)).toEqual(['Error: The disk is gone.']);
    later(clock);
    expect(await steward.feedBody(feed.token)).toEqual(good);
    expect(state.told).toHaveLength(2);
    state.fails = false;
    later(clock);
    expect((await steward.feedBody(feed.token))?.changedAt).not.toBe(good?.changedAt);
  });

  it('is served as it last was while its plan is being made, and as it is once that is kept', async () => {
    const { store, clock, feed, garden } = await withFeed();
    const { crew, state, hold } = heldCrew();
    const steward = createSteward({ store, clock, crew });
    const good = await steward.feedBody(feed.token);
    hold();
    clock.moment = '2027-05-20T13:00:00.000Z';
    const { works } = state;
    expect(await steward.feedBody(feed.token)).toEqual(good);
    expect(state.works).toBe(works + 1);
    state.letGo();
    expect((await steward.view(garden)).plan.today).toBe('2027-05-20');
    expect((await steward.feedBody(feed.token))?.changedAt).not.toBe(good?.changedAt);
  });

  it('fails in silence where the program ends before its plan is made', async () => {
    const file = join(tempFolder(), 'loamtide.db');
    const { steward: before, feed } = await withFeed(file);
    await before.feedBody(feed.token);
    await before.close();
    const told: unknown[] = [];
    const { crew, state, hold } = heldCrew();
    const store = await openStore({ file });
    const clock = clockAt('2027-04-21T13:00:00.000Z');
    const steward = createSteward({ store, clock, crew, report: (fault) => told.push(fault) });
    hold();
    expect(await steward.feedBody(feed.token)).toBeDefined();
    await steward.close();
    state.letGo();
    await state.done();
    expect(told).toEqual([]);
  });

  it('is served for every garden while a program just begun plans none of them yet', async () => {
    const file = join(tempFolder(), 'loamtide.db');
    const { steward: before, garden, feed } = await withFeed(file);
    const feeds = [feed];
    for (const id of ['ridge', 'hollow', 'quay']) {
      await before.importGarden(
        { file: { ...northernFile(), garden: { ...northernFile().garden, id } }, prefer: 'file' },
        'ada',
      );
      feeds.push(await before.addFeed(id, 'Phone'));
    }
    const good = await Promise.all(feeds.map(({ token }) => before.feedBody(token)));
    await before.close();
    const { crew, state, hold } = heldCrew();
    const steward = createSteward({
      store: await openStore({ file }),
      clock: clockAt('2027-04-21T13:00:00.000Z'),
      crew,
    });
    onTestFinished(() => steward.close());
    hold();
    const round = steward.refresh();
    expect(await Promise.all(feeds.map(({ token }) => steward.feedBody(token)))).toEqual(good);
    state.letGo();
    await round;
    const store = await openStore({ file });
    const days = await Promise.all(
      [garden, 'ridge', 'hollow', 'quay'].map(async (id) => (await store.planMade(id))?.today),
    );
    await store.close();
    expect(days).toEqual(Array(4).fill('2027-04-21'));
  });

  it('is served from memory while even its address cannot be looked up', async () => {
    const { store, clock, feed } = await withFeed();
    const { steward, state } = failingSteward(store, clock, 'findFeedAddress');
    const good = await steward.feedBody(feed.token);
    state.fails = true;
    clock.moment = '2027-04-21T13:00:00.000Z';
    expect(await steward.feedBody(feed.token)).toEqual(good);
    await expect(steward.feedBody('never-seen')).rejects.toThrow('The disk is gone.');
  });

  it('is served as it last was after the program was started again', async () => {
    const file = join(tempFolder(), 'loamtide.db');
    const { steward, feed } = await withFeed(file);
    const good = await steward.feedBody(feed.token);
    await steward.close();
    const store = await openStore({ file });
    const { steward: restarted, state } = failingSteward(store, clockAt('2027-05-20T13:00:00.000Z'), 'ledger');
    onTestFinished(() => restarted.close());
    state.fails = true;
    expect(await restarted.feedBody(feed.token)).toEqual(good);
    expect(state.told).toHaveLength(1);
  });
});

describe('an answer kept in memory', () => {
  it('is dropped with any change of the garden', async () => {
    const house = await withFeed();
    const first = await house.steward.feedBody(house.feed.token);
    later(house.clock);
    await pinned(house, '2027-04-30');
    expect((await house.steward.feedBody(house.feed.token))?.etag).not.toBe(first?.etag);
  });

  it('is dropped at the garden’s own midnight', async () => {
    const { steward, feed, clock } = await withFeed();
    const at = async (moment: string) => {
      clock.moment = moment;
      return (await steward.feedBody(feed.token))?.etag;
    };
    const turned: boolean[] = [];
    for (const day of ['2027-04-22', '2027-04-23', '2027-04-24', '2027-04-25', '2027-04-26', '2027-04-27']) {
      const evening = await at(`${day}T04:59:59.999Z`);
      const morning = await at(`${day}T05:00:00.000Z`);
      expect(await at(`${day}T23:00:00.000Z`)).toBe(morning);
      turned.push(evening !== morning);
    }
    expect(turned).toContain(true);
  });

  it('is dropped within a second of another program’s change', async () => {
    const file = join(tempFolder(), 'loamtide.db');
    const { steward, garden, feed, clock } = await withFeed(file);
    const first = await steward.feedBody(feed.token);
    later(clock);
    const other = createSteward({ store: await openStore({ file }), clock });
    await other.pin(garden, openTask((await other.view(garden)).plan, 'clear-bed').key, '2027-04-30', 'shed');
    const theirs = await other.feedBody(feed.token);
    await other.close();
    await new Promise((resolve) => setTimeout(resolve, 1_010));
    expect(theirs?.etag).not.toBe(first?.etag);
    expect(await steward.feedBody(feed.token)).toEqual(theirs);
  });

  it('gives way to others, is read from disk while it holds, and made anew when a day or a change is past', async () => {
    const { store, steward, clock, garden, feed } = await withFeed();
    const other = await steward.addFeed(garden, 'Tablet');
    const planner = new Planner(store, clock, inThisThread());
    let made = 0;
    const counting = { standing: (id: string) => planner.standing(id).finally(() => (made += 1)) } as Planner;
    const served = new ServedFeeds({ store, clock, planner: counting, report: console.error }, 1);
    const first = await served.answer(feed.token);
    await served.answer(other.token);
    expect(made).toBe(2);
    // Put by and not yet written, on its way to the disk, and on the disk.
    expect(await served.answer(feed.token)).toEqual(first);
    expect(await served.answer(other.token)).toBeDefined();
    const written = served.written();
    expect(await served.answer(feed.token)).toEqual(first);
    await written;
    expect(await served.answer(other.token)).toBeDefined();
    expect(await served.answer(feed.token)).toEqual(first);
    expect(made).toBe(2);
    clock.moment = '2027-04-21T13:00:00.000Z';
    await served.answer(feed.token);
    expect(made).toBe(3);
    await served.answer(other.token);
    await served.written();
    await pinned({ store, steward, clock, garden }, '2027-04-30');
    expect((await served.answer(feed.token))?.etag).not.toBe(first?.etag);
    expect(made).toBe(5);
  });

  it('is worked out once for all who ask at once', async () => {
    const { store, clock, feed } = await withFeed();
    let reads = 0;
    const ledger = (id: string) => {
      reads += 1;
      return store.ledger(id);
    };
    const steward = createSteward({ store: { ...store, ledger }, clock });
    const answers = await Promise.all(Array.from({ length: 20 }, () => steward.feedBody(feed.token)));
    expect(new Set(answers.map((answer) => answer?.etag)).size).toBe(1);
    expect(reads).toBe(1);
  });
});

describe('the last reading of a feed', () => {
  it('is kept with its moment and the kind of program, the latest of each feed', async () => {
    const { steward, store, garden, feed, clock } = await withFeed();
    await steward.feedBody(feed.token, 'Evolution');
    later(clock);
    await steward.feedBody(feed.token, 'Thunderbird');
    expect((await store.feeds(garden))[0]).not.toHaveProperty('lastFetch');
    expect((await steward.feeds(garden))[0]?.lastFetch).toEqual({ at: clock.moment, by: 'Thunderbird' });
  });

  it('is the later one, whether it came to the new address of a feed or to its old one', async () => {
    const { steward, garden, feed, clock } = await withFeed();
    const anew = await steward.rotateFeed(garden, feed.id);
    await steward.feedBody(feed.token, 'Evolution');
    later(clock);
    await steward.feedBody(anew?.token ?? '', 'Thunderbird');
    later(clock);
    await steward.feedBody(feed.token, 'Evolution');
    expect((await steward.feeds(garden))[0]?.lastFetch).toEqual({ at: clock.moment, by: 'Evolution' });
  });

  it('is not kept when the program itself looks', async () => {
    const { steward, garden, feed } = await withFeed();
    await steward.feedBody(feed.token);
    expect((await steward.feeds(garden))[0]).not.toHaveProperty('lastFetch');
  });

  it('changes nothing of the feed', async () => {
    const { steward, garden, feed } = await withFeed();
    const first = await steward.feedBody(feed.token, 'Evolution');
    await steward.feeds(garden);
    expect(await steward.feedBody(feed.token)).toEqual(first);
  });
});
