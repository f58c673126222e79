import { describe, expect, it } from 'vitest';
import { PLACES, recordRows } from '../climate/real-data.ts';
import { scoreOf, trialsOf } from '../hindcast/hindcast.ts';

const YEARS = Array.from({ length: 30 }, (_, i) => 1991 + i);
const trials = (['milwaukee', 'bozeman'] as const).flatMap((name) =>
  trialsOf({ name, ...PLACES[name], rows: recordRows(name) }, YEARS),
);

describe('dates foretold for 1991 to 2020 from what was known then (NOAA GHCN-Daily)', () => {
  it('fall between the early and the late day in 75 to 85 of a hundred cases', () => {
    const { trials: dates, insideShare } = scoreOf(trials);
    expect(dates).toBeGreaterThan(500);
    expect(insideShare).toBeGreaterThan(0.75);
    expect(insideShare).toBeLessThan(0.85);
  });

  it('are nearer than the plain median for heat, once spring has begun', () => {
    for (const place of ['milwaukee', 'bozeman']) {
      const heat = trials.filter((row) => row.place === place && row.target === '400 degree-days');
      const { meanErrorDays, plainMeanErrorDays } = scoreOf(heat.filter(({ standing }) => standing === '04-15'));
      expect(meanErrorDays).toBeLessThan(0.8 * plainMeanErrorDays);
    }
  });
});
