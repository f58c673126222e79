import { describe, expect, it } from 'vitest';
import { countFreezes, freezesAt, seasonFreeze } from '../../src/climate/freeze-record.ts';
import { seasonsOfRows } from '../../src/climate/season-weather.ts';
import { rowsBetween, seasonOfTemps } from './invented.ts';

/** A season at 10 °C that freezes hard on some indices and has no reading on others. */
function seasonFreezingOn(freezing: readonly number[], missing: readonly number[] = []) {
  return seasonOfTemps(2027, (index) =>
    missing.includes(index) ? {} : { tminC: freezing.includes(index) ? -9 : 10, tmaxC: 20 },
  );
}

/** Indices from one to another. */
function span(from: number, to: number): number[] {
  return Array.from({ length: to - from + 1 }, (_, i) => from + i);
}

describe('a freezing night', () => {
  it('is compared in whole °F, so that 28 °F stored as −2.2 or −2.1 °C is a 28 °F freeze', () => {
    expect([-2.3, -2.2, -2.1].map((tminC) => freezesAt(tminC, 28))).toEqual([true, true, true]);
    expect([-1.9, -1.7].map((tminC) => freezesAt(tminC, 28))).toEqual([false, false]);
  });

  it('includes the limit itself', () => {
    expect([freezesAt(0, 32), freezesAt(0.6, 32)]).toEqual([true, false]);
    expect([freezesAt(-4.4, 24), freezesAt(-3.9, 24)]).toEqual([true, false]);
  });
});

describe('the freeze dates of one season', () => {
  it('are the last at or before index 212 and the first after it', () => {
    const season = seasonFreezingOn([3, 120, 212, 213, 290, 300]);
    expect(seasonFreeze('01-01', season, 'last-spring', 32)).toBe(212);
    expect(seasonFreeze('01-01', season, 'first-autumn', 32)).toBe(213);
  });

  it('are none where it does not freeze', () => {
    expect(seasonFreeze('01-01', seasonFreezingOn([]), 'last-spring', 24)).toBe('none');
    expect(seasonFreeze('01-01', seasonFreezingOn([]), 'first-autumn', 24)).toBe('none');
  });

  it('are not known when more than five days are missing after the spring date, up to 30 June', () => {
    expect(seasonFreeze('01-01', seasonFreezingOn([120], span(150, 154)), 'last-spring', 32)).toBe(120);
    expect(seasonFreeze('01-01', seasonFreezingOn([120], span(150, 155)), 'last-spring', 32)).toBe('unknown');
    expect(seasonFreeze('01-01', seasonFreezingOn([120], span(80, 119)), 'last-spring', 32)).toBe(120);
    expect(seasonFreeze('01-01', seasonFreezingOn([120], span(182, 212)), 'last-spring', 32)).toBe(120);
  });

  it('are not known when more than five days are missing from 15 August to the autumn date', () => {
    expect(seasonFreeze('01-01', seasonFreezingOn([280], span(240, 244)), 'first-autumn', 32)).toBe(280);
    expect(seasonFreeze('01-01', seasonFreezingOn([280], span(240, 245)), 'first-autumn', 32)).toBe('unknown');
    expect(seasonFreeze('01-01', seasonFreezingOn([280], span(213, 226)), 'first-autumn', 32)).toBe(280);
    expect(seasonFreeze('01-01', seasonFreezingOn([280], span(281, 365)), 'first-autumn', 32)).toBe(280);
  });

  it('are not called none where days are missing', () => {
    expect(seasonFreeze('01-01', seasonFreezingOn([], span(1, 6)), 'last-spring', 32)).toBe('unknown');
    expect(seasonFreeze('01-01', seasonFreezingOn([], span(360, 365)), 'first-autumn', 32)).toBe('unknown');
  });

  it('see a freeze on 29 February, in the south in autumn', () => {
    const rows = rowsBetween('2027-07-01', '2028-06-30', (day) => (day === '2028-02-29' ? { tminC: -1 } : {}));
    const [season] = seasonsOfRows('07-01', rows, 0);
    expect(season && seasonFreeze('07-01', season, 'first-autumn', 32)).toBe(243);
  });
});

describe('freeze dates over seasons', () => {
  const seasons = [
    seasonFreezingOn([130]),
    seasonFreezingOn([110]),
    seasonFreezingOn([]),
    seasonFreezingOn([5], span(100, 120)),
  ];
  const ask = { event: 'last-spring', limitF: 32, offsetDays: 0 } as const;

  it('are sorted, count seasons without a freeze and leave out those that cannot tell', () => {
    expect(countFreezes('01-01', seasons, ask)).toEqual({ kind: 'counted', indices: [110, 130], seasonsUsed: 3 });
  });

  it('move inwards at both ends of the season by the offset', () => {
    const both = [seasonFreezingOn([130, 280])];
    expect(countFreezes('01-01', both, { ...ask, offsetDays: 4 })).toMatchObject({ indices: [134] });
    expect(countFreezes('01-01', both, { ...ask, event: 'first-autumn', offsetDays: 4 })).toMatchObject({
      indices: [276],
    });
  });

  it('are none where no season has the freeze', () => {
    expect(countFreezes('01-01', [seasonFreezingOn([])], ask)).toEqual({ kind: 'none' });
  });
});
