import { expect, test } from 'vitest';
import { wrapped } from '../../src/digest/wrapped.ts';

test('nothing makes no line', () => {
  expect(wrapped('')).toEqual([]);
  expect(wrapped('  \n ')).toEqual([]);
});

test('words fill a line up to its eightieth character', () => {
  const eighty = `${'a'.repeat(39)} ${'b'.repeat(40)}`;
  expect(wrapped(eighty)).toEqual([eighty]);
  expect(wrapped(`${eighty}b`)).toEqual(['a'.repeat(39), 'b'.repeat(41)]);
});

test('the lines after the first hang', () => {
  expect(wrapped(`${'a'.repeat(50)} ${'b'.repeat(50)}`, '  ', '    ')).toEqual([
    `  ${'a'.repeat(50)}`,
    `    ${'b'.repeat(50)}`,
  ]);
});

test('a word longer than a line stands alone and whole', () => {
  expect(wrapped(`see ${'x'.repeat(90)} here`)).toEqual(['see', 'x'.repeat(90), 'here']);
});
