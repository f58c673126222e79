import { expect, test } from 'vitest';
import { SMALL_GARDEN, withGarden } from './loamtide.ts';

const inGarden = async () => (await withGarden()).loamtide;

test('flowers seen are shown with what they move, and taken in when asked', async () => {
  const loamtide = await inGarden();
  const words = ['report', 'stage', '--bed', 'South bed', '--stage', 'in-bloom'];
  const looked = await loamtide(...words);
  expect(looked.out).toContain('Flowers on the winter rye on April 18');
  expect(looked.out).toContain('What moves:');
  expect(looked.out).toContain('Nothing was changed. Add --apply to take it in.');
  await loamtide(...words, '--apply');
  expect((await loamtide('plan', '--from', '2027-04-18', '--to', '2027-04-30')).out).toContain('Cut the winter rye');
  expect((await loamtide('undo')).out).toContain('Flowers on the winter rye');
});

test.each([
  [['--bed', 'North bed', '--stage', 'in-bloom'], 'No cover stands in this bed on 2027-04-18.'],
  [['--bed', 'South bed', '--stage', 'in-bloom', '--cover', 'oats'], '"oats" does not stand there.'],
  [['--bed', 'South bed', '--stage', 'blooming'], 'Give one of first-buds, in-bloom.'],
])('is refused with the mend: %s', async (words, mend) => {
  const { code, err } = await (await inGarden())('report', 'stage', ...words);
  expect(code).toBe(2);
  expect(err).toContain(mend);
});

test('what was seen before a cut that is marked already is told with its day, and moves no work of it', async () => {
  const cut = SMALL_GARDEN.replace('sow: "2026-09-20"', 'sow: "2026-09-20", cut: "2027-04-16"');
  const { loamtide } = await withGarden(cut);
  const words = ['report', 'stage', '--bed', 'South bed', '--stage', 'first-buds'];
  expect((await loamtide(...words)).err).toContain('No cover stands in this bed on 2027-04-18.');
  const told = await loamtide(...words, '--on', '2027-04-15', '--apply');
  expect(told.out).toContain('First buds on the winter rye on April 15');
  expect(told.out).toContain('No task moves, none is added and none goes.');
});
