import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/measures/days.ts';
import { readableIn } from '../../src/measures/quantity.ts';
import { doneDoubts } from '../../src/steward/doubts/done-doubts.ts';
import { northernFile } from './gardens.ts';
import { type Household, household, openTask } from './household.ts';

/** The northern garden looked at on a later day. */
async function on(day: string, sections = {}): Promise<Household> {
  const house = await household(northernFile(sections));
  house.clock.moment = `${day}T15:00:00.000Z`;
  return house;
}

const told = async ({ steward, garden }: Household) => {
  const view = await steward.view(garden);
  const { fact } = view.ledger.at(-1) ?? {};
  if (fact?.kind !== 'tasks-done') return [];
  return fact.tasks
    .flatMap((task) => doneDoubts(view, task, fact.on))
    .map((text) => readableIn('metric', text, fact.on));
};

describe('work marked done before what has to come first', () => {
  it('is refused with both days: a cover cut before it was sown', async () => {
    const { steward, garden } = await on('2027-05-01');
    const { key } = openTask((await steward.view(garden)).plan, 'cut-cover');
    await expect(steward.markDone(garden, [key], '2026-09-01', 'ada')).rejects.toThrow(
      /cannot have been done on September 1, 2026: the cover was sown on September [12]0, 2026.*Give a day from September [12]0/s,
    );
  });

  it('is refused where its forerunner was marked: plants hardened off before they were sown', async () => {
    const { steward, garden } = await on('2027-05-20', {
      plantings: [{ id: 'tomatoes', bed: 'middle', crop: 'tomato', setOut: '2027-06-10' }],
    });
    const keyOf = (kind: string) => `${kind}/planting:tomatoes`;
    await steward.markDone(garden, [keyOf('start-indoors')], '2027-04-25', 'ada');
    await expect(steward.markDone(garden, [keyOf('harden-off')], '2027-04-24', 'ada')).rejects.toThrow(
      'was done on April 25, 2027',
    );
    await steward.markDone(garden, [keyOf('harden-off')], '2027-04-25', 'ada');
  });

  it('is refused of a pile that was built later, and of a turn before the last one', async () => {
    const { steward, garden } = await on('2027-05-01');
    const { key } = openTask((await steward.view(garden)).plan, 'turn-pile');
    await expect(steward.markDone(garden, [key], '2027-04-01', 'ada')).rejects.toThrow('last turned on April 13, 2027');
  });

  it('is refused in a bed on a day before it was filled', async () => {
    const beds = [
      ...northernFile().beds,
      {
        id: 'new',
        name: 'New bed',
        lengthM: 2,
        widthM: 1,
        depthM: 0.3,
        plannedFor: '2027-05-10',
        filledOn: '2027-05-08',
      },
    ];
    const plantings = [{ id: 'late-beans', bed: 'new', crop: 'snap-bean', sow: '2027-06-01' }];
    const { steward, garden } = await on('2027-06-01', { beds, plantings, coverStands: [] });
    await expect(steward.markDone(garden, ['sow/planting:late-beans'], '2027-05-07', 'ada')).rejects.toThrow(
      'the bed was filled on May 8, 2027',
    );
  });

  it('marked together with it on one day is taken in', async () => {
    const { steward, garden } = await on('2027-05-20', {
      plantings: [{ id: 'tomatoes', bed: 'middle', crop: 'tomato', setOut: '2027-06-10' }],
    });
    const keys = ['start-indoors/planting:tomatoes', 'harden-off/planting:tomatoes'];
    const plan = await steward.markDone(garden, keys, '2027-05-01', 'ada');
    expect(plan.gardenId).toBe(garden);
  });

  it('names every task that cannot be, and keeps nothing', async () => {
    const { steward, garden } = await on('2027-05-01');
    const { plan } = await steward.view(garden);
    const keys = [openTask(plan, 'cut-cover').key, openTask(plan, 'turn-pile').key];
    await expect(steward.markDone(garden, keys, '2026-08-01', 'ada')).rejects.toThrow(/was sown[\s\S]*last turned/);
    expect((await steward.view(garden)).ledger).toHaveLength(1);
  });
});

describe('a crop cleared before it can have been ripe', () => {
  const carrots = { plantings: [{ id: 'carrots', bed: 'south', crop: 'carrot', sow: '2027-04-25' }] };

  it('is taken in, and doubted with its days', async () => {
    const house = await on('2027-06-01', carrots);
    const { steward, garden } = house;
    await steward.markDone(garden, ['sow/planting:carrots'], '2027-04-25', 'ada');
    await steward.markDone(garden, ['bed-clear/planting:carrots'], '2027-05-20', 'ada');
    expect((await steward.view(garden)).garden.plantings[0]?.lastHarvest?.day).toBe('2027-05-20');
    const [doubt] = await told(house);
    expect(doubt).toMatch(
      /^Cleared on 20 May, the carrot can hardly have been ripe: sown on 25 April, its quickest kinds/,
    );
  });

  it('is not doubted from the day its quickest kinds are ripe', async () => {
    const house = await on('2027-05-01', carrots);
    const { steward, garden, clock } = house;
    await steward.markDone(garden, ['sow/planting:carrots'], '2027-04-25', 'ada');
    clock.moment = '2027-09-01T15:00:00.000Z';
    await steward.markDone(garden, ['bed-clear/planting:carrots'], addDays('2027-04-25', 100), 'ada');
    expect(await told(house)).toEqual([]);
  });
});

describe('a bed sown again that was never cleared', () => {
  const peas = {
    coverStands: [],
    plantings: [
      { id: 'peas', bed: 'south', crop: 'pea', sow: '2027-04-10', lastHarvest: '2027-07-05' },
      { id: 'carrots', bed: 'south', crop: 'carrot', sow: '2027-07-10' },
    ],
  };
  const sown = () => on('2027-07-12', peas);

  it('is taken in, and doubted: nothing asks for the clearing any more', async () => {
    const house = await sown();
    const { steward, garden } = house;
    await steward.markDone(garden, ['sow/planting:carrots'], '2027-07-11', 'ada');
    expect((await steward.view(garden)).plan.tasks.map(({ key }) => key)).not.toContain('bed-clear/planting:peas');
    expect(await told(house)).toEqual([
      expect.stringMatching(/^The garden pea was not marked cleared.*take this back/),
    ]);
  });

  it('is not doubted once the clearing is told', async () => {
    const house = await sown();
    await house.steward.markDone(house.garden, ['bed-clear/planting:peas'], '2027-07-08', 'ada');
    await house.steward.markDone(house.garden, ['sow/planting:carrots'], '2027-07-11', 'ada');
    expect(await told(house)).toEqual([]);
  });
});
