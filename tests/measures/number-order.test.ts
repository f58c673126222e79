import { expect, test } from 'vitest';
import { inNumberOrder, numbered } from '../../src/measures/number-order.ts';

test('names of one kind stand in the order of their numbers, and others keep their place', () => {
  expect(inNumberOrder(['Bed 1', 'Bed 10', 'Wall bed', 'Bed 2', 'Pot 3', 'Apron', 'Pot 1'])).toEqual([
    'Bed 1',
    'Bed 2',
    'Wall bed',
    'Bed 10',
    'Pot 1',
    'Apron',
    'Pot 3',
  ]);
});

test('a name that ends in no number has none', () => {
  expect([numbered('Bed 12'), numbered('12'), numbered('Bed twelve'), numbered('')]).toEqual([
    { base: 'Bed ', number: 12 },
    { base: '', number: 12 },
    undefined,
    undefined,
  ]);
});
