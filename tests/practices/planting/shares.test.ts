import { describe, expect, it } from 'vitest';
import type { Planting } from '../../../src/garden/garden.ts';
import { partOf } from '../../../src/practices/planting/amounts.ts';
import { bed, draft, draftsIn, frostDates, garden, setOut, sown } from '../gardens.ts';

/** Median freezes 10 May and 1 October. */
const climate = frostDates('05-10', '10-01');
const inBed = (areaM2?: number) => ({ ...setOut('kale', '2027-05-01'), ...(areaM2 === undefined ? {} : { areaM2 }) });

function supplies(plantings: readonly Planting[], key: string): string[] {
  return draft(draftsIn(garden({ plantings }), climate), key).supplies.map(({ what, amount }) =>
    `${what} ${amount?.value ?? ''}`.trim(),
  );
}

describe('the share of a bed a planting has', () => {
  it('is all of the width and so much of the length', () => {
    const wide = { ...bed('a'), lengthM: 3, widthM: 1.2 };
    expect(partOf({ bed: wide, planting: inBed(1.8) })).toMatchObject({ lengthM: expect.closeTo(1.5), widthM: 1.2 });
    expect(partOf({ bed: wide, planting: inBed() })).toMatchObject({ lengthM: 3, widthM: 1.2 });
  });

  it('takes so many plants fewer, and is done sooner', () => {
    const [whole] = supplies([inBed()], 'set-out/planting:kale');
    const [half] = supplies([inBed(1.44)], 'set-out/planting:kale');
    expect(Number.parseInt(half ?? '', 10)).toBeLessThan(Number.parseInt(whole ?? '', 10));
    const minutes = (areaM2?: number): number =>
      draft(draftsIn(garden({ plantings: [inBed(areaM2)] }), climate), 'set-out/planting:kale').effortMinutes;
    expect(minutes(1.44)).toBeLessThan(minutes());
  });

  it('tells how much goes in beside another crop, which is not known of crops without shares', () => {
    const lettuce = { ...sown('lettuce-leaf', '2027-05-10'), areaM2: 1 };
    expect(supplies([inBed(1.4), lettuce], 'sow/planting:lettuce')[0]).toMatch(/^leaf lettuce seed, for rows of \d/);
    expect(supplies([inBed(), sown('lettuce-leaf', '2027-05-10')], 'sow/planting:lettuce')[0]).toBe(
      'leaf lettuce seed',
    );
  });
});
