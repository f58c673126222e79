import { describe, expect, it, onTestFinished } from 'vitest';
import { EMPTY_DRAFT, type SetUpDraft } from '../../src/garden/set-up-draft.ts';
import { createSteward } from '../../src/steward/create-steward.ts';
import type { Steward } from '../../src/steward/doings/steward.ts';
import { isDemo } from '../../src/steward/gardens/gardens-away.ts';
import { openStore, type Store } from '../../src/store/store.ts';
import { seenByIcalJs } from '../calendar/read-feed.ts';
import { emptyHousehold } from './household.ts';
import { toldDraft } from './told-draft.ts';

const NOW = '2027-04-20T12:00:00.000Z';

/** A household in which nothing is yet. */
async function emptyHouse(clock = { moment: NOW }): Promise<Steward> {
  const store = await openStore({ file: ':memory:', now: NOW });
  const steward = createSteward({ store, clock: { now: () => clock.moment, today: '2027-04-20' } });
  onTestFinished(() => steward.close());
  return steward;
}

async function drafted(steward: Steward, draft: SetUpDraft): Promise<string> {
  const { id } = await steward.beginDraft();
  await steward.changeDraft(id, () => draft);
  return id;
}

describe('a draft', () => {
  it('says what is missing, and plans nothing before', async () => {
    const steward = await emptyHouse();
    const outlook = await steward.draftOutlook(EMPTY_DRAFT);
    expect(outlook).toEqual({ today: '2027-04-20', missing: ['where', 'climate', 'garden', 'beds'], problems: [] });
  });

  it('has a climate as soon as place and choice are told', async () => {
    const steward = await emptyHouse();
    const { place, climate } = toldDraft();
    const outlook = await steward.draftOutlook({
      ...EMPTY_DRAFT,
      ...(place && { place }),
      ...(climate && { climate }),
    });
    expect([outlook.climate?.basis, outlook.missing]).toEqual(['weighted-stations', ['garden', 'beds']]);
  });

  it('plans on trial and keeps nothing', async () => {
    const steward = await emptyHouse();
    const growing = { plantings: [{ bed: 'bed-1', crop: 'pea', sow: '2027-04-25' }] };
    const { trial } = await steward.draftOutlook(toldDraft(growing));
    expect(trial?.plan.tasks.map(({ kind }) => kind)).toContain('sow-crop');
    expect(await steward.gardenIds()).toEqual([]);
  });

  it('says why no climate can be worked out far from every station', async () => {
    const steward = await emptyHouse();
    const { problems, climate } = await steward.draftOutlook(toldDraft({ place: { latitude: 52.5, longitude: 13.4 } }));
    expect(climate).toBeUndefined();
    expect(problems[0]?.what).toContain('The nearest station is');
  });

  it('lets what grew last year be over, whatever the crop, and keeps lasting ones standing', async () => {
    const steward = await emptyHouse();
    const past = [
      { bed: 'bed-1', crop: 'tomato', season: 2026 },
      { bed: 'bed-2', crop: 'garlic', season: 2026 },
      { bed: 'bed-2', crop: 'asparagus', season: 2025 },
    ];
    const { trial } = await steward.draftOutlook(toldDraft({ past }));
    const rows = trial?.garden.plantings.map(({ cropId, start, lastHarvest }) => [
      cropId,
      start.happened,
      start.day.slice(0, 4),
      lastHarvest?.happened,
    ]);
    expect(rows).toEqual([
      ['tomato', true, '2026', true],
      ['garlic', true, '2025', true],
      ['asparagus', true, '2025', undefined],
    ]);
    expect(trial?.plan.tasks.filter(({ kind }) => kind === 'clear-bed')).toEqual([]);
  });

  it('asks nobody to clear what was told as cleared, though its usual harvest is only now', async () => {
    const store = await openStore({ file: ':memory:', now: NOW });
    const steward = createSteward({ store, clock: { now: () => '2027-09-20T12:00:00.000Z', today: '2027-09-20' } });
    onTestFinished(() => steward.close());
    const { trial } = await steward.draftOutlook(toldDraft({ past: [{ bed: 'bed-1', crop: 'tomato', season: 2027 }] }));
    expect(trial?.garden.plantings[0]?.lastHarvest).toEqual({ day: '2027-08-22', happened: true });
    expect(trial?.plan.tasks.filter(({ kind }) => kind === 'clear-bed')).toEqual([]);
  });
});

describe('making the garden', () => {
  it('makes it with a feed that a calendar reads', async () => {
    const steward = await emptyHouse();
    const made = await steward.makeGarden(await drafted(steward, toldDraft()), 'web page');
    expect(made).toEqual({ gardenId: 'hollow-lane', feedId: 'feed-1' });
    const [feed] = await steward.feeds('hollow-lane');
    expect(feed?.label).toBe('Calendar');
    expect(seenByIcalJs((await steward.feedBody(feed?.token ?? ''))?.body ?? '').length).toBeGreaterThan(0);
    expect(await steward.drafts()).toEqual([]);
  });

  it('asked twice, also at the same time, makes one garden with one feed', async () => {
    const steward = await emptyHouse();
    const draft = await drafted(steward, toldDraft());
    const both = await Promise.all([steward.makeGarden(draft, 'web page'), steward.makeGarden(draft, 'web page')]);
    const third = await steward.makeGarden(draft, 'web page');
    expect(new Set([...both, third].map(({ gardenId }) => gardenId))).toEqual(new Set(['hollow-lane']));
    expect(await steward.gardenIds()).toEqual(['hollow-lane']);
    expect(await steward.feeds('hollow-lane')).toHaveLength(1);
  });

  it('is made of what was told last, also while it is made', async () => {
    const { store, steward, clock } = await emptyHousehold();
    const draft = await drafted(steward, toldDraft());
    let isFirst = true;
    const slow: Store = {
      ...store,
      transaction: async (work) => {
        if (isFirst) {
          isFirst = false;
          await steward.changeDraft(draft, (was) => ({ ...was, beds: was.beds.slice(0, 1) }));
        }
        return store.transaction(work);
      },
    };
    const { gardenId } = await createSteward({ store: slow, clock }).makeGarden(draft, 'web page');
    expect((await steward.view(gardenId)).garden.beds).toHaveLength(1);
  });

  it('gives a garden of the same name another id, also where the first was put away', async () => {
    const steward = await emptyHouse();
    await steward.makeGarden(await drafted(steward, toldDraft()), 'web page');
    await steward.putAwayGarden('hollow-lane');
    const second = await steward.makeGarden(await drafted(steward, toldDraft()), 'web page');
    expect(second.gardenId).toBe('hollow-lane-2');
    await steward.giveBackGarden('hollow-lane');
    expect(await steward.gardenIds()).toEqual(['hollow-lane', 'hollow-lane-2']);
  });

  it('refuses what is not told to its end, or cannot be planned, and keeps the draft', async () => {
    const steward = await emptyHouse();
    const bare = await drafted(steward, toldDraft({ beds: [] }));
    await expect(steward.makeGarden(bare, 'web page')).rejects.toThrow(/not told to its end/);
    const far = await drafted(steward, toldDraft({ place: { latitude: 52.5, longitude: 13.4 } }));
    await expect(steward.makeGarden(far, 'web page')).rejects.toThrow(/nearest station/);
    expect([await steward.gardenIds(), (await steward.drafts()).length]).toEqual([[], 2]);
  });
});

describe('a garden put away', () => {
  it('shows in its feed as a closed one does, and again at the same address when it is given back', async () => {
    const clock = { moment: NOW };
    const steward = await emptyHouse(clock);
    const { gardenId } = await steward.makeGarden(await drafted(steward, toldDraft()), 'web page');
    const [feed] = await steward.feeds(gardenId);
    const token = feed?.token ?? '';
    const before = (await steward.feedBody(token))?.body;
    clock.moment = '2027-04-20T15:00:00.000Z';
    await steward.putAwayGarden(gardenId);
    const [notice, ...others] = seenByIcalJs((await steward.feedBody(token))?.body ?? '');
    expect([notice?.title, others]).toEqual(['This calendar is no longer kept', []]);
    expect(notice?.description).toContain('Its garden was put away');
    const closed = (await steward.feedBody(token))?.changedAt ?? '';
    clock.moment = '2027-04-20T16:00:00.000Z';
    await steward.giveBackGarden(gardenId);
    const again = await steward.feedBody(token);
    expect(again?.body).toBe(before);
    expect([closed, again?.changedAt]).toEqual(['2027-04-20T15:00:00.000Z', '2027-04-20T16:00:00.000Z']);
  });

  it('says at a former address that there is a new one only once it is given back', async () => {
    const steward = await emptyHouse();
    const { gardenId, feedId } = await steward.makeGarden(await drafted(steward, toldDraft()), 'web page');
    const [feed] = await steward.feeds(gardenId);
    await steward.rotateFeed(gardenId, feedId);
    await steward.putAwayGarden(gardenId);
    const [notice] = seenByIcalJs((await steward.feedBody(feed?.token ?? ''))?.body ?? '');
    expect(notice?.description).toContain('its garden was put away');
    expect(notice?.description).not.toContain('shows here again');
  });

  it('is given no feed, no new address and no key', async () => {
    const steward = await emptyHouse();
    const { gardenId, feedId } = await steward.makeGarden(await drafted(steward, toldDraft()), 'web page');
    await steward.putAwayGarden(gardenId);
    await expect(steward.addFeed(gardenId, 'Another')).rejects.toThrow(/put away/);
    await expect(steward.rotateFeed(gardenId, feedId)).rejects.toThrow(/put away/);
    await expect(steward.addReadingKey(gardenId, 'A script')).rejects.toThrow(/put away/);
  });

  it('is planned no more, and a file does not bring it back unasked', async () => {
    const steward = await emptyHouse();
    const { gardenId } = await steward.makeGarden(await drafted(steward, toldDraft()), 'web page');
    const file = await steward.importedFile(gardenId);
    await steward.putAwayGarden(gardenId);
    expect(await steward.refresh()).toEqual([]);
    await expect(steward.view(gardenId)).rejects.toThrow(/put away/);
    await expect(steward.importGarden({ file, prefer: 'file' }, 'test')).rejects.toThrow(/Give it back/);
  });
});

describe('the demo garden', () => {
  it('is laid once, and given back where it was put away', async () => {
    const steward = await emptyHouse();
    const id = await steward.showDemo();
    expect(isDemo((await steward.view(id)).ledger)).toBe(true);
    expect(await steward.showDemo()).toBe(id);
    await steward.putAwayGarden(id);
    expect(await steward.showDemo()).toBe(id);
    expect(await steward.gardenIds()).toEqual([id]);
  });

  it('leaves a garden of its name alone', async () => {
    const steward = await emptyHouse();
    const own = toldDraft();
    const about = own.about && { about: { ...own.about, name: 'Quillet Lane' } };
    const { gardenId } = await steward.makeGarden(await drafted(steward, { ...own, ...about }), 'web page');
    expect(await steward.showDemo()).toBe(`${gardenId}-2`);
    expect((await steward.view(gardenId)).garden.beds).toHaveLength(2);
  });
});
