import { describe, expect, test } from 'vitest';
import { leewayLine } from '../../src/digest/entry-notes.ts';
import type { PlannedTask } from '../../src/schedule/plan.ts';
import { samplePlan, sampleTask } from '../web/sample-plan.ts';

const DAY = '2027-12-30';

function leewayOf(...changes: Partial<PlannedTask>[]): string {
  const tasks = changes.map((change, i) => sampleTask(`t${i}`, DAY, { lotId: 'one', ...change }));
  const [entry] = samplePlan(tasks).entries;
  return entry === undefined ? '' : leewayLine({ entry, tasks }, 'metric');
}

const until = (latest: string) => ({ window: { earliest: '2027-12-20', preferred: DAY, latest } });

describe('how free the day of an entry is', () => {
  test('is told by its last day, with the year where that is another', () => {
    expect(leewayOf(until('2027-12-31'))).toBe('Any day to 31 December.');
    expect(leewayOf(until('2028-01-04'))).toBe('Any day to 4 January 2028.');
  });

  test('goes by the first of its tasks to close', () => {
    expect(leewayOf(until('2028-01-04'), until('2027-12-31'))).toBe('Any day to 31 December.');
  });

  test('is none on the last day, or where there is only one', () => {
    expect(leewayOf(until(DAY))).toBe('This is its last day.');
    expect(leewayOf({})).toBe('This day only.');
  });

  test('names what the day must be like, each thing once', () => {
    const needs = ['dry-day', 'above-freezing'] as const;
    expect(leewayOf({ ...until('2028-01-04'), needs }, { ...until('2028-01-04'), needs: ['dry-day'] })).toBe(
      'Any day to 4 January 2028; needs a dry day, air above freezing.',
    );
    expect(leewayOf({ ...until(DAY), needs: ['dry-day'], state: 'lapsed' })).toBe('Needs a dry day.');
  });

  test('is no matter once it is done', () => {
    expect(leewayOf({ ...until('2028-01-04'), needs: ['dry-day'], state: 'done' })).toBe('');
  });
});
