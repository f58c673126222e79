import { describe, expect, it } from 'vitest';
import { germinationByVegetable, germinationTemperatures } from '../../src/handbook/germination.ts';
import { hardinessZones } from '../../src/handbook/hardiness-zones.ts';
import { rotationIntervals } from '../../src/handbook/rotation.ts';
import { soilTextureById, soilTextures } from '../../src/handbook/soil-textures.ts';
import { vegetableById, vegetables } from '../../src/handbook/vegetables.ts';

describe('soil textures', () => {
  it('are the nine of FAO-56 Table 19', () => {
    expect(soilTextures).toHaveLength(9);
    // Loam 0.20–0.30 and 0.07–0.17; clay 0.32–0.40 and 0.20–0.24 m³/m³.
    expect(soilTextureById.get('loam')).toMatchObject({
      fieldCapacity: { low: 0.2, high: 0.3 },
      wiltingPoint: { low: 0.07, high: 0.17 },
    });
    expect(soilTextureById.get('clay')).toMatchObject({
      fieldCapacity: { low: 0.32, high: 0.4 },
      wiltingPoint: { low: 0.2, high: 0.24 },
    });
  });

  it('hold more at field capacity than at the wilting point', () => {
    for (const { id, fieldCapacity, wiltingPoint } of soilTextures) {
      expect(fieldCapacity.low, id).toBeGreaterThan(wiltingPoint.low);
      expect(fieldCapacity.high, id).toBeGreaterThan(wiltingPoint.high);
    }
  });
});

describe('hardiness zones', () => {
  it('are twenty-six halves without gap or overlap', () => {
    expect(hardinessZones).toHaveLength(26);
    hardinessZones.forEach((zone, index) => {
      expect(zone.belowF - zone.fromF, zone.zone).toBe(5);
      expect(zone.fromF, zone.zone).toBe(-60 + 5 * index);
      expect(zone.zone).toBe(`${Math.floor(index / 2) + 1}${index % 2 === 0 ? 'a' : 'b'}`);
    });
  });

  it.each([
    ['1a', -60],
    ['4a', -30],
    ['5b', -15],
    ['6b', -5],
    ['13b', 65],
  ])('%s begins at %d °F', (name, fromF) => {
    expect(hardinessZones.find(({ zone }) => zone === name)?.fromF).toBe(fromF);
  });
});

describe('germination', () => {
  it('has each vegetable once, and only vegetables there are', () => {
    const ids = germinationTemperatures.flatMap((row) => row.vegetableIds);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.map((id) => vegetableById(id).id)).toEqual(ids);
  });

  it('rises from the least to the most', () => {
    for (const { crop, minC, optimumC, maxC } of germinationTemperatures) {
      const rising = [minC, optimumC?.low, optimumC?.high, maxC].filter((tempC) => tempC !== undefined);
      expect(rising, crop).toEqual(rising.toSorted((a, b) => a - b));
    }
  });

  it('agrees with the vegetables on the least temperature, except for kinds with a figure of their own', () => {
    const own = ['edamame', 'basil', 'cilantro', 'dill', 'fennel-bulb'];
    for (const [id, row] of germinationByVegetable) {
      if (!own.includes(id)) expect(vegetableById(id).soilMinC, id).toBe(row.minC);
    }
  });

  it('does not let the misprint of pepper stand', () => {
    // UC prints 65–75 °F; the University of Florida gives 85 °F.
    expect(germinationByVegetable.get('pepper')?.optimumC).toEqual({
      low: 29.4,
      high: 29.4,
    });
  });

  it('covers every kind sown from seed in the open that has published figures', () => {
    const without = vegetables.filter(
      (crop) => crop.establish !== 'transplant' && !germinationByVegetable.has(crop.id),
    );
    // Sets, cloves and tubers, and four with remembered figures only.
    expect(without.map((crop) => crop.id).toSorted()).toEqual([
      'chives',
      'fava-bean',
      'garlic',
      'jerusalem-artichoke',
      'onion-sets',
      'potato',
      'rutabaga',
      'shallot',
    ]);
  });
});

describe('rotation intervals', () => {
  it('hold the interval that each vegetable is planned by', () => {
    for (const { id, rotationGroup, rotationYears } of vegetables) {
      const interval = rotationIntervals.find((row) => row.group === rotationGroup);
      if (interval === undefined || rotationYears === 99) continue;
      expect(rotationYears, id).toBeGreaterThanOrEqual(interval.years.low);
      expect(rotationYears, id).toBeLessThanOrEqual(interval.years.high);
    }
  });
});
