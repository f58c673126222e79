import { describe, expect, it } from 'vitest';
import { inTheWay } from '../../../../src/practices/cover-cropping/fit/in-the-way.ts';
import { cover, frostDates, garden, inputOf } from '../../gardens.ts';

/** Median freezes 10 May and 1 October, and the same half a year away. */
const north = inputOf(garden({}), frostDates('05-10', '10-01'));
const south = inputOf(garden({ place: { latitude: -43 }, startedOn: '2027-10-01' }), frostDates('11-10', '04-01', -43));

const meant = (coverId: string, day: string) => cover(coverId, day, { id: `${coverId}-${day}` });

describe('two covers of one bed', () => {
  it.each([
    ['rye', 'oats of the year after', 'cereal_rye', '2027-09-04', 'oats', '2028-08-22'],
    ['buckwheat of June', 'oats of August', 'buckwheat', '2027-06-10', 'oats', '2027-08-20'],
    ['rye', 'buckwheat of the June after', 'cereal_rye', '2027-09-15', 'buckwheat', '2028-06-15'],
  ])('are not in each other’s way: %s and %s', (_, __, first, firstOn, second, secondOn) => {
    const [one, other] = [meant(first, firstOn), meant(second, secondOn)];
    expect([inTheWay(north, one, other), inTheWay(north, other, one)]).toEqual([false, false]);
  });

  it.each([
    ['rye', 'vetch of the same weeks', 'cereal_rye', '2027-09-04', 'hairy_vetch', '2027-09-01'],
    ['oats', 'rye while they stand', 'oats', '2027-08-20', 'cereal_rye', '2027-09-20'],
  ])('are in each other’s way: %s and %s', (_, __, first, firstOn, second, secondOn) => {
    const [one, other] = [meant(first, firstOn), meant(second, secondOn)];
    expect([inTheWay(north, one, other), inTheWay(north, other, one)]).toEqual([true, true]);
  });

  it('are so where the rye would be cut for a bean of early spring before it has grown, unless it is in the ground', () => {
    const [rye, fava] = [meant('cereal_rye', '2027-09-04'), meant('fava_bell_bean', '2028-04-15')];
    expect([inTheWay(north, rye, fava), inTheWay(north, fava, rye)]).toEqual([true, true]);
    expect(inTheWay(north, { ...rye, sow: { ...rye.sow, happened: true } }, fava)).toBe(false);
  });

  it('are so in the south half a year later, over New Year and on a leap day', () => {
    expect(inTheWay(south, meant('oats', '2028-02-20'), meant('cereal_rye', '2028-03-15'))).toBe(true);
    expect(inTheWay(south, meant('oats', '2028-02-29'), meant('oats', '2029-02-20'))).toBe(false);
    expect(inTheWay(south, meant('buckwheat', '2027-12-10'), meant('oats', '2028-02-29'))).toBe(false);
  });

  it('are not where they are of two beds', () => {
    const other = { ...meant('oats', '2027-08-20'), bedId: 'b' };
    expect(inTheWay(north, meant('cereal_rye', '2027-08-21'), other)).toBe(false);
  });
});
