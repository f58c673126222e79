import { describe, expect, it } from 'vitest';
import type { Planting } from '../../src/garden/garden.ts';
import { cropSpans, gapsOf, nextCrop } from '../../src/practices/bed-timeline.ts';
import { frostDates, garden, setOut, sown } from './gardens.ts';

/** Median freezes 10 May and 25 September. */
const climate = frostDates('05-10', '09-25');

function spansOf(plantings: readonly Planting[]) {
  return cropSpans(garden({ plantings }), 'a', climate).map(({ from, to, end }) => ({ from, to, end }));
}

describe('the end of a crop', () => {
  it('is the stated last harvest', () => {
    expect(spansOf([sown('carrot', '2027-05-01', { harvested: '2027-08-20' })])).toEqual([
      { from: '2027-05-01', to: '2027-08-20', end: 'stated' },
    ]);
  });

  it('is the days to maturity and half of the picking span, where nothing is stated', () => {
    // Carrot: 70 days, picked for 21–45: 70 + 33 = 103 days from 1 May.
    expect(spansOf([sown('carrot', '2027-05-01')])).toEqual([
      { from: '2027-05-01', to: '2027-08-12', end: 'days to maturity' },
    ]);
  });

  it('comes two weeks sooner for plants raised indoors whose days count from seed', () => {
    // Leaf lettuce: 60 + 21 days from seed.
    const [seeded, planted] = [
      spansOf([sown('lettuce-leaf', '2027-05-01')]),
      spansOf([setOut('lettuce-leaf', '2027-05-01')]),
    ];
    expect([seeded[0]?.to, planted[0]?.to]).toEqual(['2027-07-21', '2027-07-07']);
  });

  it('comes later for seed whose days count from transplants, by the weeks it is raised for', () => {
    // Broccoli: 70 + 25 days from setting out, 5–7 weeks to raise.
    const [planted, seeded] = [spansOf([setOut('broccoli', '2027-05-01')]), spansOf([sown('broccoli', '2027-05-01')])];
    expect([planted[0]?.to, seeded[0]?.to]).toEqual(['2027-08-04', '2027-09-15']);
  });

  it('is the median first freeze a tender crop will not stand', () => {
    expect(spansOf([setOut('tomato', '2027-06-20')])).toEqual([
      { from: '2027-06-20', to: '2027-09-25', end: 'first freeze' },
    ]);
  });

  it('is a harder freeze for hardier crops: 28 °F for chard, 24 °F for kale', () => {
    const ends = ['swiss-chard', 'kale'].map(
      (crop) => cropSpans(garden({ plantings: [sown(crop, '2027-07-15')] }), 'a', climate)[0],
    );
    expect(ends.map((span) => span?.freezeLimitF)).toEqual([28, 24]);
    expect((ends[0]?.to ?? '') > '2027-09-25' && (ends[1]?.to ?? '') > (ends[0]?.to ?? '')).toBe(true);
  });

  it('is no freeze for garlic, which is planted to live through them', () => {
    // 270 days and half of a week or two of lifting.
    expect(spansOf([setOut('garlic', '2026-10-20')])).toEqual([
      { from: '2026-10-20', to: '2027-07-28', end: 'days to maturity' },
    ]);
  });

  it('never comes for a lasting crop, whatever its yearly last harvest', () => {
    const asparagus = setOut('asparagus', '2024-05-01', { harvested: '2026-06-20' });
    expect(spansOf([asparagus])).toEqual([{ from: '2024-05-01', to: undefined, end: 'permanent' }]);
  });

  it('comes for a lasting crop once something else went in after its last harvest', () => {
    const asparagus = setOut('asparagus', '2020-05-01', { harvested: '2025-06-20' });
    expect(spansOf([asparagus, sown('carrot', '2026-05-01', { harvested: '2026-08-01' })])[0]).toEqual({
      from: '2020-05-01',
      to: '2025-06-20',
      end: 'happened',
    });
  });
});

describe('the gaps of a bed', () => {
  const gaps = (plantings: readonly Planting[], since = '2027-01-01') =>
    gapsOf(garden({ plantings }), 'a', climate, since).map(({ from, to }) => [from, to]);

  it('are open at both ends where nothing grows', () => {
    expect(gaps([])).toEqual([[undefined, undefined]]);
  });

  it('run from the day after one crop to the day the next goes in', () => {
    const peas = sown('pea', '2027-04-15', { harvested: '2027-07-05' });
    const broccoli = setOut('broccoli', '2027-08-01', { harvested: '2027-10-15' });
    expect(gaps([broccoli, peas])).toEqual([
      [undefined, '2027-04-15'],
      ['2027-07-06', '2027-08-01'],
      ['2027-10-16', undefined],
    ]);
  });

  it('begin when the last of two crops that share the bed is over', () => {
    const lettuce = sown('lettuce-leaf', '2027-05-01', { harvested: '2027-06-20' });
    const tomato = setOut('tomato', '2027-06-01', { harvested: '2027-09-20' });
    expect(gaps([lettuce, tomato], '2027-06-01')).toEqual([['2027-09-21', undefined]]);
  });

  it('are none in a bed of asparagus', () => {
    expect(gaps([setOut('asparagus', '2024-05-01')])).toEqual([]);
  });

  it('cross New Year', () => {
    const kale = sown('kale', '2027-07-15', { harvested: '2027-12-31' });
    expect(gaps([kale, sown('pea', '2028-04-15')], '2027-08-01')[0]).toEqual(['2028-01-01', '2028-04-15']);
  });
});

it('takes as the next crop one that goes in later, not one sown on the same day', () => {
  const plantings = [sown('pea', '2027-04-15'), setOut('tomato', '2027-08-01')];
  expect(nextCrop(garden({ plantings }), 'a', climate, '2027-04-15')?.crop.id).toBe('tomato');
});
