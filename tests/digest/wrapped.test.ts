import { expect, test } from 'vitest';
import { unwrapped, wrapped } from '../../src/digest/wrapped.ts';

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

test('broken lines are whole again, and lines of their own stay so', () => {
  const long = `  [ ] ${'Cut the rye in South bed before it flowers, and let it lie. '.repeat(3)}`.trimEnd();
  const lines = ['Week of 19 to 25 April', '', long, '      Last day 25 April.', '  Wed 28 April: Cut the rye'];
  const text = lines.flatMap((line) => (line === long ? wrapped(line, '  ', '      ') : [line])).join('\n');
  expect(text.split('\n').length).toBeGreaterThan(lines.length + 1);
  expect(unwrapped(text)).toBe(lines.map((line) => line.replace(/\s+$/, '')).join('\n'));
});
