import { describe, expect, it } from 'vitest';
import type { Garden } from '../../../src/garden/garden.ts';
import { bed, draft, draftsIn, frostDates, garden, milwaukee } from '../gardens.ts';

/** Median freezes 10 May and 1 October. */
const climate = frostDates('05-10', '10-01');

const samples = (of: Garden, today = of.startedOn, over = climate) =>
  draftsIn(of, over, today).filter(({ kind }) => kind === 'take-soil-sample');
const keys = (of: Garden, today?: string) => samples(of, today).map(({ key }) => key);

describe('a soil sample', () => {
  it('is due in the first autumn where no test is known', () => {
    const [task] = samples(garden());
    expect(task?.key).toBe('soil-sample/garden/2027');
    expect(task?.window.preferred).toBe('2027-08-20');
    expect(task?.makes).toEqual([{ makes: 'soil-sampled' }]);
    expect(task?.reasons[0]?.rule).toBe('soil-sample.first');
  });

  it('keeps its own weeks before the first freeze where no layer is to go on', () => {
    const skipped = { 'topdress/bed:a/2028/before-winter': '2027-01-01' };
    const [task] = samples(garden({ skipped }));
    expect(task?.window).toMatchObject({ earliest: '2027-08-20', preferred: '2027-09-17' });
  });

  it('comes before the compost of its autumn, which waits for it', () => {
    const tasks = draftsIn(garden(), climate);
    const sample = draft(tasks, 'soil-sample/');
    const layer = draft(tasks, 'topdress/bed:a/2028/before-winter');
    expect(sample.window.preferred <= layer.window.latest).toBe(true);
    expect(sample.window.latest <= layer.window.latest).toBe(true);
    expect(layer.after).toContainEqual({ key: sample.key, minDays: 0, yields: true });
    expect(sample.reasons.map(({ rule }) => rule)).toContain('soil-sample.before-layer');
  });

  it('says where compost went on before it could be taken', () => {
    const beds = [bed('a'), bed('b')];
    const told = (of: Garden) => draft(draftsIn(of, climate, '2027-09-10'), 'soil-sample/').steps.join(' ');
    const layer = draft(draftsIn(garden({ beds }), climate), 'topdress/bed:a/2028/before-winter');
    const done = [{ ...layer, on: '2027-09-09', entry: 1 }];
    expect(told(garden({ beds }))).not.toContain('take no slices');
    expect(told(garden({ beds, done }))).toContain('can be taken in Bed A: take no slices there.');
  });

  it('is due in the third autumn after the last one, and not before', () => {
    expect(keys(garden({ soilTests: [{ on: '2025-10-01' }] }))).toEqual([]);
    expect(keys(garden({ soilTests: [{ on: '2024-10-01' }] }))).toEqual(['soil-sample/garden/2027']);
    expect(keys(garden({ soilTests: [{ on: '2024-02-29' }] }))).toEqual(['soil-sample/garden/2027']);
  });

  it('once taken is not asked again within the plan', () => {
    expect(keys(garden({ soilTests: [{ on: '2027-09-20' }] }), '2027-09-21')).toEqual([]);
  });

  it('that nobody took is asked again the next autumn, one at a time', () => {
    expect(keys(garden(), '2027-11-01')).toEqual(['soil-sample/garden/2027']);
    expect(keys(garden(), '2028-03-01')).toEqual(['soil-sample/garden/2028']);
  });

  it('of a garden begun in winter waits for the autumn to come', () => {
    expect(keys(garden({ startedOn: '2027-12-10' }))).toEqual(['soil-sample/garden/2028']);
  });

  it('of a bed with a test of its own keeps that bed’s round', () => {
    const beds = [bed('a'), bed('b')];
    const soilTests = [{ on: '2024-10-01', bedId: 'b' }, { on: '2026-10-01' }];
    const [task, ...others] = samples(garden({ beds, soilTests }));
    expect(others).toEqual([]);
    expect(task?.key).toBe('soil-sample/bed:b/2027');
    expect(task?.makes).toEqual([{ makes: 'soil-sampled', bedId: 'b' }]);
  });

  it('is never asked where no freeze ends the year', () => {
    const mild = { ...milwaukee, freezes: frostDates('05-10', '10-01').freezes };
    expect(samples(garden(), '2027-01-01', mild)).toHaveLength(1);
    const none = { kind: 'none' as const };
    const never = { 'last-spring': none, 'first-autumn': none };
    expect(samples(garden(), '2027-01-01', { ...mild, freezes: { 32: never, 28: never, 24: never } })).toEqual([]);
  });

  it('falls in the southern autumn', () => {
    const of = garden({ startedOn: '2027-07-10', place: { latitude: -43 } });
    const task = draft(draftsIn(of, frostDates('10-20', '04-20', -43)), 'soil-sample/');
    expect(task.key).toBe('soil-sample/garden/2027');
    expect(task.window.preferred).toBe('2028-03-09');
  });
});
