import { expect, test } from 'vitest';
import { withGarden } from './loamtide.ts';

const inGarden = async () => (await withGarden()).loamtide;

test('a look at a young cover is taken in at once and told in one line', async () => {
  const loamtide = await inGarden();
  const told = await loamtide('report', 'stand', 'South bed', '--covered', 'two-thirds', '--weedy');
  expect(told.err).toBe('');
  expect(told.out).toContain('Looked at the young cover in South bed on April 18: about two thirds of the');
  expect((await loamtide('undo')).out).toContain('Looked at the young cover in South bed');
});

test.each([
  [['Sunny bed', '--covered', 'a-third'], 'is no stand and no bed here'],
  [['North bed', '--covered', 'a-third'], 'No cover was sown in North bed yet.'],
  [['South bed', '--covered', 'half'], 'Give one of hardly-any, a-third, two-thirds, nearly-all.'],
  [['South bed', '--covered', 'a-third', '--on', '2027-04-19'], 'is still to come'],
  [['South bed', '--covered', 'a-third', '--on', '2020-01-01'], 'is before it was sown'],
])('is refused with the mend: %j', async (words, mend) => {
  const { code, err } = await (await inGarden())('report', 'stand', ...words);
  expect(code).toBe(2);
  expect(err).toContain(mend);
});
