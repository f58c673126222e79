import { describe, expect, it } from 'vitest';
import { readableIn } from '../../../src/measures/quantity.ts';
import { seedAmounts } from '../../../src/practices/cover-cropping/seed.ts';
import { commonDepthCm, coverParts } from '../../../src/practices/covers.ts';
import { inventedClimate } from '../../climate/invented.ts';
import { bed, cover, draft, draftsIn, frostDates, garden } from '../gardens.ts';

/** Median freezes 28 April and 19 October: Geneva, New York (NOAA 1981–2010). */
const geneva = frostDates('04-28', '10-19');

const ratesOn = (coverId: string, day: string, climate = geneva) =>
  seedAmounts(coverParts(coverId), 3, day, climate).map(({ gPerM2 }) => Math.round(gPerM2 * 10) / 10);

describe('the seed of a stand', () => {
  it('is the published rate over the bed: oats 14 g/m² on 3 m² make 42 g', () => {
    expect(seedAmounts(coverParts('oats'), 3, '2027-09-05', geneva)[0]).toMatchObject({ gPerM2: 14, grams: 42 });
  });

  it('is rounded up to a whole gram, never down', () => {
    expect(seedAmounts(coverParts('phacelia'), 1.5, '2027-08-25', geneva)[0]?.grams).toBe(2);
  });

  it('rises with every week rye is late, between the dates published for New York (cover:S4b)', () => {
    // Broadcast 85, 140, 200 and 250 lb/ac on 15 and 22 September, 1 and 15 October; weeks in the table have one digit.
    const published = { '2027-09-15': 9.5, '2027-09-22': 15.7, '2027-10-01': 22.4, '2027-10-15': 28 };
    for (const [day, gPerM2] of Object.entries(published)) {
      expect(Math.abs((ratesOn('cereal_rye', day)[0] ?? 0) - gPerM2)).toBeLessThanOrEqual(0.4);
    }
    expect(ratesOn('cereal_rye', '2027-09-01')).toEqual([9.5]);
    expect(ratesOn('cereal_rye', '2027-10-19')).toEqual([28]);
  });

  it('raises only the rye in a mix, from the mix’s own rate', () => {
    const [early, late] = [ratesOn('rye-vetch', '2027-09-10'), ratesOn('rye-vetch', '2027-09-22')];
    expect(early).toEqual([7.8, 2.5]);
    expect(late[0]).toBeCloseTo((7.8 * 15.7) / 9.5, 0);
    expect(late[1]).toBe(2.5);
  });

  it('is the usual rate where no freeze date is known', () => {
    expect(ratesOn('cereal_rye', '2027-10-10', inventedClimate())).toEqual([12.6]);
  });

  it('names the mix, the date table or the kind as its source', () => {
    const sources = ['rye-vetch', 'oats', 'field_pea'].map(
      (id) => seedAmounts(coverParts(id), 3, '2027-09-10', geneva)[0]?.from,
    );
    expect(sources).toEqual(['cover:S4b', 'cover:S4c', 'from memory']);
  });
});

describe('the depth of a stand', () => {
  it('is the one all parts share: oats 1.3–3.8 and peas 2.5–7.6 cm meet at 2.5–3.8', () => {
    expect(commonDepthCm(coverParts('oats-field-pea'))).toEqual({ low: 2.5, high: 3.8 });
  });

  it('is none for rye and clover: large seed is raked in first', () => {
    expect(commonDepthCm(coverParts('ryegrass-red-clover'))).toEqual({ low: 0.6, high: 1.3 });
    expect(commonDepthCm(coverParts('rye-red-clover'))).toBeUndefined();
  });
});

describe('the steps of a sowing', () => {
  const stepsOf = (coverId: string, day: string, parts = {}, climate = geneva) => {
    const of = garden({ startedOn: '2027-01-01', stands: [cover(coverId, day)], ...parts });
    return draft(draftsIn(of, climate), 'cover-sow/stand:s').steps.map((step) => readableIn('metric', step));
  };

  it('weigh, roll in inoculant, scatter crosswise, rake, water', () => {
    expect(stepsOf('oats-field-pea', '2027-08-28', { place: { hardinessZone: '5b' } })).toEqual([
      'Weigh out the seed. Oats: 28 g; Field pea: 22 g.',
      'Damp the legume seed and roll it in its inoculant just before sowing.',
      'Scatter half of it walking one way and half crossing it.',
      'Rake it in 2.5 cm to 3.8 cm deep and firm with the back of the rake.',
      'Sow before rain if you can; in dry weather keep the surface damp with a can until it is up.',
      'Winter finishes this cover; look in late winter whether it did.',
    ]);
  });

  it('say that winter ends it only where it does: not in spring, not in zone 8', () => {
    const last = (steps: string[]) => steps.at(-1) ?? '';
    expect(last(stepsOf('oats', '2027-04-15'))).not.toContain('Winter');
    expect(last(stepsOf('oats', '2027-09-01', { place: { hardinessZone: '8b' } }))).not.toContain('Winter');
    expect(last(stepsOf('buckwheat', '2027-06-15'))).toContain('first freeze');
  });

  it('water a bed that has water', () => {
    expect(stepsOf('oats', '2027-09-01', { beds: [bed('a', { watered: true })] }).join(' ')).toContain('Water it in');
  });

  it('rake nothing where clover is sown on frozen ground', () => {
    const steps = stepsOf('red_clover', '2027-03-05').join(' ');
    expect(steps).toContain('frozen');
    expect(steps).not.toContain('Rake it in');
  });

  it('rake the large seed in before the small where they do not share a depth', () => {
    const of = garden({ startedOn: '2027-06-01', stands: [cover('rye-red-clover', '2027-09-07')] });
    const steps = draft(draftsIn(of, geneva), 'cover-sow/stand:s').steps.join(' ');
    expect(steps.indexOf('winter rye first')).toBeLessThan(steps.indexOf('red clover and rake'));
    expect(steps.indexOf('winter rye first')).toBeGreaterThan(0);
  });
});

it('offers rye to those who are too late for oats, and only mulch to those too late for rye', () => {
  const note = (coverId: string, day: string) =>
    draft(draftsIn(garden({ startedOn: '2027-07-15', stands: [cover(coverId, day)] }), geneva), 'cover-sow/stand:s')
      .missedNote;
  expect(note('oats', '2027-09-05')).toContain('or sow rye up to the first freeze');
  expect(note('cereal_rye', '2027-09-20')).not.toContain('rye');
});
