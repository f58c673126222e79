import { describe, expect, it } from 'vitest';
import { changePreview } from '../../src/digest/change-preview.ts';
import type { LoggedDay } from '../../src/garden/weather.ts';
import { addDays, type Day } from '../../src/measures/days.ts';
import type { Sections } from './gardens.ts';
import { type Replay, rowsSeen, spell, standingIn, throughout } from './replayed-spring.ts';

interface Journey extends Replay {
  sections: Sections;
  days: readonly LoggedDay[];
  /** The day a handful crumbled, where one was squeezed. */
  crumbledOn?: Day;
}

async function goneThrough({ record, on, sections, days, crumbledOn }: Journey) {
  const garden = await standingIn({ record, on }, sections);
  if (crumbledOn !== undefined)
    await garden.report({ kind: 'soil-squeezed', on: crumbledOn, soilTexture: 'silt_loam', answer: 'crumbles' });
  const all = await throughout(garden, { kind: 'weather-logged', days: [...days] });
  const preview = changePreview(all.preview.before, all.preview.after);
  const move = (keyStart: string) => preview.moved.find(({ keys }) => keys.some((key) => key.startsWith(keyStart)));
  const added = (keyStart: string) => preview.added.find(({ keys }) => keys.some((key) => key.startsWith(keyStart)));
  return { ...all, ...preview, move, added };
}

/** What every journey has in common. */
function isWhole({ shown, kept, was, undone, entries, feedChanged }: Awaited<ReturnType<typeof goneThrough>>): void {
  expect(shown).toEqual(kept);
  expect(undone).toEqual(was);
  expect(feedChanged).toBe(true);
  expect(entries).toBeGreaterThan(2);
}

const sow = (id: string, bed: string, crop: string, day: Day) => ({ id, bed, crop, sow: day });
const setOut = (id: string, bed: string, crop: string, day: Day) => ({ id, bed, crop, setOut: day });
const seen = (record: Replay['record'], day: Day): LoggedDay[] => rowsSeen(record, day, day);

describe('a late snow that really fell', () => {
  it('Milwaukee, 15 April 2018: 81 mm on thawed soil put off the handful and the sowing behind it', async () => {
    const journey = await goneThrough({
      record: 'milwaukee',
      on: '2018-04-15',
      sections: {
        plantings: [sow('peas', 'south', 'pea', '2018-04-16'), sow('carrots', 'middle', 'carrot', '2018-04-20')],
      },
      days: seen('milwaukee', '2018-04-15'),
      crumbledOn: '2018-04-12',
    });
    isWhole(journey);
    const { move } = journey;
    expect(move('squeeze-test')).toMatchObject({
      from: '2018-04-15',
      because: expect.stringMatching(/^Snow lay again on ⟦2018-04-15⟧.*melted, thawed and drained by ⟦2018-04-1\d⟧/),
    });
    expect((move('squeeze-test')?.to ?? '') > '2018-04-16').toBe(true);
  });

  it('Milwaukee, 11 April 2007: 178 mm that fell after the depth was read still close the soil', async () => {
    const journey = await goneThrough({
      record: 'milwaukee',
      on: '2007-04-11',
      sections: { plantings: [sow('peas', 'south', 'pea', '2007-04-20')] },
      days: seen('milwaukee', '2007-04-11'),
      crumbledOn: '2007-04-08',
    });
    isWhole(journey);
    const again = journey.added('squeeze-test');
    expect(again?.because).toContain('Snow lay again on ⟦2007-04-11⟧.');
    expect(journey.move('cover-sow')).toMatchObject({
      from: '2007-04-11',
      to: again?.to,
      because: expect.stringContaining('It comes after "Squeeze a handful of the silt loam again"'),
    });
  });

  it('Bozeman, 13 June 2001: 363 mm on tomatoes set out covers them this evening and puts the beans off', async () => {
    const journey = await goneThrough({
      record: 'bozeman',
      on: '2001-06-13',
      sections: {
        plantings: [
          setOut('tomatoes', 'north', 'tomato', '2001-06-08'),
          sow('beans', 'middle', 'snap-bean', '2001-06-14'),
          sow('chard', 'south', 'swiss-chard', '2001-06-15'),
        ],
        gear: [{ what: 'light-fabric', areaM2: 9 }],
      },
      days: seen('bozeman', '2001-06-13'),
      crumbledOn: '2001-06-10',
    });
    isWhole(journey);
    const { move, added, after } = journey;
    expect(added('frost-cover')).toMatchObject({ title: 'Snow tonight: cover north bed', to: '2001-06-13' });
    const covering = after.tasks.find(({ kind }) => kind === 'cover-beds');
    expect(covering?.steps.join(' ')).toContain('Brush snow off the covers');
    expect(added('frost-look')?.because).toContain('⟦-1.1 tempC⟧');
    const again = added('squeeze-test');
    expect(again?.because).toContain('Snow lay again');
    expect(again?.to).toBe('2001-06-18');
    expect(move('sow/planting:beans')).toMatchObject({
      from: '2001-06-15',
      to: again?.to,
      because: expect.stringContaining('It comes after "Squeeze a handful of the silt loam again"'),
    });
  });

  it('Bozeman, 29 May 2007: 185 mm hold up what was to be sown and set out, each after a handful', async () => {
    const journey = await goneThrough({
      record: 'bozeman',
      on: '2007-05-29',
      sections: {
        plantings: [
          setOut('tomatoes', 'north', 'tomato', '2007-05-28'),
          sow('carrots', 'middle', 'carrot', '2007-05-30'),
          setOut('cabbage', 'south', 'cabbage', '2007-05-31'),
        ],
      },
      days: seen('bozeman', '2007-05-29'),
      crumbledOn: '2007-05-26',
    });
    isWhole(journey);
    const again = journey.added('squeeze-test');
    for (const key of ['sow/planting:carrots', 'set-out/planting:cabbage']) {
      const moved = journey.move(key);
      expect(moved?.because).toContain('It comes after "Squeeze a handful of the silt loam again"');
      expect((moved?.to ?? '') >= (again?.to ?? '9')).toBe(true);
    }
    expect(journey.added('frost-cover')?.title).toBe('Snow tonight: shelter tomato');
  });

  it('Bozeman, 13 June 2001: rye in flower keeps its window though the bed is wet, and is cut off a board', async () => {
    const seenInBloom = { cover: 'cereal_rye', on: '2001-06-09', stage: 'in-bloom' };
    const journey = await goneThrough({
      record: 'bozeman',
      on: '2001-06-13',
      sections: {
        plantings: [sow('beans', 'middle', 'snap-bean', '2001-06-20')],
        coverStands: [{ id: 'rye', bed: 'north', cover: 'cereal_rye', sow: '2000-09-10', seen: [seenInBloom] }],
      },
      days: seen('bozeman', '2001-06-13'),
      crumbledOn: '2001-06-08',
    });
    isWhole(journey);
    const clash = journey.clashes.find(({ key }) => key === 'cover-cut/stand:rye');
    expect(clash?.what).toMatch(/^It should wait until ⟦2001-06-\d\d⟧, and its window closes on ⟦2001-06-13⟧\.$/);
    expect(clash?.gives).toMatch(
      /^The order gives way: it keeps its window and stands on ⟦2001-06-13⟧\. .*off a board/,
    );
  });

  it('Milwaukee, 15 April 2018: a cut that has time left waits for the handful after the snow', async () => {
    const journey = await goneThrough({
      record: 'milwaukee',
      on: '2018-04-15',
      sections: {
        plantings: [setOut('cabbage', 'north', 'cabbage', '2018-05-22'), sow('peas', 'south', 'pea', '2018-04-20')],
        coverStands: [{ id: 'rye', bed: 'north', cover: 'cereal_rye', sow: '2017-09-15' }],
      },
      days: seen('milwaukee', '2018-04-15'),
      crumbledOn: '2018-04-12',
    });
    isWhole(journey);
    expect(journey.move('cover-cut/stand:rye')).toMatchObject({
      to: journey.move('squeeze-test')?.to,
      because: expect.stringContaining('It comes after "Squeeze a handful of the silt loam again"'),
    });
    expect(journey.clashes).toEqual([]);
  });
});

describe('the same journey', () => {
  it('serves a cold snap: tender crops this evening, and tender sowings after it', async () => {
    const on = '2010-05-27';
    const journey = await goneThrough({
      record: 'milwaukee',
      on,
      sections: { plantings: [setOut('tomatoes', 'north', 'tomato', '2010-05-22')] },
      days: spell(addDays(on, 1), 1, 'expected', { tminC: -1, tmaxC: 9 }),
    });
    isWhole(journey);
    expect(journey.added('frost-cover')).toMatchObject({
      to: on,
      because: 'A low of ⟦-1 tempC⟧ is expected for the night of ⟦2010-05-27⟧.',
    });
    expect(journey.move('cover-sow')).toMatchObject({
      from: on,
      because: expect.stringContaining('Buckwheat stands no freeze.'),
    });
  });

  it('serves a soaking rain: what the handful said no longer counts', async () => {
    const on = '2010-04-16';
    const journey = await goneThrough({
      record: 'milwaukee',
      on,
      sections: {
        plantings: [sow('carrots', 'middle', 'carrot', '2010-04-20'), sow('peas', 'south', 'pea', '2010-04-17')],
      },
      days: spell(on, 1, 'observed', { rainMm: 60, tminC: 8, tmaxC: 14 }),
      crumbledOn: '2010-04-13',
    });
    isWhole(journey);
    expect(journey.added('squeeze-test')?.because).toContain('The ground was soaked again on ⟦2010-04-16⟧.');
    const dayOf = (keyStart: string) =>
      journey.preview.after.tasks.find(({ key }) => key.startsWith(keyStart))?.day ?? '';
    expect(dayOf('squeeze-test') > on).toBe(true);
    expect(dayOf('sow/planting:peas') >= dayOf('squeeze-test')).toBe(true);
  });

  it('serves a dry spell after a wet one: seed already sown is to be kept moist at once', async () => {
    const on = '2010-06-05';
    const garden = await standingIn(
      { record: 'milwaukee', on },
      { plantings: [sow('beans', 'middle', 'snap-bean', '2010-06-04')] },
    );
    await garden.report({
      kind: 'weather-logged',
      days: spell(on, 11, 'expected', { tminC: 10, tmaxC: 16, rainMm: 9 }),
    });
    const days = spell(on, 11, 'expected', { tminC: 14, tmaxC: 30, rainMm: 0 });
    const all = await throughout(garden, { kind: 'weather-logged', days });
    expect([all.shown, all.was]).toEqual([all.kept, all.undone]);
    const { moved } = changePreview(all.preview.before, all.preview.after);
    const look = moved.find(({ keys }) => keys.includes('keep-moist/planting:beans'));
    expect((look?.from ?? '') > addDays(on, 10)).toBe(true);
    expect(look?.to).toBe(addDays(on, 1));
    expect(look?.because).toContain('have gone since the rows were watered in');
  });

  it('serves a rain on seed that had dried: it is looked at when its rows dry again', async () => {
    const on = '2012-05-18';
    const journey = await goneThrough({
      record: 'milwaukee',
      on,
      sections: { plantings: [sow('carrots', 'middle', 'carrot', '2012-05-10')] },
      days: [{ day: on, kind: 'observed', tminC: 9, tmaxC: 14, rainMm: 35 }],
    });
    expect([journey.shown, journey.was]).toEqual([journey.kept, journey.undone]);
    const look = journey.move('keep-moist/planting:carrots');
    expect([look?.from, look?.to]).toEqual([on, addDays(on, 2)]);
    expect(look?.because).toContain('The rows are reckoned dry by ⟦2012-05-20⟧');
  });

  it('serves a warm spell and a cold one: a rye is cut sooner, or later', async () => {
    const on = '2010-04-10';
    const sections = { coverStands: [{ id: 'rye', bed: 'south', cover: 'cereal_rye', sow: '2009-09-20' }] };
    const cutTo = async (weather: Partial<LoggedDay>) => {
      const journey = await goneThrough({
        record: 'milwaukee',
        on,
        sections,
        days: spell(on, 11, 'expected', weather),
      });
      isWhole({ ...journey, entries: 3 });
      const { from = '', to = '', because } = journey.move('cover-cut/stand:rye') ?? {};
      expect(because).toContain('⟦2010-');
      return { from, to };
    };
    const [warm, cold] = [await cutTo({ tminC: 12, tmaxC: 26 }), await cutTo({ tminC: -4, tmaxC: 4 })];
    expect(warm.to < warm.from).toBe(true);
    expect(cold.to > cold.from).toBe(true);
  });
});
