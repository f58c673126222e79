import { expect, test } from 'vitest';
import { apart, bandPath, type Label, linePath } from '../../../src/web/charts/lines.ts';

test('a line breaks where a point is missing, and a point alone is a dash', () => {
  const at = (x: number) => ({ x, y: 2 * x });
  expect(linePath([at(0), at(1), undefined, at(3), undefined, at(5), at(6.04)])).toBe('M0 0L1 2M3 6h1M5 10L6 12.1');
  expect(linePath([])).toBe('');
});

test('a band runs along its upper edge and back along its lower one', () => {
  const edge = (x: number) => ({ x, highY: 1, lowY: 9 });
  expect(bandPath([edge(0), edge(1), undefined, edge(3)])).toBe('M0 1L1 1L1 9L0 9Z');
});

const label = (text: string, x: number, y: number): Label => ({ text, x, y, anchor: 'start' });

test('labels that would lie on each other stand below one another; others stay', () => {
  const placed = apart([label('this season', 0, 50), label('median', 10, 52), label('far', 200, 51)], 100);
  expect(placed.map(({ text, y }) => [text, y])).toEqual([
    ['this season', 50],
    ['far', 51],
    ['median', 62.5],
  ]);
});

test('a label that has no room below goes above', () => {
  const placed = apart([label('one', 0, 95), label('two', 0, 98)], 100);
  expect(placed.map(({ y }) => y)).toEqual([95, 82.5]);
});
