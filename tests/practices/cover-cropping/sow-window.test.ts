import { describe, expect, it } from 'vitest';
import type { Climate } from '../../../src/climate/climate.ts';
import { withWeather } from '../../../src/climate/logged.ts';
import { soilWarmOdds } from '../../../src/climate/soil-temperature.ts';
import { eachDay } from '../../../src/measures/days.ts';
import {
  heldBetween,
  isFrostSeeded,
  type SowingHalf,
  sowingHalves,
  sowWindow,
} from '../../../src/practices/cover-cropping/sow-window.ts';
import { coverParts } from '../../../src/practices/covers.ts';
import { inventedClimate } from '../../climate/invented.ts';
import { frostDates, garden, inputOf, milwaukee } from '../gardens.ts';

/** Median freezes 10 May and 1 October. */
const plain = frostDates('05-10', '10-01');

function windowOf(coverId: string, half: SowingHalf, climate = plain, frostRisk: 10 | 30 | 50 = 50) {
  const input = inputOf(garden({ place: { frostRisk } }), climate);
  return sowWindow(coverParts(coverId), half, 2027, input)?.window;
}

describe('sowing before winter', () => {
  it('counts oats 8 to 4.3 weeks back from the first freeze, best from 5.7 weeks on', () => {
    // 56, 40 and 30 days before 1 October; the preferred day lies a third into the best ones.
    expect(windowOf('oats', 'autumn')).toEqual({
      earliest: '2027-08-06',
      preferred: '2027-08-25',
      latest: '2027-09-01',
    });
  });

  it('counts rye from 6 weeks before the first freeze to its day', () => {
    expect(windowOf('cereal_rye', 'autumn')).toEqual({
      earliest: '2027-08-20',
      preferred: '2027-09-07',
      latest: '2027-10-01',
    });
  });

  it('counts a fraction of a week to the nearest day: crimson clover 60 days', () => {
    // 8.6 weeks are the published 60 days (USDA Farmers' Bulletin, cover:S30).
    expect(windowOf('crimson_clover', 'autumn')?.earliest).toBe('2027-08-02');
  });

  it('holds a mix to the days all its parts allow', () => {
    // Rye from 6 weeks, vetch until 4.3; oats from 8, field pea until 6.
    expect(windowOf('rye-vetch', 'autumn')).toMatchObject({ earliest: '2027-08-20', latest: '2027-09-01' });
    expect(windowOf('oats-field-pea', 'autumn')).toMatchObject({ earliest: '2027-08-06', latest: '2027-08-20' });
  });

  it('prefers a day inside a mix’s window even where one part’s best days come too late for the other', () => {
    // Oats are best from 22 August, but field pea closes on the 20th: a third into the shared days instead.
    expect(windowOf('oats-field-pea', 'autumn')?.preferred).toBe('2027-08-10');
  });

  it('waits for no soil temperature: autumn soil is warm', () => {
    const rules = sowWindow(coverParts('oats'), 'autumn', 2027, inputOf(garden(), plain))?.reasons.map(
      ({ rule }) => rule,
    );
    expect(rules).toEqual(['cover-sow.autumn']);
  });
});

describe('sowing in spring', () => {
  it('opens four weeks before the last freeze, or when the soil is warm enough, whichever is later', () => {
    const warm = soilWarmOdds(plain, { season: 2027, tempC: 3.3 }).median ?? '';
    const earliest = warm > '2027-04-12' ? warm : '2027-04-12';
    expect(windowOf('oats', 'spring')).toMatchObject({ earliest, latest: '2027-05-10' });
  });

  it('holds field pea back at Milwaukee until the soil reaches 5 °C, three days into its weeks', () => {
    // Four weeks before 23 April is 26 March; the soil reaches 5 °C on 29 March in the middle year.
    expect(windowOf('field_pea', 'spring', milwaukee)).toMatchObject({ earliest: '2027-03-29', latest: '2027-04-23' });
  });

  it('sows red clover on frozen ground, ten to four weeks before the last freeze, waiting for no warmth', () => {
    expect(windowOf('red_clover', 'spring')).toMatchObject({ earliest: '2027-03-01', latest: '2027-04-12' });
  });

  it('sows clover under a nurse of rye at the mix’s own time, the middle of April in New York (cover:S4b)', () => {
    const geneva = frostDates('04-28', '10-19');
    const window = windowOf('rye-red-clover', 'spring', geneva);
    expect(window && window.earliest <= '2027-04-15' && window.latest >= '2027-04-15').toBe(true);
    const sow = sowWindow(coverParts('rye-red-clover'), 'spring', 2027, inputOf(garden(), geneva));
    expect(sow?.reasons[0]).toMatchObject({ rule: 'cover-sow.spring', source: 'cover:S4b' });
    expect(sow && isFrostSeeded(coverParts('rye-red-clover'), sow)).toBe(false);
  });

  it('has no window where the soil is warm only after the last day', () => {
    const cold = {
      ...plain,
      normals: { tminC: Array(12).fill(-8), tmaxC: [-2, -2, -2, -2, 2, 18, 18, 15, 4, -2, -2, -2] },
    };
    expect(windowOf('field_pea', 'spring', cold)).toBeUndefined();
  });
});

describe('sowing in the warm months', () => {
  it('waits for the frost risk the gardener takes and for warm soil, and leaves the days the kind needs', () => {
    // Buckwheat: 40 days before 1 October; soil of 10 °C; the last freeze at the odds chosen.
    const [bold, cautious] = [windowOf('buckwheat', 'summer', plain, 50), windowOf('buckwheat', 'summer', plain, 10)];
    expect(bold?.latest).toBe('2027-08-22');
    expect((bold?.earliest ?? '') >= '2027-05-10').toBe(true);
    expect((cautious?.earliest ?? '') > (bold?.earliest ?? '')).toBe(true);
  });

  it('opens for sorghum-sudangrass only when the soil has 18.3 °C', () => {
    const warm = soilWarmOdds(milwaukee, { season: 2027, tempC: 18.3 }).median;
    expect(windowOf('sorghum_sudangrass', 'summer', milwaukee)?.earliest).toBe(warm);
    expect(warm?.slice(0, 7)).toBe('2027-06');
  });
});

describe('where nothing can be said', () => {
  it('gives no window without freeze dates', () => {
    for (const half of ['spring', 'summer', 'autumn'] as const) {
      for (const id of ['oats', 'buckwheat', 'rye-vetch'])
        expect(windowOf(id, half, inventedClimate())).toBeUndefined();
    }
  });

  it('gives none where a part is not sown in that half', () => {
    expect(windowOf('cereal_rye', 'spring')).toBeUndefined();
    expect(windowOf('oats', 'summer')).toBeUndefined();
  });

  it('knows the halves a stand may be sown in', () => {
    expect(sowingHalves(coverParts('oats-field-pea'))).toEqual(['spring', 'autumn']);
    expect(sowingHalves(coverParts('cereal_rye'))).toEqual(['autumn']);
    expect(sowingHalves(coverParts('buckwheat'))).toEqual(['summer']);
  });
});

describe('a window held between two days', () => {
  const sow = sowWindow(coverParts('cereal_rye'), 'autumn', 2027, inputOf(garden(), plain));
  const held = (from?: string, to?: string) => sow && heldBetween(sow, from, to)?.window;

  it('keeps its own ends where they lie inside', () => {
    expect(held('2027-07-01', '2028-05-01')).toEqual(sow?.window);
  });

  it('is cut to them, its preferred day with it', () => {
    expect(held('2027-09-20')).toEqual({ earliest: '2027-09-20', preferred: '2027-09-20', latest: '2027-10-01' });
    expect(held(undefined, '2027-09-01')).toEqual({
      earliest: '2027-08-20',
      preferred: '2027-09-01',
      latest: '2027-09-01',
    });
  });

  it('may be a single day, and is nothing a day later', () => {
    expect(held('2027-10-01')).toEqual({ earliest: '2027-10-01', preferred: '2027-10-01', latest: '2027-10-01' });
    expect(held('2027-10-02')).toBeUndefined();
  });
});

describe('a window counted from the median freeze', () => {
  it('stays where it is while a mild autumn goes on', () => {
    const of = garden();
    const mild = eachDay('2027-09-01', '2027-10-31').map((day) => ({ day, kind: 'observed' as const, tminC: 8 }));
    const knowing = withWeather(milwaukee, mild, '2027-10-31');
    const windowIn = (climate: Climate) => sowWindow(coverParts('oats'), 'autumn', 2027, inputOf(of, climate));
    expect(windowIn(knowing)?.window).toEqual(windowIn(milwaukee)?.window);
  });
});
