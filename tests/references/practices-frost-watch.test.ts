/**
 * Frost watch against what was published elsewhere: damage temperatures, cover gains, the hour of sunset.
 */
import { describe, expect, it } from 'vitest';
import { frostCovers } from '../../src/handbook/frost-covers.ts';
import { vegetableById } from '../../src/handbook/vegetables.ts';
import { coverHour, ON_BEFORE_SUNSET_MINUTES } from '../../src/practices/frost-watch/hours.ts';
import { expected, september, tonight } from '../practices/frost-watch/gardens.ts';
import { garden, setOut, sown } from '../practices/gardens.ts';

describe('growing plants, frost damage by crop and part (PMC10202904, Table 2, agro:S53)', () => {
  // Where the band of a growing plant begins, °C. Tomato and cucumber begin at +5, which is chilling and no frost: 0.
  it.each([
    ['tomato', 0],
    ['cucumber', 0],
    ['potato', 0],
    ['snap-bean', 0],
    ['sweet-corn', 0],
    ['muskmelon', 0],
    ['cauliflower', -2],
    ['broccoli', -2],
    ['pea', -2],
    ['lettuce-leaf', -2],
    ['lettuce-head', -2],
  ])('%s is looked after from %f °C, or warmer where its class says so', (id, bandBeginsC) => {
    expect(vegetableById(id).damageTempC).toBeGreaterThanOrEqual(bandBeginsC);
  });

  it('cabbage, carrot, onion, kale, parsnip: bands begin at −4, so no cover is asked for at −1.5', () => {
    const plantings = ['cabbage', 'carrot', 'onion-seed', 'kale', 'parsnip'].map((id) => sown(id, '2027-07-01'));
    expect(tonight(september({ plantings, coldNights: [expected(-1.5)] }))).toBeUndefined();
  });

  it('a forecast of 5 °C covers no tomato', () => {
    const plantings = [setOut('tomato', '2027-06-01')];
    expect(tonight(september({ plantings, coldNights: [expected(5)] }))).toBeUndefined();
  });
});

describe('what covers gain', () => {
  const gainF = (kind: string) => ((frostCovers.find((row) => row.kind === kind)?.gainC ?? Number.NaN) * 9) / 5;

  it('light fabric: inside the means of two springs of trials, +0.9 to +3.3 °F (Oregon State, agro:S57)', () => {
    expect(gainF('light-fabric')).toBeGreaterThanOrEqual(0.9);
    expect(gainF('light-fabric')).toBeLessThanOrEqual(3.3);
  });

  it('heavy fabric: no more than about 5 °F; with film on hoops no more than 9 °F (Penn State, agro:S59)', () => {
    expect(gainF('heavy-fabric')).toBeLessThanOrEqual(5);
    expect(gainF('fabric-and-film')).toBeLessThanOrEqual(9);
  });

  it('never what sellers claim of one fabric: 4 to 8 °F', () => {
    expect(gainF('light-fabric')).toBeLessThan(4);
    expect(gainF('heavy-fabric')).toBeLessThan(4);
  });
});

describe('the hour of sunset', () => {
  // USNO for 39.0 N 105.0 W, in Mountain Standard Time, as carried by the NREL comparison; its carrier states ±150 s.
  it.each([
    ['2015-04-02', '2015-04-03T01:24:00.000Z'],
    ['2015-08-02', '2015-08-03T02:10:00.000Z'],
    ['2015-12-02', '2015-12-02T23:38:00.000Z'],
  ])('on %s covers are on half an hour before the published one', (evening, sunset) => {
    const { place } = garden({ place: { latitude: 39, longitude: -105, timeZone: 'America/Denver' } });
    const at = coverHour(place, evening, 15);
    const end = Date.parse(at?.from ?? '') / 60_000 + (at?.minutes ?? 0);
    const minutesLeft = Date.parse(sunset) / 60_000 - end;
    // Half an hour, up to five minutes for the round clock, three for the tables.
    expect(minutesLeft).toBeGreaterThan(ON_BEFORE_SUNSET_MINUTES - 3);
    expect(minutesLeft).toBeLessThan(ON_BEFORE_SUNSET_MINUTES + 5 + 3);
  });
});
