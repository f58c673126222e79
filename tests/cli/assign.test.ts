import { expect, test } from 'vitest';
import { openedIn } from './household.ts';
import { SMALL_GARDEN, withGarden } from './loamtide.ts';

const PEOPLED = `${SMALL_GARDEN}household:
  people: 2
  members: [{ name: Ida, practices: [planting] }, { name: Jonas }]
`;
const KEY = 'cover-cut/stand:south-bed-cereal-rye-2026-09-20';

const assignedIn = (folder: string) =>
  openedIn(folder, async ({ steward }) => (await steward.view('hollow-lane')).garden.assigned);

test('assign gives a task to a member, and undo takes it back', async () => {
  const { folder, loamtide } = await withGarden(PEOPLED);
  const { code, out } = await loamtide('assign', KEY, '--to', 'Ida');
  expect([code, out.split('\n')[0]]).toEqual([0, expect.stringMatching(/^Given to Ida: /)]);
  expect(await assignedIn(folder)).toEqual({ [KEY]: 'Ida' });
  const { tasks } = JSON.parse((await loamtide('plan', '--format', 'json')).out);
  expect(tasks.find(({ key }: { key: string }) => key === KEY).assignedTo).toBe('Ida');
  expect((await loamtide('undo', '--apply')).out).toContain('Taken back entry 2: Given to Ida: ');
  expect(await assignedIn(folder)).toEqual({});
});

test('assign --nobody makes it nobody’s in particular again', async () => {
  const { folder, loamtide } = await withGarden(PEOPLED);
  await loamtide('assign', KEY, '--to', 'Ida');
  expect((await loamtide('assign', KEY, '--nobody')).out).toMatch(/^Given to nobody in particular: /);
  expect(await assignedIn(folder)).toEqual({});
});

test.each([
  [[KEY], 'Give either --to NAME or --nobody.'],
  [[KEY, '--to', 'Ida', '--nobody'], 'Give either --to NAME or --nobody.'],
  [[KEY, '--to', 'Jona'], 'Did you mean Jonas?'],
  [[`${KEY}x`, '--to', 'Ida'], `Did you mean ${KEY}`],
])('assign %j is refused', async (options, complaint) => {
  const { folder, loamtide } = await withGarden(PEOPLED);
  const { code, err } = await loamtide('assign', ...options);
  expect(code).toBe(2);
  expect(err.replace(/\s+/g, ' ')).toContain(complaint);
  expect(await assignedIn(folder)).toEqual({});
});
