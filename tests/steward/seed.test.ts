import { describe, expect, it } from 'vitest';
import { NORTH_TODAY, northernFile } from './gardens.ts';
import { household, later, openTask, told } from './household.ts';

/** The wall bed's oats of 20 August: 3.6 m² at 14 g/m² (cover:S4c), 51 g. */
const PLANNED = { coverId: 'oats', grams: 51 };
const MIXED = [{ id: 'mix', bed: 'south', mix: 'oats-field-pea', sow: '2027-04-21' }];
const SOW_MIX = 'cover-sow/stand:mix';
const NO_CARROTS = { plantings: [] };

describe('seed that was ordered', () => {
  it('is kept as planned where nobody says otherwise, and as told where somebody does', async () => {
    for (const [used, grams] of [
      [{}, 51],
      [{ grams: 500 }, 500],
      [{ seed: { oats: 120 } }, 120],
    ] as const) {
      const { steward, garden } = await household();
      const order = openTask((await steward.view(garden)).plan, 'order-cover-seed');
      expect(order.makes).toContainEqual({ makes: 'seed-bought', ...PLANNED });
      await steward.markDone(garden, [order.key], NORTH_TODAY, 'ada', { [order.key]: used });
      const { seeds } = (await steward.view(garden)).garden;
      expect(seeds).toEqual([
        { plant: { kind: 'cover', id: 'oats' }, packedYear: 2027, held: { grams, on: NORTH_TODAY } },
      ]);
    }
  });

  it('is refused where it cannot be', async () => {
    const { steward, garden } = await household();
    const { key } = openTask((await steward.view(garden)).plan, 'order-cover-seed');
    const used = { [key]: { seed: { oats: -3 } } };
    await expect(steward.markDone(garden, [key], NORTH_TODAY, 'ada', used)).rejects.toThrow(
      '-3 grams cannot have been used',
    );
    expect((await steward.view(garden)).garden.seeds).toEqual([]);
  });
});

describe('seed that was sown', () => {
  const mixed = () => household(northernFile({ ...NO_CARROTS, coverStands: MIXED }));
  const sown = async (used: object, home: Awaited<ReturnType<typeof mixed>>) => {
    const { steward, garden } = home;
    await steward.markDone(garden, [SOW_MIX], NORTH_TODAY, 'ada', { [SOW_MIX]: used });
    return (await steward.view(garden)).garden.stands.find(({ id }) => id === 'mix')?.seed;
  };

  it('is kept by the kinds of its mix, all together shared out as it was planned', async () => {
    // Oats 9.3 and field pea 7.1 g/m² (cover:S24) over 3.6 m²: 34 and 26 g of 60.
    const oats = { coverId: 'oats', on: NORTH_TODAY };
    const peas = { coverId: 'field_pea', on: NORTH_TODAY };
    expect(await sown({}, await mixed())).toEqual([
      { ...oats, grams: 34 },
      { ...peas, grams: 26 },
    ]);
    expect(await sown({ grams: 30 }, await mixed())).toEqual([
      { ...oats, grams: 17 },
      { ...peas, grams: 13 },
    ]);
    expect(await sown({ seed: { oats: 40 } }, await mixed())).toEqual([
      { ...oats, grams: 40 },
      { ...peas, grams: 26 },
    ]);
  });

  it('taken back leaves everything as it was', async () => {
    const home = await mixed();
    const before = await home.steward.view(home.garden);
    await sown({ grams: 30 }, home);
    later(home.clock);
    await home.steward.undo(home.garden, 2, 'ada');
    const after = await home.steward.view(home.garden);
    expect(after.garden).toEqual(before.garden);
    expect(told(after.plan)).toEqual(told(before.plan));
  });
});

it('seed that is in the drawer already is not ordered', async () => {
  const seeds = [{ cover: 'oats', packed: 2027, grams: 60, on: '2027-03-01' }];
  const { steward, garden } = await household(northernFile({ seeds }));
  const { tasks } = (await steward.view(garden)).plan;
  expect(tasks.filter(({ kind, key }) => kind === 'order-cover-seed' && key.endsWith('stand:oats'))).toEqual([]);
  const sowing = tasks.find(({ key }) => key === 'cover-sow/stand:oats');
  expect(sowing?.steps[0]).toBe('Its seed is in the drawer: ⟦51 g⟧ of oats, left from before.');
});
