/**
 * What may not return to a bed, against published rotations.
 */
import { describe, expect, it } from 'vitest';
import type { Planting } from '../../src/garden/garden.ts';
import { bedReviews } from '../../src/practices/rotation/bed-review.ts';
import { YEARLY_WAITS } from '../../src/practices/rotation/settle-steps.ts';
import { garden, inputOf, setOut, sown } from '../practices/gardens.ts';

/** The season from which a bed is open again to the group of a crop grown in 2027. */
function opens(planting: Planting): number | undefined {
  const [review] = bedReviews(inputOf(garden({ startedOn: '2027-01-01', plantings: [planting] })), 2028);
  return review?.closed[0]?.opens;
}

describe('a bed that carried', () => {
  it.each([
    ['broccoli', 3, 5, 'Nebraska Extension, veg:V36'],
    ['onion-sets', 3, 5, 'Nebraska Extension, veg:V36'],
    ['tomato', 4, 4, 'University of Connecticut IPM, veg:V12'],
    ['potato', 4, 4, 'University of Connecticut IPM, veg:V12'],
    ['cucumber', 2, 3, 'University of Connecticut IPM, veg:V12: scab and leaf spots two years and more'],
    ['pea', 2, 3, 'University of Connecticut IPM, veg:V12: two years for anthracnose and blight'],
    ['lettuce-head', 3, 3, 'University of Connecticut IPM, veg:V12'],
    ['spinach', 3, 3, 'University of Connecticut IPM, veg:V12'],
    ['sweet-corn', 2, 3, 'University of Connecticut IPM, veg:V12'],
  ])('%s waits %i to %i years for its family (%4$s)', (cropId, low, high) => {
    const planting = sown(cropId, '2027-05-15', { harvested: '2027-08-15' });
    const years = (opens(planting) ?? 0) - 2027;
    expect(years).toBeGreaterThanOrEqual(low);
    expect(years).toBeLessThanOrEqual(high);
  });

  it('asparagus is not counted: its bed is its own (common practice)', () => {
    expect(opens(setOut('asparagus', '2027-04-15'))).toBeUndefined();
  });
});

it('no yearly crop waits longer than the general rule of 3 to 5 years (Nebraska Extension, veg:V36)', () => {
  expect(Math.max(...YEARLY_WAITS)).toBeLessThanOrEqual(5);
});
