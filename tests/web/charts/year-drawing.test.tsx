import { describe, expect, it } from 'vitest';
import type { BedYears } from '../../../src/digest/bed-years.ts';
import { YearMonths, YearStrip } from '../../../src/web/charts/year-drawing.tsx';

const days = { from: '2027-09-01', to: '2029-09-01' };
const months = (span: { from: string; to: string }) => String(<YearMonths days={span} />);

describe('the drawing of two years', () => {
  it('names each year over its first month', () => {
    const years = [...months(days).matchAll(/class="held-name" x="([\d.]+)"[^>]*>(\d{4})</g)].map(([, x, year]) => [
      year,
      Math.round(Number(x)),
    ]);
    // 720 wide for 731 days: four months of 2027 are 122 days, and a whole year more is 366 in leap-year 2028.
    expect(years).toEqual([
      ['2027', 3],
      ['2028', Math.round((720 * 122) / 731) + 3],
      ['2029', Math.round((720 * 488) / 731) + 3],
    ]);
  });

  it('leaves a year out that begins on the last day shown', () => {
    expect(months({ from: '2027-01-01', to: '2029-01-01' })).not.toContain('2029');
  });

  it('writes the word of a window behind it where no room is before it', () => {
    const window = {
      key: 'cover-sow/stand:s',
      doing: 'sow' as const,
      what: 'rye',
      from: '2027-09-02',
      to: '2027-10-01',
    };
    const bed = { id: 'a', name: 'A', lengthM: 1, widthM: 1, raised: true, watered: false };
    const strip = (windows: BedYears['windows']) =>
      String(<YearStrip years={{ bed, held: [], windows }} days={days} today="2027-09-08" words="A" />);
    expect(strip([window])).not.toContain('text-anchor="end"');
    expect(strip([{ ...window, from: '2027-12-02', to: '2027-12-20' }])).toContain('text-anchor="end"');
  });
});
