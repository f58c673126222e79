import { expect, test } from 'vitest';
import { withGarden } from './loamtide.ts';

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
  [['--bed', 'North bed', '--stage', 'in-bloom'], 'No cover stands in this bed now.'],
  [['--bed', 'South bed', '--stage', 'in-bloom', '--cover', 'oats'], '"oats" does not stand there.'],
  [['--bed', 'South bed', '--stage', 'blooming'], 'Give one of first-buds, in-bloom.'],
])('is refused with the mend: %s', async (words, mend) => {
  const { code, err } = await (await inGarden())('report', 'stage', ...words);
  expect(code).toBe(2);
  expect(err).toContain(mend);
});
