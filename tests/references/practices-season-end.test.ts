/**
 * The season's end against published figures and facts of common practice.
 */
import { describe, expect, it } from 'vitest';
import { GRAMS_PER_POUND, LITRES_PER_GALLON } from '../../src/measures/units.ts';
import { frozenSpan } from '../../src/practices/season-end/frozen-span.ts';
import { SCRAPS_G_A_DAY, scrapsLitresADay, troddenShare } from '../../src/practices/season-end/scraps.ts';
import { draft, draftsIn, garden, milwaukee } from '../practices/gardens.ts';

describe('kitchen scraps', () => {
  it('are 0.2 to 0.9 lb a person a day (Texas A&M Extension, compost:S50)', () => {
    expect(SCRAPS_G_A_DAY.low / GRAMS_PER_POUND).toBeCloseTo(0.2, 1);
    expect(SCRAPS_G_A_DAY.high / GRAMS_PER_POUND).toBeCloseTo(0.9, 1);
  });

  it('of 3.8 lb a gallon (US EPA, compost:S39) stay inside the band by volume', () => {
    const poundsADay = (scrapsLitresADay() / LITRES_PER_GALLON) * 3.8;
    expect(poundsADay).toBeGreaterThanOrEqual(0.2);
    expect(poundsADay).toBeLessThanOrEqual(0.9);
  });
});

it('leaves packed down are 400 to 500 lb a cubic yard against 100 to 300 loose (compost:S1, from memory)', () => {
  expect(troddenShare()).toBeGreaterThanOrEqual(100 / 500);
  expect(troddenShare()).toBeLessThanOrEqual(300 / 400);
});

describe('Milwaukee’s winter', () => {
  it('begins after a November above freezing and before a December below it (NOAA normals, from memory)', () => {
    const { from = '', thaw = '' } = frozenSpan(milwaukee, 2027) ?? {};
    expect(from > '2027-11-15' && from < '2027-12-15', from).toBe(true);
    expect(thaw > '2028-02-15' && thaw < '2028-03-15', thaw).toBe(true);
  });

  it('finds the leaves down from late October to mid-November (common practice in southern Wisconsin)', () => {
    const { window } = draft(draftsIn(garden()), 'leaves/garden/2027');
    expect(window.earliest >= '2027-10-15' && window.preferred <= '2027-11-20').toBe(true);
  });

  it('finds the hoses drained before November is old (common practice: by the first hard freeze)', () => {
    const { window } = draft(draftsIn(garden()), 'close-down/garden/2027');
    expect(window.latest < '2027-11-06').toBe(true);
    expect(window.earliest > '2027-09-30').toBe(true);
  });
});
