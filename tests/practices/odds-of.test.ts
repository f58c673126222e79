import { describe, expect, test } from 'vitest';
import { addDays } from '../../src/measures/days.ts';
import { readableIn } from '../../src/measures/quantity.ts';
import { draftsOf } from '../../src/practices/catalogue.ts';
import { freezeWords, soilWarmWords } from '../../src/practices/odds-of.ts';
import { demoClimate, demoGarden } from '../demo-data/demo-season.ts';

describe('odds', () => {
  test.each(['2027-03-01', '2027-06-15', '2027-11-01'])(
    'say what they are of, whatever task has them, on %s',
    (today) => {
      const drafts = draftsOf({ garden: demoGarden(today), climate: demoClimate, today, until: addDays(today, 396) });
      const withOdds = drafts.filter(({ odds }) => odds !== undefined);
      expect(new Set(withOdds.map(({ kind }) => kind)).size).toBeGreaterThan(8);
      for (const { key, odds, oddsOf } of drafts)
        expect([key, oddsOf !== undefined]).toEqual([key, odds !== undefined]);
    },
  );

  test('of a freeze and of warm soil are told in the units of the reader', () => {
    // 28 °F are −2.2 °C, by the definition of the degree.
    expect(freezeWords({ event: 'last-spring', limitF: 28 })).toBe('the last spring freeze of ⟦-2.2 tempC⟧');
    expect(readableIn('us', freezeWords({ event: 'first-autumn', limitF: 32 }))).toBe(
      'the first autumn freeze of 32 °F',
    );
    expect(readableIn('metric', soilWarmWords(5))).toBe('the first spring day with soil of 5 °C');
    expect(readableIn('metric', soilWarmWords(5, { fit: true }))).toBe(
      'the first spring day with soil fit to work and of 5 °C',
    );
  });
});
