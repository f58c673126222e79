import { expect, test } from 'vitest';
import { suggestion } from '../../src/garden/nearest-name.ts';
import { spelt } from '../../src/garden/spellings.ts';

test.each([
  [{ crop: 'sweet_corn' }, { crop: 'sweet-corn' }],
  [{ crop: 'Sweet corn' }, { crop: 'sweet-corn' }],
  [{ cover: 'rye' }, { cover: 'cereal_rye' }],
  [{ cover: 'cereal-rye' }, { cover: 'cereal_rye' }],
  [{ mix: 'rye_vetch' }, { mix: 'rye-vetch' }],
  [{ crop: 'nothing known' }, { crop: 'nothing known' }],
  [
    { name: 'rye', list: [{ crop: 7 }] },
    { name: 'rye', list: [{ crop: 7 }] },
  ],
])('%j is read as %j', (written, read) => {
  expect(spelt(written)).toEqual(read);
});

test('what is known is told once, however it is spelt', () => {
  expect(suggestion('xyzzy-plugh', ['North bed', 'north-bed', 'A', 'a'])).toBe('Known are: North bed, A.');
});
