import { describe, expect, it } from 'vitest';
import type { WinterOdds } from '../../../../src/practices/cover-cropping/fit/fit.ts';
import { pointsOf, verdictOf, type Weighed, winterAsMeant } from '../../../../src/practices/cover-cropping/fit/rank.ts';
import { nitrogenHeld } from './nitrogen-held.ts';

/** Oats that establish in every season, die in every winter and are gone in time. */
const well: Weighed = {
  coverIds: ['oats'],
  clashes: [],
  inSpring: false,
  onFrozenSoil: false,
  establish: { share: { of: 30, among: 30 } },
  winter: winter(0, 0, 29),
  meantToDie: true,
  cut: undefined,
  next: { met: 'yes', how: 'through residue', freeOn: '2028-03-25' },
  nitrogen: undefined,
  hungryNext: false,
  fixes: false,
  dense: true,
  winterHeld: true,
  bindsNext: false,
  wintersBare: 0,
  growsAgain: false,
  littleGrowth: false,
  grown: 1,
  openDays: 0,
};

function winter(lives: number, unsure: number, dies: number): WinterOdds {
  const among = lives + unsure + dies;
  const fate = dies >= 0.9 * among ? 'dies' : lives >= 0.9 * among ? 'lives' : 'unsure';
  const share = (of: number) => ({ of, among });
  return { fate, coldKnown: true, lives: share(lives), unsure: share(unsure), dies: share(dies), parts: [] };
}

const verdict = (parts: Partial<Weighed>) => verdictOf({ ...well, ...parts });
const points = (parts: Partial<Weighed>) => pointsOf({ ...well, ...parts });
const seasons = (of: number) => ({ establish: { share: { of, among: 30 } } });

describe('the verdict', () => {
  it('is good where all is well', () => {
    expect(verdict({})).toBe('good');
  });

  it('falls with the seasons it establishes in: eight, five, one in ten', () => {
    expect([24, 23, 15, 14, 3, 2].map((of) => verdict(seasons(of)))).toEqual([
      'good',
      'possible',
      'possible',
      'poor',
      'poor',
      'unusable',
    ]);
  });

  it('is unusable where a hard rule is broken or what follows cannot go in', () => {
    const reason = { rule: 'cover-fit.cabbage-kin', saw: {}, source: 'cover:S4e' } as const;
    expect(verdict({ clashes: [{ reason, forbids: true }] })).toBe('unusable');
    expect(verdict({ next: { met: 'no', how: 'after the wait', freeOn: '2028-06-30' } })).toBe('unusable');
  });

  it('is poor where the wait is cut short or nothing has grown by the cut', () => {
    expect(verdict({ next: { met: 'short', how: 'after the wait', freeOn: '2028-06-30' } })).toBe('poor');
    expect(verdict({ littleGrowth: true })).toBe('poor');
  });

  it('is possible at best where the winter is open, nothing is known, the bed lies open, or the plant stays', () => {
    expect(verdict({ winter: winter(5, 20, 4), meantToDie: false })).toBe('possible');
    expect(verdict({ establish: undefined })).toBe('possible');
    expect(verdict({ openDays: 61 })).toBe('possible');
    expect(verdict({ winterHeld: false })).toBe('possible');
    expect(verdict({ coverIds: ['white_clover'] })).toBe('possible');
  });
});

describe('the points', () => {
  it('are 195 for all that is asked but nitrogen', () => {
    // 30 + 20 + 15 + 15 + 25 + 25 + 10 + 10 + 10 + 10 + 25, by the table in docs/choosing-covers.md.
    expect(points({})).toBe(195);
  });

  it('lose by each thing that is not so', () => {
    expect(points(seasons(15))).toBe(180);
    // Half of 25 for half of sixty days, and 25 × 30/365 for the share of a year.
    expect(points({ openDays: 30 })).toBe(180.4);
    expect(points({ openDays: 365 })).toBe(145);
    expect(points({ growsAgain: true })).toBe(185);
    expect(points({ winterHeld: false })).toBe(170);
    expect(points({ grown: 0.4 })).toBe(189);
    expect(points({ dense: false })).toBe(185);
    expect(points({ bindsNext: true })).toBe(185);
    const free = { met: 'yes', how: 'through residue', freeOn: '2028-04-10', wantedOn: '2028-05-10' } as const;
    expect(points({ next: free })).toBe(187.5);
  });

  it('count nitrogen that is brought, twice as much before a hungry crop, and what is tied up against it', () => {
    const lives = { winter: winter(29, 0, 0), meantToDie: false };
    const brought = { ...lives, nitrogen: nitrogenHeld(2, 3) };
    expect(points({ ...brought, fixes: true }) - points(lives)).toBe(5);
    expect(points({ ...brought, fixes: true, hungryNext: true }) - points(lives)).toBe(10);
    expect(points(brought) - points(lives)).toBe(0);
    expect(points({ ...lives, nitrogen: nitrogenHeld(-5, 0) }) - points(lives)).toBe(-5);
    // Winter killed it: half is reckoned lost by spring.
    expect(points({ fixes: true, nitrogen: nitrogenHeld(2, 3) }) - points({})).toBe(2.5);
  });
});

describe('winters that do what a cover was sown for', () => {
  it('are counted, those nobody can tell by half', () => {
    expect(winterAsMeant({ winter: winter(10, 10, 10), meantToDie: true })).toBe(0.5);
    expect(winterAsMeant({ winter: winter(29, 0, 0), meantToDie: false })).toBe(1);
    expect(winterAsMeant({ winter: winter(29, 0, 0), meantToDie: true })).toBe(0);
  });

  it('go by the zone where none is counted', () => {
    const byZone = (fate: 'lives' | 'unsure' | 'dies'): WinterOdds => ({ ...winter(0, 0, 0), fate });
    expect(
      [byZone('lives'), byZone('unsure'), byZone('dies')].map((odds) =>
        winterAsMeant({ winter: odds, meantToDie: false }),
      ),
    ).toEqual([1, 0.5, 0]);
  });
});
