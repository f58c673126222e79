import { describe, expect, it } from 'vitest';
import type { Fact } from '../../src/garden/facts.ts';
import type { Garden } from '../../src/garden/garden.ts';
import { done, exampleFile, gardenOf, imported, ledgerOf } from './example-garden.ts';

const RYE = 'north-bed-rye-2027';
const SOW = `cover-sow/stand:${RYE}`;
const ORDER = `cover-order/stand:${RYE}`;

const planned = (sowOn: string, instead?: string[]): Fact => ({
  kind: 'stand-planned',
  standId: RYE,
  bedId: 'north-bed',
  coverId: 'cereal_rye',
  sowOn,
  ...(instead ? { instead } : {}),
});
const dropped: Fact = { kind: 'stand-dropped', standId: RYE, bedId: 'north-bed', coverId: 'cereal_rye' };
const skipped = (key: string): Fact => ({ kind: 'tasks-skipped', on: '2027-08-12', tasks: [{ key, title: 'A task' }] });
const pinned = (key: string): Fact => ({ kind: 'day-pinned', key, title: 'A task', day: '2027-09-20' });
const mulch = (kind: 'leaves' | 'straw', from: string, to?: string): Fact => ({
  kind: 'mulch-planned',
  bedId: 'north-bed',
  mulch: kind,
  from,
  ...(to ? { to } : {}),
});

const gardenAfter = (...facts: Fact[]): Garden =>
  gardenOf(
    ledgerOf(
      ['2027-06-01', imported(exampleFile({ coverStands: [] }))],
      ...facts.map((fact) => ['2027-08-13', fact] as [string, Fact]),
    ),
  );

describe('a cover that is chosen', () => {
  it('asks for all its work, whatever was skipped of it while it was a suggestion', () => {
    const garden = gardenAfter(skipped(SOW), skipped('bed-clear/planting:carrots'), planned('2027-09-10'));
    expect(garden.skipped).toEqual({ 'bed-clear/planting:carrots': '2027-08-12' });
  });

  it('is sown on the day it is chosen for, whatever day an earlier plan of it was held to', () => {
    expect(gardenAfter(planned('2027-09-10'), pinned(SOW), dropped, planned('2027-09-05')).pins).toEqual({});
    expect(gardenAfter(planned('2027-09-10'), pinned(SOW), planned('2027-09-05', [RYE])).pins).toEqual({});
  });

  it('keeps what is said of it afterwards', () => {
    const garden = gardenAfter(planned('2027-09-10'), pinned(SOW), skipped(ORDER));
    expect([garden.pins, garden.skipped]).toEqual([{ [SOW]: '2027-09-20' }, { [ORDER]: '2027-08-12' }]);
  });

  it('keeps seed that was ordered for it as ordered', () => {
    const garden = gardenAfter(planned('2027-09-10'), done('2027-08-13', ORDER), dropped, planned('2027-09-05'));
    expect(garden.done.map(({ key }) => key)).toEqual([ORDER]);
  });

  it('takes nothing from another whose id begins like its own', () => {
    const other = `cover-sow/stand:${RYE}-2`;
    expect(gardenAfter(skipped(other), planned('2027-09-10')).skipped).toHaveProperty([other]);
  });
});

describe('a mulch that is chosen', () => {
  const lying = (...facts: Fact[]) => gardenAfter(...facts).mulches.map(({ mulch: kind, from }) => [kind, from]);

  it('takes the place of any it would lie on', () => {
    const leaves = mulch('leaves', '2027-09-01', '2028-05-20');
    expect(lying(leaves, mulch('straw', '2027-09-01', '2028-05-20'))).toEqual([['straw', '2027-09-01']]);
    expect(lying(leaves, mulch('straw', '2027-11-01'))).toEqual([['straw', '2027-11-01']]);
    expect(lying(mulch('straw', '2027-11-01'), leaves)).toEqual([['leaves', '2027-09-01']]);
  });

  it('leaves alone one that ends before it, or lies on another bed', () => {
    const leaves = mulch('leaves', '2027-09-01', '2028-05-20');
    expect(lying(leaves, mulch('straw', '2028-05-20'))).toHaveLength(2);
    expect(lying({ ...leaves, bedId: 'south-bed' } as Fact, mulch('straw', '2027-09-01'))).toHaveLength(2);
  });

  it('asks to be laid, whatever was skipped of a mulch there before', () => {
    const key = 'mulch-bare/bed:north-bed/2027';
    expect(gardenAfter(skipped(key), mulch('straw', '2027-11-01')).skipped).toEqual({});
  });
});
