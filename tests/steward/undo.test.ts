import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/schedule/plan.ts';
import { movesBetween } from '../../src/steward/ledger/moves-between.ts';
import { samplePlan, sampleTask } from '../web/sample-plan.ts';
import { NORTH_TODAY, northernFile } from './gardens.ts';
import { type Household, household, later, openTask, told } from './household.ts';

/** Something a gardener says, after which the plan is another. */
type Deed = (house: Household, plan: Plan) => Promise<unknown>;

const done =
  (kind: string): Deed =>
  ({ steward, garden }, plan) =>
    steward.markDone(garden, [openTask(plan, kind).key], NORTH_TODAY, 'ada');

const DEEDS: [string, Deed][] = [
  ['cutting a stand', done('cut-cover')],
  ['clearing a bed', done('clear-bed')],
  ['turning a pile', done('turn-pile')],
  ['sowing a cover', done('sow-cover')],
  ['spreading compost', done('topdress')],
  ['building a pile', done('build-pile')],
  ['ordering compost', done('order-compost')],
  ['skipping', ({ steward, garden }, plan) => steward.skip(garden, [openTask(plan, 'cut-cover').key], 'ada')],
  ['pinning', ({ steward, garden }, plan) => steward.pin(garden, openTask(plan, 'cut-cover').key, '2027-05-03', 'ada')],
  [
    'putting off',
    ({ steward, garden }, plan) => {
      const { key, day } = openTask(plan, 'cut-cover');
      return steward.putOff(garden, [key], day, 'ada');
    },
  ],
  [
    'a look at a pile',
    ({ steward, garden }) => steward.readPile(garden, { pileId: 'spring-pile', on: NORTH_TODAY, tempC: 68 }, 'ada'),
  ],
  [
    'a disease found',
    ({ steward, garden }) =>
      steward.report(
        garden,
        { kind: 'disease-found', bedId: 'wall', cropId: 'spinach', disease: 'leaf spot', on: NORTH_TODAY },
        'ada',
      ),
  ],
  [
    'a new garden file',
    ({ steward }) => {
      const file = northernFile({
        plantings: [],
        climate: { frostDates: { lastSpring: '05-20', firstAutumn: '09-10' } },
      });
      return steward.importGarden({ file, prefer: 'reported' }, 'ada');
    },
  ],
];

describe('undoing the newest entry', () => {
  it.each(DEEDS)('after %s brings every day, text, reason and state back', async (_, deed) => {
    const house = await household();
    const { steward, garden, clock } = house;
    const before = (await steward.view(garden)).plan;
    later(clock);
    await deed(house, before);
    expect(told((await steward.view(garden)).plan)).not.toEqual(told(before));
    later(clock);
    const after = await steward.undo(garden, undefined, 'ada');
    expect(told(after)).toEqual(told(before));
  });

  it('raises the sequence of every entry that moves back, and of no other', async () => {
    const house = await household();
    const { steward, garden, clock } = house;
    const before = (await steward.view(garden)).plan;
    const { key } = openTask(before, 'cut-cover');
    later(clock);
    const during = await steward.pin(garden, key, '2027-05-03', 'ada');
    later(clock);
    const after = await steward.undo(garden, undefined, 'ada');
    for (const entry of after.entries) {
      const [was, between] = [before, during].map((plan) => plan.entries.find(({ lotId }) => lotId === entry.lotId));
      if (between?.content === was?.content) expect(entry).toEqual(was);
      else expect(entry.sequence).toBeGreaterThan(Math.max(was?.sequence ?? 0, between?.sequence ?? 0));
    }
    expect(after.entries.some((entry) => entry.sequence > 0)).toBe(true);
  });

  it('goes back one entry at a time and stops at the garden file', async () => {
    const house = await household();
    const { steward, garden, clock } = house;
    const before = (await steward.view(garden)).plan;
    for (const kind of ['cut-cover', 'clear-bed', 'turn-pile']) {
      later(clock);
      await done(kind)(house, (await steward.view(garden)).plan);
    }
    const plans: Plan[] = [];
    for (let count = 0; count < 3; count += 1) {
      later(clock);
      plans.push(await steward.undo(garden, undefined, 'ada'));
    }
    expect(plans.map(({ tasks }) => tasks.filter(({ state }) => state === 'done').length)).toEqual([2, 1, 0]);
    expect(told(plans[2] ?? before)).toEqual(told(before));
    await expect(steward.undo(garden, undefined, 'ada')).rejects.toThrow('Nothing can be undone.');
    expect(await steward.previewUndo(garden)).toBeUndefined();
  });
});

const amountsOf = (supplies: Plan['tasks'][number]['supplies']) =>
  supplies.filter(({ amount }) => amount !== undefined).map(({ what, amount }) => ({ what, amount }));

describe('what moves between two plans', () => {
  const amount = (value: number) => ({ what: 'finished compost', amount: { value, unit: 'L' as const } });
  const planOf = (...tasks: ReturnType<typeof sampleTask>[]) => samplePlan(tasks);

  it('names an amount that changes on an unmoved day', () => {
    const [before, after] = [60, 80].map((value) =>
      planOf(sampleTask('a', NORTH_TODAY, { supplies: [amount(value), { what: 'rake' }] })),
    );
    expect(before && after && movesBetween(before, after)).toEqual([
      {
        key: 'a',
        title: 'Do a',
        from: NORTH_TODAY,
        to: NORTH_TODAY,
        reasons: [],
        amounts: [{ what: 'finished compost', from: { value: 60, unit: 'L' }, to: { value: 80, unit: 'L' } }],
      },
    ]);
  });

  it('names a thing that is no longer wanted, and nothing where all stays', () => {
    const before = planOf(sampleTask('a', NORTH_TODAY, { supplies: [amount(60)] }));
    expect(movesBetween(before, planOf(sampleTask('a', NORTH_TODAY)))[0]?.amounts).toEqual([
      { what: 'finished compost', from: { value: 60, unit: 'L' } },
    ]);
    expect(movesBetween(before, before)).toEqual([]);
  });
});

describe('undoing an older entry', () => {
  /** A bed cleared (entry 2), a stand cut (3) and a look at a pile (4). */
  async function threeEntries() {
    const house = await household();
    const { steward, garden, clock } = house;
    const first = (await steward.view(garden)).plan;
    for (const deed of [done('clear-bed'), done('cut-cover')]) {
      later(clock);
      await deed(house, (await steward.view(garden)).plan);
    }
    later(clock);
    await steward.readPile(garden, { pileId: 'spring-pile', on: NORTH_TODAY, tempC: 50 }, 'ada');
    later(clock);
    return { ...house, first };
  }

  it('takes only that one back', async () => {
    const { steward, garden, first } = await threeEntries();
    const clear = openTask(first, 'clear-bed').key;
    const plan = await steward.undo(garden, 2, 'ada');
    expect(plan.tasks.find(({ key }) => key === clear)?.state).toBe('open');
    expect(plan.tasks.filter(({ state }) => state === 'done').map(({ kind }) => kind)).toEqual(['cut-cover']);
    const { garden: held } = await steward.view(garden);
    expect(held.piles.flatMap(({ readings }) => readings)).toHaveLength(1);
  });

  it('is shown before it is done: the moves are those that follow', async () => {
    const { steward, garden } = await threeEntries();
    const before = (await steward.view(garden)).plan;
    const preview = await steward.previewUndo(garden, 2);
    expect(preview?.entry.entry).toBe(2);
    expect((await steward.view(garden)).plan).toEqual(before);
    const after = await steward.undo(garden, 2, 'ada');
    const days = (plan: Plan) =>
      new Map(
        plan.tasks.map(({ key, day, state, supplies, title, steps, window: { earliest, latest } }) => [
          key,
          JSON.stringify([day, state, amountsOf(supplies), title, steps, earliest, latest]),
        ]),
      );
    const [was, is] = [days(before), days(after)];
    const moved = [...new Set([...was.keys(), ...is.keys()])].filter((key) => was.get(key) !== is.get(key));
    expect(preview?.moves.map(({ key }) => key).sort()).toEqual(moved.sort());
    expect(moved.length).toBeGreaterThan(0);
  });

  it('lists later entries about the same bed, and no others', async () => {
    const house = await household();
    const { steward, garden, clock } = house;
    const { key } = openTask((await steward.view(garden)).plan, 'clear-bed');
    await steward.pin(garden, key, '2027-04-23', 'ada');
    later(clock);
    await done('turn-pile')(house, (await steward.view(garden)).plan);
    later(clock);
    await steward.markDone(garden, [key], NORTH_TODAY, 'ada');
    const preview = await steward.previewUndo(garden, 2);
    expect(preview?.leaning.map(({ entry }) => entry)).toEqual([4]);
    expect((await steward.previewUndo(garden, 3))?.leaning).toEqual([]);
  });

  it('works the climate out again where the file it takes back asked for another', async () => {
    const { steward, garden, clock } = await household();
    later(clock);
    const file = northernFile({ climate: { frostDates: { lastSpring: '06-01', firstAutumn: '09-01' } } });
    await steward.importGarden({ file, prefer: 'reported' }, 'ada');
    const preview = await steward.previewUndo(garden, 2);
    const before = (await steward.view(garden)).plan;
    later(clock);
    const after = await steward.undo(garden, 2, 'ada');
    const dayIn = (plan: Plan, key: string) => plan.tasks.find((task) => task.key === key)?.day;
    expect(preview?.moves.length).toBeGreaterThan(0);
    for (const { key, from, to } of preview?.moves ?? [])
      expect([from, to]).toEqual([dayIn(before, key), dayIn(after, key)]);
  });

  it('is refused for what is not there, what is undone and the only garden file', async () => {
    const { steward, garden } = await threeEntries();
    await expect(steward.undo(garden, 99, 'ada')).rejects.toThrow('entry 99: does not exist.');
    await expect(steward.undo(garden, 1, 'ada')).rejects.toThrow('holds the garden itself');
    await steward.undo(garden, 2, 'ada');
    await expect(steward.undo(garden, 2, 'ada')).rejects.toThrow('The newest that can be undone: 3, 4.');
  });
});

describe('undoing an undo', () => {
  it('by its number puts the entry back as it was', async () => {
    const house = await household();
    const { steward, garden, clock } = house;
    await done('clear-bed')(house, (await steward.view(garden)).plan);
    const marked = (await steward.view(garden)).plan;
    later(clock);
    await steward.undo(garden, 2, 'ada');
    later(clock);
    const preview = await steward.previewUndo(garden, 3);
    expect(preview?.entry.fact).toEqual({ kind: 'entry-undone', entry: 2 });
    const back = await steward.undo(garden, 3, 'ada');
    expect(told(back)).toEqual(told(marked));
    await expect(steward.undo(garden, 3, 'ada')).rejects.toThrow('is taken back already');
  });

  it('is refused where rows would contradict each other, and says what to change first', async () => {
    const { steward, garden } = await household();
    const { beds, plantings } = await steward.fileNow(garden);
    const [north, beans] = [beds.find(({ id }) => id === 'north'), plantings.find(({ id }) => id === 'beans')];
    await steward.mend(garden, [{ list: 'beds', id: 'north', row: { ...north, lengthM: 6 } }], 'ada');
    await steward.mend(garden, [{ list: 'plantings', id: 'beans', row: { ...beans, areaM2: 5 } }], 'ada');
    const refused =
      /snap bean in north bed, sown June 1, 2027: 5 m² .* more than north bed has.* Change that first, then/;
    await expect(steward.previewUndo(garden, 2)).rejects.toThrow(refused);
    await expect(steward.undo(garden, 2, 'ada')).rejects.toThrow(refused);
    await steward.undo(garden, 3, 'ada');
    await steward.undo(garden, 2, 'ada');
    expect((await steward.fileNow(garden)).beds.find(({ id }) => id === 'north')).toMatchObject({ lengthM: 3 });
  });

  it('is refused where two crops would stand in one bed at once, and says what to change first', async () => {
    const { steward, garden } = await household();
    const { plantings } = await steward.fileNow(garden);
    const beans = plantings.find(({ id }) => id === 'beans');
    await steward.mend(garden, [{ list: 'plantings', id: 'beans', row: { ...beans, bed: 'wall' } }], 'ada');
    const potatoes = { id: 'potatoes', bed: 'north', crop: 'potato', sow: '2027-05-10' };
    await steward.mend(garden, [{ list: 'plantings', row: potatoes }], 'ada');
    const refused = /(snap bean|potato).*north bed.*\n?.*is planted|is sown/i;
    await expect(steward.previewUndo(garden, 2)).rejects.toThrow(refused);
    await expect(steward.undo(garden, 2, 'ada')).rejects.toThrow('Change that first, then take this back.');
    await steward.undo(garden, 3, 'ada');
    await steward.undo(garden, 2, 'ada');
    expect((await steward.fileNow(garden)).plantings.find(({ id }) => id === 'beans')).toMatchObject({ bed: 'north' });
  });

  it('and undoing that again takes the entry back once more', async () => {
    const house = await household();
    const { steward, garden, clock } = house;
    const before = (await steward.view(garden)).plan;
    later(clock);
    await done('clear-bed')(house, before);
    for (const entry of [2, 3, 4]) {
      later(clock);
      await steward.undo(garden, entry, 'ada');
    }
    expect(told((await steward.view(garden)).plan)).toEqual(told(before));
  });

  it('never leaves a garden without its file', async () => {
    const { steward, garden } = await household();
    await steward.importGarden({ file: northernFile({ plantings: [] }), prefer: 'reported' }, 'ada');
    await steward.undo(garden, 1, 'ada');
    await steward.undo(garden, 3, 'ada');
    await steward.undo(garden, 2, 'ada');
    await expect(steward.undo(garden, 4, 'ada')).rejects.toThrow('It cannot be undone.');
    expect((await steward.view(garden)).garden.plantings).toHaveLength(4);
  });
});
