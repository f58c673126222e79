import { expect, test } from 'vitest';
import { recalled } from '../../../src/web/requests/recalled.ts';

test('what was worked out from a text is worked out once', () => {
  const asked: string[] = [];
  const lengthOf = recalled((text) => asked.push(text) && text.length);
  expect([lengthOf('gzip, br'), lengthOf('gzip, br'), lengthOf('br')]).toEqual([8, 8, 2]);
  expect(asked).toEqual(['gzip, br', 'br']);
});

test('strangers cannot fill the memory, and every answer stays right', () => {
  let worked = 0;
  const same = recalled((text) => {
    worked += 1;
    return text;
  });
  for (let n = 0; n < 1000; n += 1) expect(same(`program-${n}`)).toBe(`program-${n}`);
  expect(same('program-999')).toBe('program-999');
  expect(worked).toBe(1000);
  same('program-0');
  expect(worked).toBe(1001);
});
