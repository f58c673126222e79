import { expect, it } from 'vitest';
import { capital } from '../../src/measures/capital.ts';

it('a sentence begins with a large letter, and keeps the rest', () => {
  expect(capital('snap bean, then Swiss chard')).toBe('Snap bean, then Swiss chard');
  expect(capital('⟦13 mm⟧ of compost')).toBe('⟦13 mm⟧ of compost');
  expect([capital(''), capital('a'), capital('élan')]).toEqual(['', 'A', 'Élan']);
});
