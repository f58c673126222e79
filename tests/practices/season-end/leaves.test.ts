import { describe, expect, it } from 'vitest';
import { draft, draftsIn, frostDates, garden, milwaukee } from '../gardens.ts';

const leaves = (parts: Parameters<typeof garden>[0] = {}, climate = milwaukee) =>
  draft(draftsIn(garden(parts), climate), 'leaves/garden/2027');

describe('leaves', () => {
  it('are gathered from the first freeze on, best two weeks after it, before the usual winter', () => {
    // Median first freeze 23 October; the usual day is below freezing from 4 December.
    expect(leaves().window).toEqual({ earliest: '2027-10-23', preferred: '2027-11-06', latest: '2027-12-03' });
  });

  it('are two to one of a year of kitchen scraps', () => {
    // 2 people × 365 days × 0.5 L = 365 L, in tens 370 L, twice.
    const { supplies, steps } = leaves({ household: { people: 2 } });
    expect(supplies[0]?.amount).toEqual({ value: 740, unit: 'L' });
    expect(steps.join(' ')).toContain('⟦740 L⟧ loose');
  });

  it('are so many sacks once they are trodden down', () => {
    // 740 L × 119 / 267 = 330 L in tens: four sacks of 100 L, or three of 30 gal (113.6 L).
    const household = { people: 2 };
    expect(leaves({ household }).steps.join(' ')).toContain('⟦330 L⟧ trodden down: 4 sacks of ⟦100 L⟧');
    expect(leaves({ household, place: { units: 'us' } }).steps.join(' ')).toMatch(/: 3 sacks of ⟦113\.\d+ L⟧/);
  });

  it('go with clippings and cut covers too, where the household brings them to the pile', () => {
    const { supplies, reasons } = leaves({ household: { people: 2, clippingsL: 40, coverCutsL: 100 } });
    const mown = reasons.find(({ rule }) => rule === 'leaves.clippings');
    const weeks = Number(mown?.saw.weeks);
    // Milwaukee's mean air is above 10 °C from early May to the middle of October.
    expect(weeks).toBeGreaterThanOrEqual(21);
    expect(weeks).toBeLessThanOrEqual(25);
    expect(mown?.saw.clippings).toBe(40 * weeks);
    expect(supplies[0]?.amount?.value).toBe(2 * (370 + 40 * weeks + 100));
    expect(reasons.map(({ rule }) => rule)).toContain('leaves.covers');
  });

  it('say how much of them the winter bin wants', () => {
    // 2 people × 94 days × 0.5 L = 94 L, in tens 100 L, twice.
    expect(leaves({ household: { people: 2 } }).steps).toContain('Of these, ⟦200 L⟧ go beside the winter bin.');
  });

  it('are reckoned a person where nobody said how many eat', () => {
    const { supplies, steps } = leaves();
    expect(supplies[0]?.amount).toBeUndefined();
    expect(steps.join(' ')).toContain('⟦380 L⟧ of loose leaves a year for each person');
  });

  it('are not asked for where there is no bin', () => {
    expect(draftsIn(garden({ bins: [] })).filter(({ kind }) => kind === 'gather-leaves')).toEqual([]);
  });

  it('are gathered in autumn in the south', () => {
    const south = draftsIn(garden({ place: { latitude: -43 } }), frostDates('10-20', '04-20', -43));
    expect(draft(south, 'leaves/garden/2026').window.earliest).toBe('2027-04-20');
  });

  it('are dated alike in a winter that ends on a leap day', () => {
    const [plain, leap] = [2027, 2028].map((year) =>
      draft(draftsIn(garden({ startedOn: `${year}-05-01` })), `leaves/garden/${year}`),
    );
    expect(leap?.window.preferred.slice(5)).toBe(plain?.window.preferred.slice(5));
  });
});
