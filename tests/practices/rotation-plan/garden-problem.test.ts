import { describe, expect, it } from 'vitest';
import type { Garden } from '../../../src/garden/garden.ts';
import { gardenProblem } from '../../../src/practices/rotation-plan/garden-problem.ts';
import { bed, cover, frostDates, garden, inputOf, setOut, sown } from '../gardens.ts';

const north = frostDates('05-10', '10-01');
const south = frostDates('10-20', '04-20', -43);

const TOMATO = { cropId: 'tomato', amount: { areaM2: 3 } };

function problemOf(
  parts: Parameters<typeof garden>[0],
  { today = '2026-11-25', climate = north, years = 1, anew = false } = {},
) {
  const of: Garden = garden({ startedOn: today, ...parts });
  return gardenProblem(inputOf(of, climate, today), { years, anew });
}

describe('the seasons planned', () => {
  it('begin with the one that work done now prepares for', () => {
    expect(problemOf({}).seasons).toEqual([2027]);
    expect(problemOf({}, { today: '2027-05-01', years: 3 }).seasons).toEqual([2027, 2028, 2029]);
    expect(problemOf({}, { today: '2027-07-20' }).seasons).toEqual([2028]);
  });

  it('are counted and named from July in the south', () => {
    const { seasons, seasonNames } = problemOf({}, { today: '2027-02-01', climate: south, years: 2 });
    expect(seasons).toEqual([2027, 2028]);
    expect(seasonNames[2027]).toBe('2027/28');
    expect(problemOf({}, { today: '2027-10-01', climate: south }).seasons).toEqual([2027]);
  });

  it('turn at New Year, a leap day being a day of its year', () => {
    expect(problemOf({}, { today: '2028-02-29' }).seasons).toEqual([2028]);
  });
});

describe('wishes', () => {
  it('hold for every season, unless one names the year', () => {
    const wishes = [TOMATO, { cropId: 'tomato', amount: { beds: 2 }, season: 2028 }];
    expect(problemOf({ wishes }, { years: 2 }).wishes).toEqual([
      { cropId: 'tomato', season: 2027, amount: { areaM2: 3 } },
      { cropId: 'tomato', season: 2028, amount: { beds: 2 } },
    ]);
  });
});

describe('a bed', () => {
  const bedA = (parts: Parameters<typeof garden>[0], how = {}) => problemOf(parts, how).beds[0];

  it('has what it carried by season, garlic counted to the season it grows in', () => {
    const plantings = [
      setOut('kale', '2025-05-01', { harvested: '2025-09-01' }),
      sown('garlic', '2025-10-20', { harvested: '2026-07-10' }),
    ];
    expect(bedA({ plantings })).toMatchObject({
      areaM2: 3,
      knownSince: 2025,
      carried: [
        { season: 2025, cropId: 'kale' },
        { season: 2026, cropId: 'garlic' },
      ],
    });
  });

  it('keeps its lasting crop, which is no history', () => {
    const held = bedA({ plantings: [setOut('asparagus', '2020-04-20')] });
    expect(held).toMatchObject({ lasting: 'asparagus', carried: [] });
  });

  it('keeps what is planned, unless the plan is made anew; what is in the ground stays', () => {
    const plantings = [sown('garlic', '2026-10-20'), setOut('tomato', '2027-06-01', { bedId: 'b' })];
    const beds = [bed('a'), bed('b')];
    const settled = problemOf({ beds, plantings }).beds.map(({ carried }) => carried.length);
    const anew = problemOf({ beds, plantings }, { anew: true }).beds.map(({ carried }) => carried.length);
    expect([settled, anew]).toEqual([
      [1, 1],
      [1, 0],
    ]);
  });

  it('is closed to the hosts of a disease as long as the disease says', () => {
    const diseases = [{ bedId: 'a', cropId: 'cabbage', disease: 'clubroot', on: '2025-07-01' }];
    const closed = bedA({ diseases, wishes: [TOMATO] })?.closed ?? [];
    // Clubroot: seven years without hosts, turnip and radish included (veg:V12).
    expect(closed.find(({ cropId }) => cropId === 'kale')).toMatchObject({
      season: 2027,
      disease: 'clubroot',
      why: { saw: { until: '2032-07-01' } },
    });
    expect(closed.some(({ cropId }) => cropId === 'turnip')).toBe(true);
    expect(closed.some(({ cropId }) => cropId === 'tomato')).toBe(false);
  });

  it('has a cover counted to the crops that follow it', () => {
    const stands = [cover('cereal_rye', '2026-09-20', { id: 'r' }), cover('mustard', '2026-04-10', { id: 'm' })];
    expect(bedA({ stands })?.covers).toEqual([
      { season: 2027, coverId: 'cereal_rye' },
      { season: 2026, coverId: 'mustard' },
    ]);
    const inSouth = bedA({ stands: [cover('cereal_rye', '2027-03-20')] }, { today: '2027-04-01', climate: south });
    expect(inSouth?.covers).toEqual([{ season: 2027, coverId: 'cereal_rye' }]);
  });
});

describe('sick ground', () => {
  it('is held against a planned crop by its own day', () => {
    // Verticillium wilt keeps its hosts out for four years (veg:V12): until 2027-06-20.
    const diseases = [{ bedId: 'a', cropId: 'tomato', disease: 'verticillium-wilt', on: '2023-06-20' }];
    const isClosed = (on: string) => {
      const [bedA] = problemOf({ diseases, plantings: [setOut('tomato', on)] }).beds;
      return bedA?.closed.some(({ cropId, season }) => cropId === 'tomato' && season === 2027);
    };
    expect([isClosed('2027-06-01'), isClosed('2027-07-02')]).toEqual([true, false]);
  });
});
