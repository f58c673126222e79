import { expect, test } from 'vitest';
import { amountsInWords } from '../../../src/web/words/amount-words.ts';

test("changed amounts are told in the reader's units, and where there were or will be none", () => {
  const litres = (value: number) => ({ value, unit: 'L' as const });
  const changes = [
    { what: 'finished compost', from: litres(60), to: litres(80) },
    { what: 'dry leaves', to: litres(100) },
    { what: 'water', from: litres(3) },
  ];
  expect(amountsInWords(changes, 'metric')).toBe(
    'finished compost 80 L instead of 60 L, dry leaves 100 L instead of none, water none instead of 3 L',
  );
  expect(amountsInWords(changes.slice(0, 1), 'us')).toBe('finished compost 2.8 cu ft instead of 2.1 cu ft');
  expect(amountsInWords([], 'us')).toBe('');
});
