import { describe, expect, it } from 'vitest';
import { establishment } from '../../../../src/practices/cover-cropping/fit/establish.ts';
import { coverParts } from '../../../../src/practices/covers.ts';
import { recordClimate } from '../../../climate/real-data.ts';
import { frostDates, garden, inputOf, milwaukee } from '../../gardens.ts';

const atMilwaukee = inputOf(garden(), milwaukee);
const atBozeman = inputOf(garden(), recordClimate('bozeman', 2020));

function share(coverId: string, day: string, input = atMilwaukee) {
  const found = establishment(input, coverParts(coverId), 'autumn', day)?.share;
  return found === undefined ? undefined : found.of / found.among;
}

describe('whether a cover would establish', () => {
  it('is counted in all thirty seasons of the record', () => {
    expect(establishment(atMilwaukee, coverParts('oats'), 'autumn', '2027-08-25')?.share).toEqual({
      of: 30,
      among: 30,
    });
  });

  it('falls as the sowing slips: oats at Milwaukee from all seasons on 25 August to none on 15 October', () => {
    const shares = ['2027-08-25', '2027-09-15', '2027-09-25', '2027-10-15'].map((day) => share('oats', day) ?? -1);
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
    expect(shares[0]).toBe(1);
    expect(shares.at(-1)).toBe(0);
  });

  it('is worse at Bozeman: mustard of 1 August in fewer than a third of seasons, at Milwaukee in nearly all', () => {
    expect(share('mustard', '2027-08-01', atBozeman)).toBeLessThan(1 / 3);
    expect(share('mustard', '2027-08-01')).toBeGreaterThan(0.9);
  });

  it('is that of the part which needs most in a mix', () => {
    const day = '2027-09-10';
    expect(share('rye-vetch', day)).toBe(share('hairy_vetch', day));
    expect(share('cereal_rye', day)).toBe(1);
  });

  it('says which figure it went by, and how much heat the middle season leaves', () => {
    const found = establishment(atMilwaukee, coverParts('mustard'), 'autumn', '2027-08-01');
    expect(found?.heatNeeded).toEqual({
      units: 1111,
      baseC: 0,
      origin: { provenance: 'published', sources: ['cover:S4g'] },
    });
    expect(found?.heatLeftUnits).toBeGreaterThan(1111);
  });

  it('is not told where no figure is known, nor of sowings in spring', () => {
    expect(establishment(atMilwaukee, coverParts('phacelia'), 'autumn', '2027-08-25')).toBe(undefined);
    expect(establishment(atMilwaukee, coverParts('oats'), 'spring', '2027-04-10')).toBe(undefined);
  });

  it('counts no season without a daily record, and still says what heat is left', () => {
    const found = establishment(
      inputOf(garden(), frostDates('05-10', '10-01')),
      coverParts('oats'),
      'autumn',
      '2027-08-20',
    );
    expect(found?.share).toEqual({ of: 0, among: 0 });
    expect(found?.heatLeftUnits).toBeGreaterThan(292);
  });
});
