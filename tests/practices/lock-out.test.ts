import { describe, expect, it } from 'vitest';
import type { DiseaseFound, Garden } from '../../src/garden/garden.ts';
import { vegetableById } from '../../src/handbook/vegetables.ts';
import { coverLockOut, cropLockOut, lockedPlantings, lockedStands } from '../../src/practices/lock-out.ts';
import { bed, cover, garden, setOut, sown } from './gardens.ts';

const found = (parts: Partial<DiseaseFound> = {}): DiseaseFound => ({
  bedId: 'a',
  cropId: 'cabbage',
  disease: 'clubroot',
  on: '2027-07-20',
  ...parts,
});

const lockOf = (of: Garden, crop: string, day: string) => cropLockOut(of, 'a', vegetableById(crop), day);

describe('a lock-out', () => {
  it('ends on the same day so many years on, that day being free', () => {
    const of = garden({ diseases: [found()] });
    expect(lockOf(of, 'kale', '2034-07-19')?.until).toBe('2034-07-20');
    expect(lockOf(of, 'kale', '2034-07-20')).toBeUndefined();
  });

  it('that began on 29 February ends on 1 March where the year has no leap day, and on it where it has', () => {
    const clubroot = garden({ diseases: [found({ on: '2028-02-29' })] });
    expect(lockOf(clubroot, 'kale', '2030-05-01')?.until).toBe('2035-03-01');
    const wilt = garden({ diseases: [found({ cropId: 'tomato', disease: 'verticillium', on: '2028-02-29' })] });
    expect(lockOf(wilt, 'potato', '2030-05-01')?.until).toBe('2032-02-29');
  });

  it('holds in its own bed only, and not before it was found', () => {
    const of = garden({ beds: [bed('a'), bed('b')], diseases: [found()] });
    expect(cropLockOut(of, 'b', vegetableById('kale'), '2028-05-01')).toBeUndefined();
    expect(lockOf(of, 'kale', '2027-05-01')).toBeUndefined();
    expect(lockOf(of, 'tomato', '2028-05-01')).toBeUndefined();
  });

  it('is counted from the end of the last host that stood there since', () => {
    const plantings = [setOut('kale', '2027-08-01', { harvested: '2027-11-10' })];
    const of = garden({ startedOn: '2027-12-01', plantings, diseases: [found()] });
    expect(lockOf(of, 'kale', '2028-05-01')).toMatchObject({ since: '2027-11-10', until: '2034-11-10' });
  });

  it('that was over is not begun again by a host sown after it', () => {
    const plantings = [setOut('kale', '2027-08-01')];
    const of = garden({ startedOn: '2027-12-01', plantings, diseases: [found({ on: '2020-07-20' })] });
    expect(lockOf(of, 'radish', '2028-05-01')).toBeUndefined();
    expect(lockOf({ ...of, diseases: [found({ on: '2020-08-20' })] }, 'radish', '2028-05-01')?.until).toBe(
      '2034-08-01',
    );
  });

  it('is that of the disease that lasts longest where several were found', () => {
    const of = garden({ diseases: [found({ disease: 'black rot' }), found(), found({ disease: 'blackleg' })] });
    expect(lockOf(of, 'kale', '2028-05-01')?.finding.name).toBe('clubroot');
  });

  it('of an unknown disease holds the family out for the longest interval of the crop, covers with it', () => {
    const of = garden({ diseases: [found({ disease: 'something odd' })] });
    expect(lockOf(of, 'radish', '2034-07-19')).toMatchObject({ years: 7, source: 'veg:V12' });
    expect(coverLockOut(of, 'a', 'mustard', '2028-08-01')).toBeDefined();
    const beans = garden({ diseases: [found({ cropId: 'snap-bean', disease: 'something odd' })] });
    expect(lockOf(beans, 'pea', '2028-05-01')).toMatchObject({ years: 3, source: 'veg:V36' });
    expect(coverLockOut(beans, 'a', 'oats-field-pea', '2028-08-01')).toBeDefined();
  });

  it('of an unknown disease of corn leaves rye and oats in', () => {
    const of = garden({ diseases: [found({ cropId: 'sweet-corn', disease: 'rust' })] });
    expect(['cereal_rye', 'oats'].map((id) => coverLockOut(of, 'a', id, '2027-09-01'))).toEqual([undefined, undefined]);
    expect(lockOf(of, 'sweet-corn', '2028-05-01')).toBeDefined();
  });

  it('of an unknown disease in a lasting bed keeps that crop alone out, with no end', () => {
    const of = garden({ diseases: [found({ cropId: 'rhubarb', disease: 'rust' })] });
    expect(lockOf(of, 'rhubarb', '2090-05-01')).toMatchObject({ years: 'for good' });
    expect(lockOf(of, 'asparagus', '2028-05-01')).toBeUndefined();
  });
});

describe('what a lock-out breaks', () => {
  const plantings = [
    setOut('cabbage', '2027-05-01', { harvested: '2027-09-01' }),
    sown('radish', '2028-04-20'),
    sown('carrot', '2029-04-20'),
    setOut('broccoli', '2035-05-01'),
  ];

  it('is each planned planting of a host until it ends, and never the sick one', () => {
    const of = garden({ plantings, diseases: [found()] });
    expect(lockedPlantings(of, 'a').map(({ planting }) => planting.cropId)).toEqual(['radish']);
  });

  it('is each planned cover that carries it, also one whose day has just passed, but none already sown', () => {
    const stands = [
      cover('mustard', '2027-07-10', { id: 'late' }),
      cover('oats', '2027-09-10', { id: 'oats' }),
      cover('mustard', '2026-08-20', { id: 'sown' }),
    ];
    const of = garden({ stands, diseases: [found()] });
    expect(lockedStands(of, 'a').map(({ stand }) => stand.id)).toEqual(['late']);
  });
});
