import { describe, expect, it } from 'vitest';
import { climateFromFrostDates } from '../../src/climate/from-frost-dates.ts';
import { cropSpans } from '../../src/practices/bed-timeline.ts';
import { NO_OFFSETS } from '../climate/real-data.ts';
import { draft, draftsIn, frostDates, garden, milwaukee, rulesOf, setOut, sown } from './gardens.ts';

/** Christchurch: median freezes 3 October and 5 May. */
const christchurch = climateFromFrostDates({
  latitude: -43.5,
  longitude: 172.6,
  ...NO_OFFSETS,
  lastSpring: '10-03',
  firstAutumn: '05-05',
});

const endOf = (planting: ReturnType<typeof sown>, climate = christchurch) =>
  cropSpans(garden({ plantings: [planting] }), 'a', climate)[0];

describe('a crop that stands through winter', () => {
  it.each(['2027-04-15', '2027-05-10', '2027-07-05'])(
    'has its days counted from spring: fava beans sown on %s are picked in November and December, as gardeners there say',
    (day) => {
      // Six weeks before 3 October are 22 August; 100 days and half of two to four weeks of picking: 121 days.
      expect([endOf(sown('fava-bean', day))?.countedFrom, endOf(sown('fava-bean', day))?.to]).toEqual([
        '2027-08-22',
        '2027-12-21',
      ]);
    },
  );

  it('is not counted so where it is sown in spring or ripens before winter', () => {
    const peas = endOf(sown('pea', '2027-09-01'));
    const radish = endOf(sown('radish', '2027-05-10'));
    expect([peas?.countedFrom, radish?.countedFrom]).toEqual([undefined, undefined]);
    expect((radish?.to ?? '') < '2027-07-01').toBe(true);
  });

  it('is asked to be looked at before it is cut, and told why no day is sure', () => {
    const of = garden({ startedOn: '2027-08-01', plantings: [sown('fava-bean', '2027-05-10')] });
    const clear = draft(draftsIn(of, christchurch), 'bed-clear/planting:fava-bean');
    expect(clear.window.earliest).toBe('2027-12-21');
    expect(clear.steps[0]).toMatch(/^Look first:/);
    expect(rulesOf(clear)).toContain('changeover.over-winter');
  });

  it('is spinach in the north too, sown in November for spring', () => {
    // Milwaukee: six weeks before 23 April; 50 days and half of the picking span.
    expect(endOf(sown('spinach', '2027-11-20'), milwaukee)?.countedFrom).toBe('2028-03-12');
  });
});

describe('garlic', () => {
  it('is lifted about midsummer however late it was planted (University of Minnesota Extension: late June to late July)', () => {
    const ends = ['2027-05-28', '2027-06-15'].map((day) => endOf(sown('garlic', day)));
    expect(ends.map((span) => span?.to)).toEqual(['2028-01-28', '2028-01-28']);
    expect(ends[1]?.liftedIn).toEqual({ from: '2027-12-23', to: '2028-01-28' });
  });

  it('is so in the north', () => {
    const span = endOf(setOut('garlic', '2026-11-14'), frostDates('05-10', '09-25'));
    expect([span?.to, span?.liftedIn?.from]).toEqual(['2027-07-31', '2027-06-25']);
  });

  it('is looked at from the first of those days, and lifted by its leaves', () => {
    const of = garden({ startedOn: '2027-08-01', plantings: [sown('garlic', '2027-06-15')] });
    const lift = draft(draftsIn(of, christchurch), 'bed-clear/planting:garlic');
    expect(lift.window).toEqual({ earliest: '2027-12-23', preferred: '2028-01-10', latest: '2028-01-28' });
    expect(lift.steps[0]).toMatch(/^Look first:/);
  });

  it('keeps its days where nobody knows better: planted in spring', () => {
    expect(endOf(sown('garlic', '2027-04-20'), frostDates('05-10', '09-25'))?.liftedIn).toBeUndefined();
  });
});
