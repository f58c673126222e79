import { expect, it } from 'vitest';
import { memory } from '../../src/climate/remembered.ts';

it('works a thing out once for a holder and a name, nothing found included', () => {
  const remember = memory<object, string, number | undefined>();
  const [one, other] = [{}, {}];
  let worked = 0;
  const ask = (holder: object, name: string, value: number | undefined) =>
    remember(holder, name, () => {
      worked += 1;
      return value;
    });
  expect([ask(one, 'a', 1), ask(one, 'a', 2), ask(one, 'b', undefined), ask(one, 'b', 3)]).toEqual([
    1,
    1,
    undefined,
    undefined,
  ]);
  expect(ask(other, 'a', 4)).toBe(4);
  expect(worked).toBe(3);
});
