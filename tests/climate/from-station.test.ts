import { describe, expect, it } from 'vitest';
import { freezeDay } from '../../src/climate/freeze.ts';
import { climateFromStation, climateFromStations } from '../../src/climate/from-station.ts';
import { nearestStations } from '../../src/climate/stations.ts';
import { InputRefused } from '../../src/garden/problem.ts';
import { inventedStation, yearRoundStation } from './invented.ts';
import { NO_OFFSETS } from './real-data.ts';

const garden = { latitude: 44, longitude: 0, elevationM: 200, ...NO_OFFSETS };
const spring = { event: 'last-spring', season: 2027 } as const;
const autumn = { event: 'first-autumn', season: 2027 } as const;

describe('the climate of a named station', () => {
  const climate = climateFromStation(inventedStation('Hill Farm', 44.1), garden);

  it('gives its published dates back to the day, 50 and 90 %', () => {
    expect(freezeDay(climate, { ...spring, limitF: 32, chancePercent: 50 })).toBe('2027-05-10');
    expect(freezeDay(climate, { ...spring, limitF: 32, chancePercent: 90 })).toBe('2027-04-25');
    expect(freezeDay(climate, { ...autumn, limitF: 32, chancePercent: 50 })).toBe('2027-09-28');
    expect(freezeDay(climate, { ...autumn, limitF: 32, chancePercent: 90 })).toBe('2027-10-12');
  });

  it('mirrors the cautious date and says so', () => {
    expect(freezeDay(climate, { ...spring, limitF: 32, chancePercent: 10 })).toBe('2027-05-25');
    expect(freezeDay(climate, { ...autumn, limitF: 32, chancePercent: 10 })).toBe('2027-09-14');
    expect(climate.notes[0]).toMatch('mirrored from the published 50 and 90 % dates');
  });

  it('derives harder freezes outside them and says so', () => {
    const at28 = freezeDay(climate, { ...spring, limitF: 28, chancePercent: 50 }) ?? '';
    const at24 = freezeDay(climate, { ...spring, limitF: 24, chancePercent: 50 }) ?? '';
    expect(at24 < at28 && at28 < '2027-05-10').toBe(true);
    expect(climate.notes[1]).toMatch('28 and 24 °F are derived');
  });

  it('says where it comes from and how far off that is', () => {
    expect(climate.origin).toBe('NOAA normals of 1981–2010 at Hill Farm, XX, ⟦11 km⟧ away.');
    expect([climate.basis, climate.confidence, climate.seasons]).toEqual(['station', 'modelled', []]);
  });

  it('leaves its dates as they are at another height, and warns above 300 m', () => {
    const high = climateFromStation(inventedStation('Valley', 44), { ...garden, elevationM: 501 });
    expect(high.freezes).toEqual(climateFromStation(inventedStation('Valley', 44), garden).freezes);
    expect(high.notes.at(-1)).toBe(
      'Valley, XX lies ⟦301 m⟧ below the garden: its spring date can be more than two weeks off.',
    );
    expect(climateFromStation(inventedStation('Valley', 44), { ...garden, elevationM: 500 }).notes).toHaveLength(2);
  });

  it('owns up to a height it does not know, a patched record and a great distance', () => {
    const { elevationM: _, ...flat } = garden;
    const { notes } = climateFromStation(inventedStation('Far', 45.5, { flag: 'R' }), flat);
    expect(notes.slice(2)).toEqual([
      'Its record is incomplete and was scaled to stand for the thirty years.',
      "The garden's height is not known, so no date is corrected for it.",
      "It is ⟦167 km⟧ away: its dates may not be the garden's.",
    ]);
  });

  it('has no dates where a freeze can come in any month, or where they wrap the year', () => {
    const cold = climateFromStation(yearRoundStation('Cold Hollow', 44), garden);
    expect(cold.freezes[32]['last-spring']).toEqual({ kind: 'none' });
    expect(cold.notes[0]).toBe(
      'A freeze can come there in any month, so there is no date; half of years have 61 days without one.',
    );
    const mild = climateFromStation(inventedStation('Coast', 44, { wrapsYear: true }), garden);
    expect(mild.freezes[32]['first-autumn']).toEqual({ kind: 'none' });
    expect(mild.notes[0]).toMatch('run over the turn of the year');
    expect(mild.normals.tminC[6]).toBe(16);
  });

  it('is refused across the equator, with the latitudes shown', () => {
    const across = () => climateFromStation(inventedStation('a', 44), { ...garden, latitude: -44 });
    expect(across).toThrow(InputRefused);
    expect(across).toThrow('a, XX lies at latitude 44 and the garden at -44');
  });

  it('takes the garden’s own degrees into dates and months', () => {
    const pocket = climateFromStation(inventedStation('a', 44), { ...garden, tempOffsetC: -1 });
    expect(pocket.normals.tminC[0]).toBe(-12);
    expect((freezeDay(pocket, { ...spring, limitF: 32, chancePercent: 50 }) ?? '') > '2027-05-12').toBe(true);
    expect((freezeDay(pocket, { ...autumn, limitF: 32, chancePercent: 50 }) ?? '') < '2027-09-26').toBe(true);
  });
});

describe('the climate of the nearest stations together', () => {
  const around = [
    inventedStation('a', 44, { elevationM: 300, lastSpringP50: '05-12', lastSpringP90: '04-27' }),
    inventedStation('b', 44.01),
  ];
  const climate = climateFromStations(nearestStations(around, garden, 6), garden);

  it('is the weighted mean at the garden’s height', () => {
    // (12 May − 3.8 days + 10 May)/2 = 9.1 May; both within 5 km.
    expect(freezeDay(climate, { ...spring, limitF: 32, chancePercent: 50 })).toBe('2027-05-09');
    expect([climate.basis, climate.confidence]).toEqual(['weighted-stations', 'derived']);
    expect(climate.origin).toBe('NOAA normals of 1981–2010, weighted mean of a, XX (⟦0 km⟧), b, XX (⟦1 km⟧).');
  });

  it('warms the months of a station that lies higher', () => {
    expect(climate.normals.tminC[0]).toBeCloseTo(-11 + 0.43 / 2, 9);
    expect(climate.normals.tmaxC[0]).toBeCloseTo(-1 + 0.64 / 2, 9);
  });

  it('takes rain from those that measure it', () => {
    expect(climate.normals.rainMm).toBeUndefined();
    const wet = inventedStation('w', 44.02, {
      normals: { ...inventedStation('w', 44).normals, rainMm: Array(12).fill(50) },
    });
    const { normals } = climateFromStations(nearestStations([...around, wet], garden, 6), garden);
    expect(normals.rainMm?.[3]).toBeCloseTo(50, 9);
  });

  it('leaves out stations without dates, by name', () => {
    const near = nearestStations([...around, yearRoundStation('Cold Hollow', 44.3)], garden, 6);
    const { notes, freezes } = climateFromStations(near, garden);
    expect(freezes[32]['last-spring'].kind).toBe('stated');
    expect(notes.some((note) => note.startsWith('Cold Hollow, XX is left out of the dates.'))).toBe(true);
  });

  it('gives no dates where most of the weight lies with stations that have none', () => {
    const near = nearestStations([inventedStation('a', 44.3), yearRoundStation('Cold Hollow', 44.01)], garden, 6);
    const { notes, freezes } = climateFromStations(near, garden);
    expect(freezes[32]['last-spring']).toEqual({ kind: 'none' });
    expect(notes).toEqual([
      'Cold Hollow, XX is left out of the dates. A freeze can come there in any month, so there is no date; half of years have 61 days without one.',
    ]);
  });

  it('refuses a garden without a station within 100 km', () => {
    const far = () => climateFromStations(nearestStations([inventedStation('a', 46)], garden, 6), garden);
    expect(far).toThrow(InputRefused);
    expect(far).toThrow('The nearest station is 222 km away; 100 km is the most. Check the sign of the longitude');
    expect(() => climateFromStations([], garden)).toThrow('The station table is empty.');
  });
});
