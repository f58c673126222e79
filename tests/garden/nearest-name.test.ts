import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { letterChanges, nearestNames, suggestion } from '../../src/garden/nearest-name.ts';

const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 6 });

describe('letter changes', () => {
  it.each([
    // The textbook example of edit distance.
    ['kitten', 'sitting', 3],
    ['carot', 'carrot', 1],
    ['', 'oats', 4],
    ['oats', 'oats', 0],
  ])('%s to %s: %i', (from, to, changes) => {
    expect(letterChanges(from, to)).toBe(changes);
  });

  it('are as many one way as the other, and never more than by a third word', () => {
    fc.assert(
      fc.property(word, word, word, (a, b, c) => {
        expect(letterChanges(a, b)).toBe(letterChanges(b, a));
        expect(letterChanges(a, c)).toBeLessThanOrEqual(letterChanges(a, b) + letterChanges(b, c));
        expect(letterChanges(a, b) === 0).toBe(a === b);
      }),
    );
  });
});

describe('the nearest known name', () => {
  const known = ['carrot', 'parsnip', 'field_pea', 'pea', 'lengthM'];

  it('is found through a slip, in small letters or capitals', () => {
    expect(nearestNames('carot', known)).toEqual(['carrot']);
    expect(nearestNames('LENGTHm', known)).toEqual(['lengthM']);
  });

  it('may hold the whole word', () => {
    expect(nearestNames('field', ['oats', 'field_pea'])).toEqual(['field_pea']);
  });

  it('is not stretched to what is nothing alike', () => {
    expect(nearestNames('zzzzzzzz', known)).toEqual([]);
  });

  it('is suggested, or else every name is', () => {
    expect(suggestion('parsnp', known)).toBe('Did you mean parsnip?');
    expect(suggestion('zzzzzzzz', ['oats', 'rye'])).toBe('Known are: oats, rye.');
  });
});
