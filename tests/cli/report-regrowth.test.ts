import { expect, test } from 'vitest';
import { SMALL_GARDEN, withGarden } from './loamtide.ts';

/** The small garden with its rye cut ten days ago. */
const inGarden = async () =>
  (await withGarden(SMALL_GARDEN.replace('sow: "2026-09-20"', 'sow: "2026-09-20", cut: "2027-04-08"'))).loamtide;
const flat = (text: string) => text.replaceAll('\n', ' ');
const words = (...rest: string[]) => ['report', 'regrowth', '--bed', 'South bed', '--answer', ...rest];

test('nothing green frees the bed, and the look is done', async () => {
  const loamtide = await inGarden();
  const told = await loamtide(...words('clean'));
  expect(told.out).toContain('Done on April 18: Look for regrowth of the winter rye in South bed');
  expect(flat(told.out)).toContain('and is over. The bed is free for plants from April 22, 2027');
  expect((await loamtide(...words('clean'))).err).toContain('No look for regrowth is open in South bed.');
});

test('what grew again is cut again or goes under a sheet, and can be taken back', async () => {
  const loamtide = await inGarden();
  expect((await loamtide(...words('cut'))).out).toContain('had grown again on April 18: to be cut again');
  expect((await loamtide('plan', '--from', '2027-04-18', '--to', '2027-04-30')).out).toContain('Cut the winter rye');
  expect(flat((await loamtide(...words('sheet'))).out)).toContain('The bed is free from May 9, 2027.');
  expect((await loamtide('plan', '--from', '2027-04-18', '--to', '2027-05-30')).out).toContain('Lift the sheet');
  expect((await loamtide('undo')).out).toContain('to go under a sheet');
});

test.each([
  [words('mown'), 'Give one of clean, cut, sheet.'],
  [words('cut', '--on', '2027-04-01'), 'Give a day from April 8, 2027, when it was cut, to April 18, 2027.'],
  [['report', 'regrowth', '--bed', 'North bed', '--answer', 'cut'], 'No cover was cut in North bed.'],
])('is refused with the mend: %s', async (argv, mend) => {
  const { code, err } = await (await inGarden())(...argv);
  expect(code).toBe(2);
  expect(err).toContain(mend);
});
