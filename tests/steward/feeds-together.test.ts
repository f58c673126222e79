import { join } from 'node:path';
import SqliteFile from 'better-sqlite3';
import { expect, onTestFinished, test } from 'vitest';
import { PLAIN_SHAPE } from '../../src/calendar/feed-shape.ts';
import type { Report } from '../../src/steward/doings/steward.ts';
import { tempFolder } from '../store/temp-folder.ts';
import { northernFile } from './gardens.ts';
import { household, MORNING } from './household.ts';

test('a member renamed and the feeds that go by the name are kept together, or neither is', async () => {
  const path = join(tempFolder(), 'loamtide.db');
  const { steward, store, garden } = await household(
    northernFile({ household: { members: [{ name: 'Ida' }] } }),
    MORNING,
    path,
  );
  await steward.addFeed(garden, 'For Ida', { ...PLAIN_SHAPE, person: 'Ida' });
  const { id: other } = await steward.addFeed(garden, 'Other');
  const before = await store.ledger(garden);
  const sqlite = new SqliteFile(path);
  onTestFinished(() => {
    sqlite.close();
  });
  const shape = sqlite.prepare('select shape from feeds where id = ?').pluck().get(other);
  const setShape = (text: unknown) => sqlite.prepare('update feeds set shape = ? where id = ?').run(text, other);
  const renaming: Report = { kind: 'member-kept', member: { id: 'ida', name: 'Ida Holm' }, formerName: 'Ida' };
  // A feed that cannot be read stands in the way of following, after the change was written.
  setShape('not a shape');
  await expect(steward.report(garden, renaming, 'ada')).rejects.toThrow(/cannot be read/);
  expect(await store.ledger(garden)).toEqual(before);
  setShape(shape);
  await steward.report(garden, renaming, 'ada');
  expect((await store.feeds(garden))[0]?.shape.person).toBe('Ida Holm');
});
