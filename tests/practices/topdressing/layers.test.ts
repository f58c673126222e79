import { describe, expect, it } from 'vitest';
import type { Garden } from '../../../src/garden/garden.ts';
import { addDays, type Day } from '../../../src/measures/days.ts';
import { soilAwake } from '../../../src/practices/seasons.ts';
import { layerLitres } from '../../../src/practices/topdressing/need.ts';
import { orderedWindows } from '../../../src/schedule/windows.ts';
import { inventedClimate } from '../../climate/invented.ts';
import { bed, cover, draft, draftsIn, frostDates, garden, milwaukee, setOut, sown } from '../gardens.ts';

/** Median freezes 10 May and 1 October: autumn's work begins on 6 August. */
const climate = frostDates('05-10', '10-01');
const autumn = { topdressing: { depthMm: 13, season: 'autumn' } } as const;
const spring = { topdressing: { depthMm: 13, season: 'spring' } } as const;

function layers(of: Garden, over = climate, today: Day = of.startedOn) {
  return draftsIn(of, over, today).filter(({ kind }) => kind === 'topdress');
}

const keys = (of: Garden, today?: Day) => layers(of, climate, today).map(({ key }) => key);

describe('a layer over a bed', () => {
  it('is area times depth: 13 mm on 3 m² are 39 L, half a barrow and a bit', () => {
    expect(layerLitres(3, 13)).toBe(39);
    const [task] = layers(garden({ ...autumn, startedOn: '2027-07-05' }));
    expect(task?.supplies[0]).toEqual({
      what: 'finished compost',
      amount: { value: 39, unit: 'L' },
      also: '1 barrow load',
    });
    expect(task?.makes).toEqual([{ makes: 'bed-topdressed', bedId: 'a', litres: 39 }]);
  });

  it('is an inch where the garden names none, because nobody has measured the soil', () => {
    const [task] = layers(garden({ startedOn: '2027-07-05' }));
    expect(task?.supplies[0]?.amount?.value).toBe(75);
    expect(task?.reasons[0]).toMatchObject({ rule: 'topdress.default-depth', saw: { depthMm: 25 }, source: 'veg:V17' });
  });

  describe('by the soil test, where the file names no depth', () => {
    const tested = (soilTests: Garden['soilTests'], own: Partial<Garden> = {}) =>
      layers(garden({ startedOn: '2027-07-05', soilTests, ...own }))[0];

    it('is half an inch at 5 % organic matter and an inch below it', () => {
      const at = (organicMatterPercent: number) => tested([{ on: '2026-10-01', organicMatterPercent }]);
      expect(at(5)?.supplies[0]?.amount?.value).toBe(39);
      expect(at(5)?.reasons[0]).toMatchObject({ rule: 'topdress.rich-soil', saw: { organicMatterPercent: 5 } });
      expect(at(4.9)?.supplies[0]?.amount?.value).toBe(75);
    });

    it('is none from 25 ppm of phosphorus, which is very high (Minnesota)', () => {
      expect(tested([{ on: '2026-10-01', phosphorusPpm: 25 }])).toBeUndefined();
      expect(tested([{ on: '2026-10-01', phosphorusPpm: 24 }])).toBeDefined();
    });

    it('goes by the bed’s own test before the garden’s, and by the newest', () => {
      const soilTests = [
        { on: '2024-10-01', bedId: 'a', phosphorusPpm: 60 },
        { on: '2026-10-01', bedId: 'a', phosphorusPpm: 12 },
        { on: '2026-11-01', phosphorusPpm: 80 },
      ];
      expect(tested(soilTests)).toBeDefined();
    });

    it('is none there even where the household names its own depth', () => {
      expect(tested([{ on: '2026-10-01', phosphorusPpm: 40, organicMatterPercent: 8 }], autumn)).toBeUndefined();
      expect(tested([{ on: '2026-10-01', phosphorusPpm: 24, organicMatterPercent: 8 }], autumn)).toBeDefined();
    });
  });

  it('carries a warning above an inch, with the building-up rate of two to three (common practice)', () => {
    const cautions = (depthMm: number) =>
      layers(garden({ startedOn: '2027-07-05', topdressing: { depthMm, season: 'autumn' } }))[0]?.cautions ?? [];
    expect(cautions(25)).toHaveLength(3);
    expect(cautions(25).at(-1)).toContain('lasting weedkiller');
    expect(cautions(50).at(-2)).toContain('⟦51 mm⟧ to ⟦76 mm⟧');
  });
});

describe('in autumn', () => {
  it('goes on from eight weeks before the first freeze until the ground freezes', () => {
    const stands = [cover('buckwheat', '2027-06-05', { cutOn: '2027-07-10' })];
    const mulches = [{ bedId: 'a', mulch: 'leaves' as const, from: '2027-07-18' }];
    const [task] = layers(garden({ ...autumn, startedOn: '2027-07-11', stands, mulches }));
    expect(task?.key).toBe('topdress/bed:a/2028/before-winter');
    expect(task?.window.earliest).toBe('2027-08-06');
    expect((task?.window.latest ?? '') > '2027-10-01').toBe(true);
  });

  it('waits for the crop, and goes on before the next one', () => {
    const plantings = [sown('carrot', '2027-05-01', { harvested: '2027-08-20' }), setOut('garlic', '2027-10-10')];
    const [task] = layers(garden({ ...autumn, startedOn: '2027-07-05', plantings }));
    expect(task?.window).toMatchObject({ earliest: '2027-08-21', latest: '2027-10-09' });
    expect(task?.after).toContainEqual({ key: 'bed-clear/planting:carrot-2027-05-01', minDays: 0 });
  });

  it('goes on in a bed that was free since spring', () => {
    const plantings = [sown('pea', '2027-04-15', { harvested: '2027-06-10' }), sown('pea', '2028-04-15')];
    expect(keys(garden({ ...autumn, startedOn: '2027-07-05', plantings }))[0]).toBe(
      'topdress/bed:a/2028/before-winter',
    );
  });

  it('goes under a cover still to be sown, and may open two weeks before that one does', () => {
    // Rye planned for 10 September may go in from 20 August to 1 October.
    const [task] = layers(garden({ ...autumn, startedOn: '2027-07-05', stands: [cover('cereal_rye', '2027-09-10')] }));
    expect(task?.window).toEqual({ earliest: '2027-08-06', preferred: '2027-08-20', latest: '2027-10-01' });
  });

  it('goes on after a summer cover is cut', () => {
    const of = garden({ ...autumn, startedOn: '2027-07-20', stands: [cover('buckwheat', '2027-07-15')] });
    const cut = draft(draftsIn(of, climate), 'cover-cut/stand:s');
    const [task] = layers(of);
    expect(task?.window.earliest).toBe(cut.window.latest);
    expect(task?.after).toContainEqual({ key: cut.key, minDays: 0 });
  });

  it('leaves a bed to spring that a cover already holds, or a crop until the hard freeze', () => {
    const place = { hardinessZone: '5b' };
    const covered = garden({ ...autumn, startedOn: '2027-09-05', place, stands: [cover('oats', '2027-08-20')] });
    const kale = garden({
      ...autumn,
      startedOn: '2027-09-05',
      plantings: [sown('kale', '2027-07-01', { harvested: '2027-12-20' })],
    });
    expect(keys(covered)[0]).toBe('topdress/bed:a/2028');
    expect(keys(kale)[0]).toBe('topdress/bed:a/2028');
  });
});

describe('in spring', () => {
  const awake = soilAwake(climate, 2028) ?? '';

  it('goes on for four weeks from the day the soil wakes', () => {
    // No cover is suggested among asparagus.
    const plantings = [setOut('asparagus', '2024-05-01')];
    const [task] = layers(garden({ ...spring, startedOn: '2027-09-05', plantings }));
    expect(task?.key).toBe('topdress/bed:a/2028');
    expect(task?.window).toEqual({ earliest: awake, preferred: addDays(awake, 21), latest: addDays(awake, 28) });
  });

  it('goes on a week before the first crop, also one that is sown before the soil wakes', () => {
    const late = layers(garden({ ...spring, startedOn: '2027-09-05', plantings: [setOut('tomato', '2028-05-25')] }))[0];
    const early = layers(garden({ ...spring, startedOn: '2027-09-05', plantings: [sown('pea', awake)] }))[0];
    expect(late?.window).toMatchObject({ earliest: awake, latest: '2028-05-18' });
    expect(early?.window).toMatchObject({ earliest: addDays(awake, -14), latest: addDays(awake, -7) });
  });

  it('goes on after a standing cover is cut', () => {
    const of = garden({ ...spring, startedOn: '2027-09-25', stands: [cover('cereal_rye', '2027-09-15')] });
    const cut = draft(draftsIn(of, climate), 'cover-cut/stand:s');
    const [task] = layers(of);
    expect(task?.after).toContainEqual({ key: cut.key, minDays: 0 });
    expect(task?.window.latest).toBe(addDays(cut.window.latest, 14));
  });

  it('does not make a planned rye, its cut and the compost wait for each other in a ring', () => {
    const of = garden({ ...spring, startedOn: '2027-07-05', stands: [cover('cereal_rye', '2027-09-15')] });
    expect(() => orderedWindows(draftsIn(of, climate))).not.toThrow();
  });

  it('feeds asparagus, whose bed is never free', () => {
    expect(
      keys(garden({ ...autumn, startedOn: '2027-09-05', plantings: [setOut('asparagus', '2024-05-01')] })),
    ).toEqual(['topdress/bed:a/2028']);
  });
});

describe('a bed that was served', () => {
  const given = (on: Day) => ({ topdressed: [{ bedId: 'a', on, litres: 39 }] });

  it('is not asked again for that season, whichever half of the year it was in', () => {
    expect(keys(garden({ ...autumn, ...given('2027-09-20'), startedOn: '2027-09-21' }))).toEqual([
      'topdress/bed:a/2029/before-winter',
    ]);
    expect(keys(garden({ ...spring, ...given('2027-09-20'), startedOn: '2027-09-21' }))).toEqual([]);
  });

  it('is asked again for the next', () => {
    expect(keys(garden({ ...autumn, ...given('2027-04-20'), startedOn: '2027-07-05' }))).toContain(
      'topdress/bed:a/2028/before-winter',
    );
  });

  it('is asked once a season all the year round', () => {
    for (const today of ['2027-06-30', '2027-07-01', '2027-07-02', '2027-12-31', '2028-01-01']) {
      const found = keys(garden({ ...autumn, startedOn: '2027-06-01' }), today).filter((key) => key.includes('/2028'));
      expect(found).toEqual(today > '2027-12-20' ? [] : ['topdress/bed:a/2028/before-winter']);
    }
  });
});

describe('where little is known', () => {
  it('says nothing of autumn without freeze dates, and goes by the soil in spring', () => {
    const of = garden({ ...autumn, startedOn: '2027-07-05' });
    const mild = inventedClimate({ normals: { ...milwaukee.normals } });
    expect(layers(of, mild).map(({ key }) => key)).toEqual(['topdress/bed:a/2028']);
  });

  it('says nothing at all where the soil never wakes', () => {
    const polar = inventedClimate({ normals: { tminC: Array(12).fill(-12), tmaxC: Array(12).fill(0) } });
    expect(layers(garden({ ...autumn, startedOn: '2027-07-05', beds: [bed('a'), bed('b')] }), polar)).toEqual([]);
  });
});
