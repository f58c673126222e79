/**
 * Gardens at the edges of the world, the year, the clock and the record are planned in words, or refused in words.
 */
import { expect, test } from 'vitest';
import { amissAt, EDGES } from './places.ts';

/** Those tried in every run; all of them are in the long tests. */
const OFTEN = [
  'polar day',
  'no frost at all',
  'three quarters of an hour',

  'frost on leap days',
];

test.each(OFTEN)('%s: week, year, season end and feed are made', async (name) => {
  const place = EDGES[name];
  expect(place).toBeDefined();
  if (place !== undefined) expect(await amissAt(place, false)).toEqual({ amiss: [] });
});

test.each(['a record of one year', 'a record all of gaps', 'a record of lows alone', 'a first frost after New Year'])(
  '%s is refused in words',
  async (name) => {
    const place = EDGES[name];
    if (place === undefined) throw new Error(`${name} is no place.`);
    const { amiss, refused } = await amissAt(place, false);
    expect(amiss).toEqual([]);
    expect(refused).toMatch(/^(?:The|No) .*\n.*climate\.\w+: .*\. \w.*\.$/);
  },
);
