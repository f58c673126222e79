/**
 * Heat to the flowers of covers at places and dates published elsewhere, and the rules of autumn sowing from a killing frost.
 *
 * The check values of the two reference tables that are not here stand in climate-heat, practices-cutting, practices-sowing,
 * practices-cover-heat, -nitrogen and -winter, and in tests/handbook.
 */
import { describe, expect, it } from 'vitest';
import { climateFromStation } from '../../src/climate/from-station.ts';
import { usualHeatBetween } from '../../src/climate/heat-left.ts';
import { bloomModels } from '../../src/handbook/cover-blooms.ts';
import { addDays, type Day, daysBetween } from '../../src/measures/days.ts';
import { sowWindow } from '../../src/practices/cover-cropping/sow-window.ts';
import { coverParts } from '../../src/practices/covers.ts';
import { NO_OFFSETS, stationById } from '../climate/real-data.ts';
import { frostDates, garden, inputOf } from '../practices/gardens.ts';

const GENEVA = 'USC00303184';
const LAMBERTON = 'USC00214546';
const ST_PAUL = 'USC00218450';
const ROSEAU = 'USC00217087';

const ARLINGTON = 'USC00470308';
const SOUTH_HERO = 'USC00437607';

const climates = new Map(
  [GENEVA, LAMBERTON, ST_PAUL, ROSEAU, ARLINGTON, SOUTH_HERO].map((id) => {
    const station = stationById(id);
    const { latitude, longitude } = station;
    return [id, climateFromStation(station, { latitude, longitude, ...NO_OFFSETS })] as const;
  }),
);

/** Heat from a day to another, both counted, by the monthly means of a station with their spread. */
function heat(id: string, [from, to]: readonly [Day, Day], baseC: number): number {
  const climate = climates.get(id);
  if (climate === undefined) throw new Error(`no climate for ${id}`);
  return usualHeatBetween(climate, [addDays(from, -1), to], { baseC, method: 'mean-over-base' });
}

/** Two days' heat at the end of May, °C·d: ours is that much short of a smoother curve with more spread. */
const TWO_DAYS = 24;

function dayReached(id: string, from: Day, sum: number, baseC: number): Day {
  let day = from;
  while (heat(id, [from, day], baseC) < sum) day = addDays(day, 1);
  return day;
}

describe('rye flowers in the first week of June at Arlington, Wisconsin (phenology:P20)', () => {
  it.each([
    ['2027-06-01', 421],
    ['2027-06-04', 458],
    ['2027-06-06', 483],
  ])('to %s %d °C·d over 4.4 °C within two days (worked out once apart from this program)', (day, units) => {
    expect(Math.abs(heat(ARLINGTON, ['2027-01-01', day], 4.4) - units)).toBeLessThanOrEqual(TWO_DAYS);
  });

  it('by the sum that rye is reckoned by here, and the last of its range within two days of 9 June', () => {
    const sum = bloomModels.find(({ coverId }) => coverId === 'cereal_rye')?.heat?.sum;
    const flowers = dayReached(ARLINGTON, '2027-01-01', sum?.usual ?? Number.NaN, 4.4);
    expect(flowers >= '2027-06-01' && flowers <= '2027-06-07', flowers).toBe(true);
    const last = dayReached(ARLINGTON, '2027-01-01', sum?.high ?? Number.NaN, 4.4);
    expect(Math.abs(daysBetween('2027-06-09', last))).toBeLessThanOrEqual(2);
  });
});

describe('rye flowers at the end of May or in early June at Alburgh, Vermont (phenology:P21), by South Hero’s means', () => {
  it.each([
    ['2027-05-28', 374],
    ['2027-06-01', 422],
    ['2027-06-05', 472],
  ])('to %s %d °C·d over 4.4 °C within two days (worked out once apart from this program)', (day, units) => {
    expect(Math.abs(heat(SOUTH_HERO, ['2027-01-01', day], 4.4) - units)).toBeLessThanOrEqual(TWO_DAYS);
  });
});

describe('rye must have 309 °C·d over 4.4 °C by the end of the year to flower on time (Minnesota, phenology:P1)', () => {
  function lastSowing(id: string, baseC: number): Day {
    let day = '2027-11-01';
    while (heat(id, [day, '2027-12-31'], baseC) < 309) day = addDays(day, -1);
    return day;
  }

  it.each([
    [LAMBERTON, '2027-09-17', '2027-09-20', 'the south'],
    [ST_PAUL, '2027-09-23', '2027-09-20', 'the south'],
    [ROSEAU, '2027-09-05', '2027-09-08', 'the north'],
  ])('at %s: sown by %s, published about %s in %s', (id, worked, published) => {
    const day = lastSowing(id, 4.4);
    expect(Math.abs(daysBetween(worked, day)), day).toBeLessThanOrEqual(2);
    expect(Math.abs(daysBetween(published, day)), day).toBeLessThanOrEqual(4);
  });

  it('and not over 0 °C: that would leave it two weeks more', () => {
    for (const id of [LAMBERTON, ST_PAUL, ROSEAU])
      expect(daysBetween(lastSowing(id, 4.4), lastSowing(id, 0)), id).toBeGreaterThanOrEqual(14);
  });
});

describe('mustard at Geneva, New York (Cornell, cover:S4e, cover:S4h), base 5 °C', () => {
  it('sown on 15 April has its 350 °C·d about 31 May; published late May or early June', () => {
    const day = dayReached(GENEVA, '2027-04-15', 350, 5);
    expect(Math.abs(daysBetween('2027-05-31', day)), day).toBeLessThanOrEqual(2);
  });

  it.each([
    ['2027-08-01', 28],
    ['2027-08-15', 32],
    ['2027-08-30', 44],
  ])('sown on %s has 450 °C·d in %d days; published four to six weeks from a sowing in early August', (sown, days) => {
    expect(Math.abs(daysBetween(sown, dayReached(GENEVA, sown, 450, 5)) - days)).toBeLessThanOrEqual(2);
  });
});

describe('with a killing frost on 15 October, taken as the freeze that windows are counted from', () => {
  function autumn(coverId: string) {
    const found = sowWindow(coverParts(coverId), 'autumn', 2027, inputOf(garden(), frostDates('05-01', '10-15')));
    if (found === undefined) throw new Error(`no window for ${coverId}`);
    return found.window;
  }

  it('hairy vetch may be sown from 31 August, 45 days before, and not after 15 September, 30 days (cover:S1)', () => {
    const { earliest, latest } = autumn('hairy_vetch');
    expect(earliest <= '2027-08-31').toBe(true);
    expect(latest).toBe('2027-09-15');
  });

  it('crimson clover is sown from 16 August, 60 days before (cover:S30)', () => {
    expect(autumn('crimson_clover').earliest).toBe('2027-08-16');
  });
});
