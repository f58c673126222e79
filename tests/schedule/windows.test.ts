import { describe, expect, it } from 'vitest';
import { orderedWindows } from '../../src/schedule/windows.ts';
import { type Days, draft } from './drafts.ts';

const MAY: Days = ['2027-05-01', '2027-05-10', '2027-05-20'];

/** A draft that waits for others. */
function waiting(job: string, days: Days, ...after: [key: string, minDays: number][]) {
  return draft(job, 'a', days, { after: after.map(([key, minDays]) => ({ key, minDays })) });
}

describe('orderedWindows', () => {
  it('leaves a window alone that waits for nothing', () => {
    const windows = orderedWindows([draft('clear', 'a', MAY)]);
    expect(windows.get('clear/bed:a')).toEqual({ earliest: '2027-05-01', latest: '2027-05-20' });
  });

  it('opens a window no earlier than what it waits for allows', () => {
    const sow = waiting('sow', ['2027-04-01', '2027-05-12', '2027-06-30'], ['clear/bed:a', 14]);
    const windows = orderedWindows([sow, draft('clear', 'a', MAY)]);
    expect(windows.get('sow/bed:a')).toEqual({ earliest: '2027-05-15', latest: '2027-06-30' });
  });

  it('closes a window so early that what waits for it keeps its last day', () => {
    const sow = waiting('sow', ['2027-04-01', '2027-05-12', '2027-05-12'], ['clear/bed:a', 3]);
    const windows = orderedWindows([draft('clear', 'a', MAY), sow]);
    expect(windows.get('clear/bed:a')).toEqual({ earliest: '2027-05-01', latest: '2027-05-09' });
  });

  it('carries both ends along a chain', () => {
    const topdress = waiting('topdress', ['2027-04-01', '2027-05-01', '2027-06-30'], ['clear/bed:a', 2]);
    const sow = waiting('sow', ['2027-04-01', '2027-05-01', '2027-05-15'], ['topdress/bed:a', 5]);
    const windows = orderedWindows([sow, topdress, draft('clear', 'a', MAY)]);
    expect(windows.get('clear/bed:a')).toEqual({ earliest: '2027-05-01', latest: '2027-05-08' });
    expect(windows.get('topdress/bed:a')).toEqual({ earliest: '2027-05-03', latest: '2027-05-10' });
    expect(windows.get('sow/bed:a')).toEqual({ earliest: '2027-05-08', latest: '2027-05-15' });
  });

  it('keeps the ends of a window that the order would close altogether', () => {
    const sow = waiting('sow', ['2027-04-01', '2027-04-10', '2027-04-20'], ['clear/bed:a', 0]);
    const windows = orderedWindows([draft('clear', 'a', MAY), sow]);
    expect(windows.get('clear/bed:a')).toEqual({ earliest: '2027-05-01', latest: '2027-05-20' });
    expect(windows.get('sow/bed:a')).toEqual({ earliest: '2027-04-20', latest: '2027-04-20' });
  });

  it('is held up by nothing that is not in the plan', () => {
    const windows = orderedWindows([waiting('sow', MAY, ['clear/bed:gone', 30])]);
    expect(windows.get('sow/bed:a')).toEqual({ earliest: '2027-05-01', latest: '2027-05-20' });
  });

  it('takes other spans than the windows where it is given them', () => {
    const sow = waiting('sow', MAY, ['clear/bed:a', 1]);
    const windows = orderedWindows([draft('clear', 'a', MAY), sow], ({ key, window }) =>
      key === 'clear/bed:a' ? { earliest: '2027-05-14', latest: '2027-05-14' } : window,
    );
    expect(windows.get('sow/bed:a')).toEqual({ earliest: '2027-05-15', latest: '2027-05-20' });
  });

  it('counts days over New Year and over 29 February', () => {
    const newYear = waiting('sow', ['2027-12-01', '2027-12-20', '2028-02-01'], ['clear/bed:a', 7]);
    const first = orderedWindows([draft('clear', 'a', ['2027-12-28', '2027-12-28', '2028-01-10']), newYear]);
    expect(first.get('sow/bed:a')?.earliest).toBe('2028-01-04');
    const leap = waiting('sow', ['2028-02-01', '2028-02-20', '2028-03-02'], ['clear/bed:a', 7]);
    const second = orderedWindows([draft('clear', 'a', ['2028-02-20', '2028-02-20', '2028-03-31']), leap]);
    expect(second.get('clear/bed:a')?.latest).toBe('2028-02-24');
    expect(second.get('sow/bed:a')?.earliest).toBe('2028-02-27');
  });

  it('refuses tasks that wait for each other in a ring, and names one', () => {
    const ring = [waiting('clear', MAY, ['sow/bed:a', 0]), waiting('sow', MAY, ['clear/bed:a', 0])];
    expect(() => orderedWindows(ring)).toThrow('Task "clear/bed:a" waits for itself through its "after".');
  });
});
