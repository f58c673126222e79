import { expect, test } from 'vitest';
import { openedIn } from './household.ts';
import { withGarden } from './loamtide.ts';

const AWAY = ['report', 'away', '--from', '2027-04-19', '--to', '2027-05-20'];

test('report away shows what it would do and keeps nothing', async () => {
  const { folder, loamtide } = await withGarden();
  const { code, out } = await loamtide(...AWAY);
  expect(code).toBe(0);
  expect(out).toMatch(/^Would be away from April 19, 2027 to May 20, 2027\.\n/);
  expect(out).toMatch(/Left to somebody, or missed:\n {2}.*If nobody does it:/s);
  expect(out).toContain('Nothing was changed. Add --apply to tell it.');
  expect(out).not.toMatch(/[⟦⟧]/);
  expect(await openedIn(folder, ({ store }) => store.ledger('hollow-lane'))).toHaveLength(1);
});

test('report away --apply tells it, and undo takes it back', async () => {
  const { folder, loamtide } = await withGarden();
  const preview = JSON.parse((await loamtide(...AWAY, '--format', 'json')).out);
  const applied = JSON.parse((await loamtide(...AWAY, '--format', 'json', '--apply')).out);
  expect(applied).toEqual({ ...preview, applied: true });
  expect(applied).toMatchObject({ garden: 'hollow-lane', from: '2027-04-19', to: '2027-05-20' });
  const away = () => openedIn(folder, async ({ steward }) => (await steward.view('hollow-lane')).garden.away);
  expect(await away()).toEqual([{ from: '2027-04-19', to: '2027-05-20' }]);
  expect((await loamtide('undo', '--apply')).out).toContain('Taken back entry 2: Away from April 19, 2027');
  expect(await away()).toEqual([]);
});

test('report away says so where nothing moves', async () => {
  const { loamtide } = await withGarden();
  const { out } = await loamtide('report', 'away', '--from', '2028-01-10', '--to', '2028-01-11');
  expect(out).toContain('No task moves, and none is missed.');
});

test.each([
  [['--from', '2027-07-10'], '--to'],
  [['--from', '2027-07-10', '--to', '2027-07-09'], 'away to: "2027-07-09" cannot be used.'],
  [['--from', 'soon', '--to', '2027-07-09'], '--from: "soon" cannot be used.'],
])('report away %j is refused', async (options, complaint) => {
  const { loamtide } = await withGarden();
  const { code, err } = await loamtide('report', 'away', ...options);
  expect(code).toBe(2);
  expect(err).toContain(complaint);
});
