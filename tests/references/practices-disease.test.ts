/**
 * Years a bed is closed after a disease, against what is published. Sources: veg:V12 University of Connecticut IPM,
 * Try Rotation; veg:V30 UC IPM, white rot; veg:V33 PNW handbook, garlic white rot; veg:V35 clubroot fact sheet; veg:V37
 * UMass, brassica covers; veg:V62 extension column, root rots; veg:V63 Growing Magazine, verticillium.
 */
import { describe, expect, it } from 'vitest';
import { vegetableById } from '../../src/handbook/vegetables.ts';
import { type Day, yearOf } from '../../src/measures/days.ts';
import { coverLockOut, cropLockOut } from '../../src/practices/lock-out.ts';
import { garden } from '../practices/gardens.ts';

const FOUND: Day = '2027-08-10';

const bedWith = (cropId: string, disease: string) =>
  garden({ startedOn: '2027-01-01', diseases: [{ bedId: 'a', cropId, disease, on: FOUND }] });

/** Whether a crop may come back so many years after the finding, a season's start to a season's end. */
function closed(sick: string, disease: string, crop: string, years: number): boolean {
  const day = `${yearOf(FOUND) + years}${FOUND.slice(4)}`;
  return cropLockOut(bedWith(sick, disease), 'a', vegetableById(crop), day) !== undefined;
}

describe('a bed is closed', () => {
  it.each<[string, string, string, number, string]>([
    ['turnip', 'clubroot', 'kale', 7, 'V12: seven years, turnip and radish too; V35: five to seven'],
    ['cabbage', 'clubroot', 'radish', 7, 'V12: no radish either'],
    ['cabbage', 'blackleg', 'broccoli', 4, 'V12: three to four'],
    ['cabbage', 'black rot', 'broccoli', 3, 'V12: two to three'],
    ['tomato', 'verticillium wilt', 'potato', 4, 'V12: four, tomato, potato and pepper together'],
    ['tomato', 'verticillium wilt', 'pepper', 4, 'V12'],
    ['snap-bean', 'fusarium root rot', 'pea', 3, 'V62: two to three'],
    ['beet', 'cercospora leaf spot', 'swiss-chard', 3, 'V12: three'],
    ['lettuce-head', 'bottom rot', 'lettuce-leaf', 3, 'V12: three'],
    ['sweet-corn', 'yellow leaf blight', 'sweet-corn', 3, 'V12: three'],
  ])('after %s with %s to %s for %i years (%s)', (sick, disease, crop, years) => {
    expect([closed(sick, disease, crop, years - 1), closed(sick, disease, crop, years)]).toEqual([true, false]);
  });

  it('to every onion for twenty years after white rot (V30: more than 20; V33: 20 to 30 or more)', () => {
    for (const crop of ['onion-sets', 'garlic', 'leek', 'shallot', 'chives']) {
      expect(closed('garlic', 'white rot', crop, 19), crop).toBe(true);
    }
  });

  it('to asparagus for good after fusarium (V12: do not replant that ground)', () => {
    expect(closed('asparagus', 'fusarium', 'asparagus', 60)).toBe(true);
  });

  it('to potato, tomato, lettuce and cabbage after white mould of beans (V12), but not to carrots', () => {
    const kept = ['potato', 'tomato', 'lettuce-leaf', 'cabbage', 'pea', 'carrot'].map((crop) =>
      closed('snap-bean', 'white mold', crop, 1),
    );
    expect(kept).toEqual([true, true, true, true, true, false]);
  });

  it('never for less than the ordinary interval: two years are published for bean anthracnose (V12), three are kept', () => {
    expect([closed('snap-bean', 'anthracnose', 'pea', 2), closed('snap-bean', 'anthracnose', 'pea', 3)]).toEqual([
      true,
      false,
    ]);
  });

  it('to mustard and radish as covers after clubroot (V37), not to rye, oats or buckwheat', () => {
    const sick = bedWith('cabbage', 'clubroot');
    const covers = ['mustard', 'oilseed_radish', 'cereal_rye', 'oats', 'buckwheat', 'oats-field-pea'];
    expect(covers.filter((cover) => coverLockOut(sick, 'a', cover, '2030-08-01'))).toEqual([
      'mustard',
      'oilseed_radish',
    ]);
  });

  it('to pea, vetch, clover and fava as covers after a root rot of beans (inferred from V62)', () => {
    const sick = bedWith('snap-bean', 'fusarium root rot');
    const covers = ['field_pea', 'hairy_vetch', 'red_clover', 'fava_bell_bean', 'rye-vetch', 'oats', 'mustard'];
    expect(covers.filter((cover) => coverLockOut(sick, 'a', cover, '2028-08-01'))).toEqual(covers.slice(0, 5));
  });
});
