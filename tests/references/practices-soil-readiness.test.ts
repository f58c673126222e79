/**
 * Soil readiness against published figures and facts of the trade.
 */
import { describe, expect, it } from 'vitest';
import { soilWorkOf } from '../../src/handbook/soil-work.ts';
import { readableIn } from '../../src/measures/quantity.ts';
import { soilAwake } from '../../src/practices/seasons.ts';
import { draft, draftsIn, garden, milwaukee } from '../practices/gardens.ts';

describe('how long soil drains', () => {
  it('sandy loam is asked again no sooner than its 50 hours (Jabro et al. 2009, agro:S41)', () => {
    const { retestDays } = soilWorkOf('coarse');
    expect(retestDays * 24).toBeGreaterThanOrEqual(48);
    expect(retestDays).toBeLessThanOrEqual(3);
  });

  it('permeable ground is asked again after two to three days (several handbooks, secondary)', () => {
    expect([2, 3]).toContain(soilWorkOf('medium').retestDays);
  });

  it('clay waits longer than three days, and is looked at before the 19 that clay loam drained under cover (agro:S41)', () => {
    const { retestDays } = soilWorkOf('fine');
    expect(retestDays).toBeGreaterThan(3);
    expect(retestDays).toBeLessThan(19);
  });
});

describe('the feel of soil at field capacity (NRCS classes, agro:S34, agro:S35)', () => {
  it('is a ribbon of an inch in loam and of two inches in clay, both still too wet', () => {
    expect(readableIn('us', soilWorkOf('medium').tooWet)).toContain('ribbon of 1 in');
    expect(readableIn('us', soilWorkOf('fine').tooWet)).toContain('ribbon of 2 in');
  });

  it('is told by a finger: crumbling is ready, a dent is wait (Kansas State, agro:S42)', () => {
    const [, press] = draft(draftsIn(garden()), 'squeeze-test').steps;
    expect(press).toMatch(/crumbles: the soil is fit.*only dents.*too wet.*Water runs out: far too wet/);
  });
});

it('the handful at Milwaukee is squeezed in March or April, when south-east Wisconsin begins to work its soil (common practice)', () => {
  expect(soilAwake(milwaukee, 2027)?.slice(5, 7)).toMatch(/03|04/);
  expect(draft(draftsIn(garden()), 'squeeze-test').window.preferred.slice(5, 7)).toMatch(/03|04/);
});
