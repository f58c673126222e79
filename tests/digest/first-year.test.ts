import { describe, expect, test } from 'vitest';
import { unknownsOf } from '../../src/digest/first-year.ts';
import { bed, cover, garden, sown } from '../practices/gardens.ts';

describe('what is not known of a garden', () => {
  test('names the beds whose past is not told, and that no rule is broken by it', () => {
    const known = garden({
      beds: [bed('a'), bed('b'), bed('c')],
      plantings: [sown('carrot', '2026-06-01'), sown('pea', '2027-05-01', { bedId: 'b' })],
      stands: [cover('oats', '2026-08-20', { bedId: 'c' })],
    });
    expect(unknownsOf(known, '2027-02-01')).toEqual([
      expect.stringMatching(/^What grew in Bed B before is not known\. /),
    ]);
  });

  test('says that no crop is planned yet, until one is', () => {
    const empty = unknownsOf(garden(), '2027-02-01');
    expect(empty).toHaveLength(2);
    expect(empty[1]).toContain('No crop is planned yet.');
    expect(unknownsOf(garden({ plantings: [sown('pea', '2027-05-01')] }), '2027-02-01')).toHaveLength(1);
  });

  test('is told for a year from the day it was brought in, a leap day among them', () => {
    expect(unknownsOf(garden({ startedOn: '2028-02-29' }), '2029-03-01')).toHaveLength(2);
    expect(unknownsOf(garden({ startedOn: '2028-02-29' }), '2029-03-02')).toEqual([]);
  });
});
