import { describe, expect, it } from 'vitest';
import { freezeOdds } from '../../src/climate/freeze.ts';
import { climateFromNormals } from '../../src/climate/from-normals.ts';
import { NO_OFFSETS } from './real-data.ts';

/** Monthly means of an invented place with cold winters. */
const LOW = [-11, -9, -4, 2, 8, 13, 16, 15, 10, 4, -2, -8];
const invented = {
  latitude: 44,
  longitude: 0,
  highC: LOW.map((tempC) => tempC + 11),
  lowC: LOW,
  precipMm: Array(12).fill(70),
  ...NO_OFFSETS,
};
const season = { limitF: 32, season: 2027 } as const;

describe('a climate from monthly means', () => {
  const climate = climateFromNormals(invented);

  it('has its freeze dates where the minimum passes the level of other places', () => {
    // Warmest 16: 3.4 + 1.6 = 5.0 °C in spring, half way from mid-April (105.5) to mid-May (136): 120.75, 1 May;
    // 2.2 + 3.2 = 5.4 °C in autumn, 4.6/6 of the way from mid-September (258.5) to mid-October (289): 281.9, 9 October.
    expect(freezeOdds(climate, { ...season, event: 'last-spring' }).median).toBe('2027-05-01');
    expect(freezeOdds(climate, { ...season, event: 'first-autumn' }).median).toBe('2027-10-09');
  });

  it('has the spread of the median station: two weeks and thirteen days to one year in ten', () => {
    const { early, late } = freezeOdds(climate, { ...season, event: 'last-spring' });
    expect([early, late]).toEqual(['2027-04-17', '2027-05-15']);
    expect(freezeOdds(climate, { ...season, event: 'first-autumn' }).early).toBe('2027-09-26');
  });

  it('calls itself derived and says how good it is', () => {
    expect([climate.basis, climate.confidence]).toEqual(['monthly-normals', 'derived']);
    expect(climate.notes[0]).toMatch('No freeze date is published here');
    expect(climate.normals.rainMm?.[0]).toBe(70);
  });

  it('warns nearer the equator than 40°', () => {
    expect(climateFromNormals({ ...invented, latitude: 37 }).notes[1]).toMatch('the last freeze comes later');
    expect(climate.notes.some((note) => note.includes('equator'))).toBe(false);
  });

  it('is the same half a year later in the south', () => {
    const turned = (monthly: readonly number[]) => [...monthly.slice(6), ...monthly.slice(0, 6)];
    const south = climateFromNormals({ ...invented, latitude: -44, lowC: turned(LOW), highC: turned(invented.highC) });
    expect(freezeOdds(south, { ...season, event: 'last-spring' }).median).toBe('2027-10-31');
    expect(freezeOdds(south, { ...season, event: 'first-autumn' }).median).toBe('2028-04-08');
  });

  it('has no freeze dates where it never freezes or never stops', () => {
    const warm = climateFromNormals({ ...invented, lowC: LOW.map((tempC) => tempC + 30) });
    expect(warm.freezes[32]['last-spring']).toEqual({ kind: 'none' });
    expect(warm.notes[0]).toMatch('no freeze date');
    const frozen = climateFromNormals({ ...invented, lowC: LOW.map((tempC) => tempC - 16) });
    expect(frozen.freezes[32]['first-autumn']).toEqual({ kind: 'none' });
  });

  it('takes the garden’s own degrees and days in once', () => {
    const warmer = climateFromNormals({ ...invented, tempOffsetC: 2 });
    expect(warmer.normals.tminC[0]).toBe(-9);
    // Level 3.4 + 1.8 = 5.2 °C on minima 2 °C up: 1.2/6 of the way from mid-April.
    expect(freezeOdds(warmer, { ...season, event: 'last-spring' }).median).toBe('2027-04-22');
    const pocket = climateFromNormals({ ...invented, frostOffsetDays: 3 });
    expect(freezeOdds(pocket, { ...season, event: 'last-spring' }).median).toBe('2027-05-04');
  });
});
