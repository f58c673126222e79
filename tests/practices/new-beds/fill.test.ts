import { describe, expect, it } from 'vitest';
import { LITRES_PER_CUBIC_FOOT, LITRES_PER_CUBIC_YARD, M2_PER_SQUARE_FOOT } from '../../../src/measures/units.ts';
import { bedFill } from '../../../src/practices/bed-fill.ts';
import { fillMinutes } from '../../../src/practices/new-beds/fill-draft.ts';

const BED = { lengthM: 2.4, widthM: 1.2, depthM: 0.3 };

describe('a bed of 2.4 by 1.2 m, 0.3 m deep, with 2 m² of path', () => {
  const fill = bedFill({ ...BED, pathsM2: 2 }, { freeCompostL: 50 });

  it('holds 864 L: 2.4 × 1.2 × 0.3 m', () => {
    expect(fill.volumeL).toBe(864);
  });

  it('gets 101 L of topsoil from 2 in of path, and would get 152 L from 3 in', () => {
    // 2 m² × 50.8 mm, and × 76.2 mm.
    expect([fill.topsoilL, fill.topsoilMostL]).toEqual([101, 152]);
  });

  it('wants 840 L brought loose: 763 L and a tenth more, since that sinks', () => {
    expect([fill.restL, fill.looseL]).toEqual([763, 840]);
  });

  it('may have 219 L of compost, 3 in over 2.88 m²; the yard spares 50 L, and 790 L are bought', () => {
    expect(fill).toMatchObject({ compostMostL: 219, compostBy: 'depth', compostL: 50, mixL: 790 });
  });

  it('is moved in about an hour and three quarters: 0.941 m³ at 111 minutes, and five to begin', () => {
    expect(fill.movedL).toBe(941);
    expect(fillMinutes(fill)).toBe(110);
  });
});

describe('a bed of 8 by 4 ft, 12 in deep', () => {
  const fill = bedFill({ lengthM: 2.4384, widthM: 1.2192, depthM: 0.3048, pathsM2: 0 });

  it('holds 32 cubic feet, and without a path all of it is brought', () => {
    expect(fill.volumeL / LITRES_PER_CUBIC_FOOT).toBeCloseTo(32, 1);
    expect(fill.topsoilL).toBe(0);
    expect(fill.mixL / LITRES_PER_CUBIC_FOOT).toBeCloseTo(35.2, 1);
  });

  it('may have 8 cubic feet of compost: 32 sq ft at 3 in', () => {
    expect(fill.compostMostL / LITRES_PER_CUBIC_FOOT).toBeCloseTo(8, 1);
  });
});

it('a cubic yard covers 324 sq ft an inch deep', () => {
  const { volumeL } = bedFill({ lengthM: 324 * M2_PER_SQUARE_FOOT, widthM: 1, depthM: 0.0254 });
  expect(volumeL / LITRES_PER_CUBIC_YARD).toBeCloseTo(1, 2);
});

describe('compost in a new bed', () => {
  it('is never more than three tenths of it: a shallow bed has less than 3 in', () => {
    // 2.88 m² × 150 mm = 432 L; three tenths are 129 L, 3 in would be 219 L.
    expect(bedFill({ ...BED, depthM: 0.15 })).toMatchObject({ compostMostL: 129, compostBy: 'share' });
  });

  it('is none where the soil test found very much phosphorus, however much is free', () => {
    const fill = bedFill(BED, { freeCompostL: 500, phosphorus: true });
    expect(fill).toMatchObject({ compostMostL: 0, compostL: 0, compostBy: 'phosphorus' });
    expect(fill.mixL).toBe(fill.looseL);
  });

  it('is never more than there may be, with a yard full of it', () => {
    expect(bedFill(BED, { freeCompostL: 5000 }).compostL).toBe(219);
  });
});

describe('paths nobody measured', () => {
  it('are taken as 18 in wide along both long sides', () => {
    // 2 × 2.4 × 0.45 = 2.16 m²; × 50.8 mm = 109 L.
    const fill = bedFill(BED);
    expect(fill.paths).toEqual({ areaM2: 2.16, measured: false });
    expect(fill.topsoilL).toBe(109);
  });

  it('are never scooped for more than the bed has room for beside its compost', () => {
    const fill = bedFill({ ...BED, pathsM2: 100 });
    expect([fill.topsoilL, fill.topsoilMostL]).toEqual([864 - 219, 864 - 219]);
    expect(fill.mixL).toBeGreaterThan(0);
  });
});
