import { describe, expect, it } from 'vitest';
import { bedYears } from '../../src/digest/bed-years.ts';
import { bedGaps } from '../../src/practices/cover-cropping/fit/bed-gaps.ts';
import { chosenFit } from '../../src/practices/cover-cropping/fit/chosen-fit.ts';
import { bed, cover, garden, inputOf, milwaukee } from '../practices/gardens.ts';

/** Milwaukee's freezes are about 23 October: rye is sown from mid-September to 23 October there. */
const oddsOf = (sowOn: string, pins: Record<string, string> = {}) => {
  const input = inputOf(garden({ stands: [cover('cereal_rye', sowOn)], pins }), milwaukee);
  const [years] = bedYears(input, { tasks: [] });
  return years?.held.find(({ planned }) => planned)?.odds ?? [];
};

/** What the fit has for rye sown in the empty bed on the day. */
const fitOn = (sowOn: string) => {
  const input = inputOf(garden({ stands: [] }), milwaukee);
  const chosen = chosenFit(input, bedGaps(input, bed('a')), 'cereal_rye', sowOn);
  if (chosen === undefined || !('fit' in chosen)) throw new Error(`Rye cannot be sown on ${sowOn}.`);
  return chosen.fit;
};

describe('the odds of a planned cover in the year', () => {
  it.each(['2027-09-20', '2027-10-17'])('are those of its own sowing on %s, not of a better one', (sowOn) => {
    const { establish } = fitOn(sowOn);
    const { of, among } = establish?.share ?? { of: 0, among: 0 };
    expect(among).toBeGreaterThan(0);
    expect(oddsOf(sowOn)).toContain(`Grown in time: before hard cold in ${of} of ${among} seasons`);
  });

  it('are worse for rye sown at the end of its time', () => {
    const grown = (odds: readonly string[]) => Number(/hard cold in (\d+)/.exec(odds.join(' '))?.[1]);
    expect(grown(oddsOf('2027-10-17'))).toBeLessThan(grown(oddsOf('2027-09-20')));
  });

  it('flower in the summer after it is sown', () => {
    expect(oddsOf('2027-10-17').find((line) => line.startsWith('Flowers'))).toMatch(/⟦2028-0[56]-\d\d⟧/);
  });

  it('follow the day it is pinned to', () => {
    const pins = { 'cover-sow/stand:s': '2027-10-17' };
    expect(oddsOf('2027-09-20', pins)).toEqual(oddsOf('2027-10-17'));
  });
});
