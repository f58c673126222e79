import { expect, test } from 'vitest';
import { unreckonedNote } from '../../src/digest/unreckoned.ts';
import { withoutSeasons } from '../climate/real-data.ts';
import { demoClimate } from '../demo-data/demo-season.ts';

const snow = { day: '2028-02-29', kind: 'observed', snowDepthMm: 150 } as const;
const cold = { day: '2028-02-29', kind: 'observed', tminC: -9, rainMm: 0, newSnowMm: 0 } as const;

test('snow told to a climate without a record is said not to be reckoned', () => {
  expect(unreckonedNote(withoutSeasons(demoClimate), [cold, snow])).toMatch(
    /no daily record of rain.*Squeeze a handful/,
  );
});

test('a record without rain cannot reckon it either', () => {
  const seasons = demoClimate.seasons.map((season) => ({ ...season, rainMm: Array(365).fill(undefined) }));
  expect(unreckonedNote({ ...demoClimate, seasons }, [snow])).toBeDefined();
});

test('nothing is said where it is reckoned, nor of cold and dry days', () => {
  expect(unreckonedNote(demoClimate, [snow])).toBeUndefined();
  expect(unreckonedNote(withoutSeasons(demoClimate), [cold])).toBeUndefined();
});
