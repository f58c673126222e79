import { expect, test } from 'vitest';
import { withGarden } from './loamtide.ts';

const inGarden = async () => (await withGarden()).loamtide;

test('a look at a pile is told by its bin, in either scale', async () => {
  const loamtide = await inGarden();
  const told = await loamtide(
    'report',
    'pile',
    '--pile',
    'left bay',
    '--temp',
    '140F',
    '--moisture',
    'damp',
    '--slumped',
  );
  expect(told.out).toContain('Looked at the pile in Left bay on April 18: 140 °F, damp, slumped\n');
  expect((await loamtide('undo')).out).toContain('Looked at the pile in Left bay');
  const timed = await loamtide('report', 'pile', '--pile', 'left bay', '--temp', '58C', '--at', '14:30');
  expect(timed.out).toContain('Looked at the pile in Left bay on April 18 at 14:30: 136 °F\n');
});

test('what moves the next job of a pile says so: one that runs too hot is turned today', async () => {
  const loamtide = await inGarden();
  const told = await loamtide('report', 'pile', '--pile', 'left bay', '--temp', '160F');
  expect(told.out).toMatch(/160 °F\nNext: Turn the pile in Left bay: it is running too hot, April 18\n$/);
});

test.each([
  [['--pile', 'left bay'], 'Give --temp, --moisture, --smell, --pests, --slumped or --not-ready.'],
  [['--pile', 'left bay', '--temp', '58C', '--at', 'noon'], 'Give a real hour as HH:MM'],
  [['--pile', 'lef bay', '--pests'], 'Did you mean Left bay?'],
  [['--pile', 'left bay', '--temp', '58'], 'Give degrees with their unit, such as 58C or 136F.'],
  [['--pile', 'left bay', '--not-ready', 'heats,lumpy'], 'Give one or more of heats, smells, coarse'],
  [['--pile', 'left bay', '--not-ready', 'heats', '--on', '2020-01-01'], 'before the pile was built, on 2027-04-04'],
  [['--pile', 'left bay', '--pests', '--on', '2020-01-01'], 'before the pile was built, on 2027-04-04'],
  [['--pile', 'left bay', '--pests', '--on', '2027-04-19'], 'Give a day up to today'],
])('is refused with the mend: %s', async (words, mend) => {
  const { code, err } = await (await inGarden())('report', 'pile', ...words);
  expect(code).toBe(2);
  expect(err).toContain(mend);
});

test('compost that is not ready is told of with what is amiss, and can be taken back', async () => {
  const loamtide = await inGarden();
  const told = await loamtide('report', 'pile', '--pile', 'left bay', '--not-ready', 'coarse, smells');
  expect(told.out).toMatch(/^The compost in Left bay was not ready on April 18: .+, .+\n$/);
  expect((await loamtide('undo')).out).toContain('The compost in Left bay was not ready');
});

test('a key is shown once, listed without itself, and revoked', async () => {
  const loamtide = await inGarden();
  expect((await loamtide('key', 'list')).out).toContain('There is no key yet.');
  const made = (await loamtide('key', 'new', '--label', 'probe')).out;
  const key = /key-1 \(probe\): ([\w-]{43})$/m.exec(made)?.[1] ?? '';
  expect(made).toContain(`-H "Authorization: Bearer ${key}"`);
  const listed = (await loamtide('key', 'list')).out;
  expect(listed).toMatch(/^key-1 +probe +made 2027-04-18 +open$/m);
  expect(listed).not.toContain(key);
  expect((await loamtide('key', 'revoke', 'key-1')).code).toBe(0);
  expect((await loamtide('key', 'list')).out).toContain('revoked 2027-04-18');
  expect((await loamtide('key', 'revoke', 'key-1')).err).toContain('Open keys: none.');
});
