import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inBed } from '../../src/garden/in-bed.ts';

const rows = fc.array(
  fc.record({ bedId: fc.option(fc.constantFrom('a', 'b', 'c'), { nil: undefined }), litres: fc.nat(9) }),
);

test('a bed has the rows that are bound to it, in their order, however often it is asked', () => {
  fc.assert(
    fc.property(rows, (all) => {
      for (const bedId of ['a', 'b', 'nowhere', 'a']) {
        expect(inBed(all, bedId)).toEqual(all.filter((row) => row.bedId === bedId));
      }
    }),
  );
});

test('a list made anew is parted anew', () => {
  const before = [{ bedId: 'a', litres: 1 }];
  expect(inBed(before, 'a')).toHaveLength(1);
  expect(inBed([...before, { bedId: 'a', litres: 2 }], 'a')).toHaveLength(2);
});
