/**
 * New beds and poor soil against published figures and geometry. How much of each source was read stands in its entry.
 */
import { describe, expect, it } from 'vitest';
import {
  LITRES_PER_CUBIC_FOOT,
  LITRES_PER_CUBIC_YARD,
  M2_PER_SQUARE_FOOT,
  MM_PER_INCH,
} from '../../src/measures/units.ts';
import { BARROW_KG } from '../../src/practices/barrow.ts';
import { bedFill, NEW_BED_COMPOST_MM, SCOOPED_MM } from '../../src/practices/bed-fill.ts';
import { fillMinutes } from '../../src/practices/new-beds/fill-draft.ts';
import { textureRow } from '../../src/practices/soil-class.ts';
import { BUILD_UP_MM, heldWaterMm } from '../../src/practices/topdressing/poor-soil.ts';

describe('a new bed of 100 sq ft', () => {
  const squareM = Math.sqrt(100 * M2_PER_SQUARE_FOOT);
  const fill = bedFill({ lengthM: squareM, widthM: squareM, depthM: (12 * MM_PER_INCH) / 1000, pathsM2: 0 });

  it('has 2 to 3 in of compost, 17 to 25 cu ft (Natural Lawn & Garden guide, V22)', () => {
    const cubicFeet = fill.compostMostL / LITRES_PER_CUBIC_FOOT;
    expect(cubicFeet).toBeGreaterThanOrEqual(17);
    expect(cubicFeet).toBeLessThanOrEqual(25.1);
  });

  it('has no more than Oregon State’s least for a bed that is dug, 3 to 4 in (EM 9308, V17)', () => {
    expect(NEW_BED_COMPOST_MM / MM_PER_INCH).toBeCloseTo(3, 6);
  });

  it('holds 100 cubic feet a foot deep, 3.7 cubic yards (geometry)', () => {
    expect(fill.volumeL / LITRES_PER_CUBIC_FOOT).toBeCloseTo(100, 0);
    expect(fill.volumeL / LITRES_PER_CUBIC_YARD).toBeCloseTo(3.7, 1);
  });
});

it('70 000 sq ft two inches deep are 432 cubic yards (published as 434, rounded, compost:S11)', () => {
  const { volumeL } = bedFill({ lengthM: 350 * 0.3048, widthM: 200 * 0.3048, depthM: (2 * MM_PER_INCH) / 1000 });
  expect(volumeL / LITRES_PER_CUBIC_YARD).toBeCloseTo(432.1, 1);
});

it('paths give 2 to 3 in of topsoil (common practice)', () => {
  expect(SCOOPED_MM.low / MM_PER_INCH).toBeCloseTo(2, 6);
  expect(SCOOPED_MM.high / MM_PER_INCH).toBeCloseTo(3, 6);
});

it('a cubic metre of loose soil is 42, 42 and 27 minutes of load, haul and spread (ILO norms, V52, from memory)', () => {
  // 8.5, 8.5 and 13.5 m³ a worker-day of six hours.
  const minutes = 360 / 8.5 + 360 / 8.5 + 360 / 13.5;
  expect(Math.abs(fillMinutes({ movedL: 1000 }) - fillMinutes({ movedL: 0 }) - minutes)).toBeLessThan(1);
});

it('a barrow of compost is half as heavy as one of soil: 650 kg/m³ (compost:S59)', () => {
  expect(BARROW_KG).toBe(49);
});

describe('soil that is built up', () => {
  it('gets no more than an inch a year, as any bed that is there (Minnesota, compost:S36)', () => {
    expect(BUILD_UP_MM).toBeLessThanOrEqual(MM_PER_INCH);
  });

  it('sand holds 50 to 100 mm a metre, clay 133 to 200 (NRCS feel chart: coarse 50–100, fine 133–200; agro 5.2)', () => {
    const aMetre = (id: 'sand' | 'clay') => 5 * heldWaterMm(textureRow(id));
    expect(aMetre('sand')).toBeGreaterThanOrEqual(50);
    expect(aMetre('sand')).toBeLessThanOrEqual(100);
    expect(aMetre('clay')).toBeGreaterThanOrEqual(133);
    expect(aMetre('clay')).toBeLessThanOrEqual(200);
  });
});
