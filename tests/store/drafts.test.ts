import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { migrations } from '../../migrations/index.ts';
import { EMPTY_DRAFT } from '../../src/garden/set-up-draft.ts';
import { connect } from '../../src/store/connection.ts';
import type { KeptDraft } from '../../src/store/drafts.ts';
import { migrate } from '../../src/store/migrate.ts';
import { openStore } from '../../src/store/store.ts';
import { NOON, skipping } from './entries.ts';
import { stockedStore } from './stocked.ts';
import { tempFolder } from './temp-folder.ts';

const LATER = '2027-05-01T08:00:00.000Z';

function kept(id: string, more: Partial<KeptDraft> = {}): KeptDraft {
  return { id, createdAt: NOON, changedAt: NOON, draft: EMPTY_DRAFT, ...more };
}

describe('a garden being set up', () => {
  test('is there as it was told when the program has been stopped and started', async () => {
    const file = join(tempFolder(), 'loamtide.db');
    const store = await openStore({ file });
    await store.addDraft(kept('a'));
    const told = { ...EMPTY_DRAFT, place: { latitude: 43.1, longitude: -89.4 }, passed: ['where' as const] };
    await store.changeDraft({ id: 'a', changedAt: LATER, draft: told });
    await store.close();
    const again = await openStore({ file });
    onTestFinished(() => again.close());
    expect(await again.draft('a')).toStrictEqual(kept('a', { changedAt: LATER, draft: told }));
  });

  test('is listed with the one last changed first', async () => {
    const store = await stockedStore();
    await store.addDraft(kept('a', { changedAt: LATER }));
    await store.addDraft(kept('b'));
    expect((await store.drafts()).map(({ id }) => id)).toEqual(['a', 'b']);
  });

  test('becomes a garden once: the second who asks is refused, and it is no longer listed nor changed', async () => {
    const store = await stockedStore();
    await store.addDraft(kept('a'));
    expect([await store.claimDraft('a', 'plot'), await store.claimDraft('a', 'other')]).toEqual([true, false]);
    expect(await store.drafts()).toEqual([]);
    expect(await store.changeDraft({ id: 'a', changedAt: LATER, draft: EMPTY_DRAFT })).toBe(false);
    expect(await store.dropDraft('a')).toBe(false);
    expect((await store.draft('a'))?.gardenId).toBe('plot');
  });

  test('is gone when it was thrown away', async () => {
    const store = await stockedStore();
    await store.addDraft(kept('a'));
    expect([await store.dropDraft('a'), await store.dropDraft('a')]).toEqual([true, false]);
    expect(await store.draft('a')).toBeUndefined();
  });
});

describe('a garden put away', () => {
  test('is no longer among the gardens, says when, and is given back as it was', async () => {
    const store = await stockedStore();
    await store.append('plot', 0, [skipping('turn/pile:p-1')]);
    expect(await store.putAwayGarden('plot', LATER)).toBe(true);
    expect(await store.putAwayGarden('plot', NOON)).toBe(false);
    expect(await store.gardenIds()).toEqual([]);
    expect(await store.gardensPutAway()).toEqual([{ id: 'plot', name: 'Hollow Lane', at: LATER }]);
    expect(await store.putAwayGarden('plot', undefined)).toBe(true);
    expect([await store.gardenIds(), await store.gardensPutAway()]).toEqual([['plot'], []]);
    expect(await store.ledger('plot')).toHaveLength(1);
  });

  test('takes nothing in', async () => {
    const store = await stockedStore();
    await store.putAwayGarden('plot', LATER);
    await expect(store.append('plot', 0, [skipping('turn/pile:p-1')])).rejects.toMatchObject({
      problems: [{ where: 'plot', mend: 'Give it back on the page of gardens first.' }],
    });
  });
});

test('a database from before drafts is opened with its gardens in place', async () => {
  const file = join(tempFolder(), 'loamtide.db');
  const before = connect(file);
  await migrate(
    before,
    migrations.filter(({ version }) => version < 8),
    NOON,
  );
  before.sqlite.exec(`insert into gardens values ('plot', 'Hollow Lane', '${NOON}', 3)`);
  before.sqlite.close();
  const store = await openStore({ file, now: LATER });
  onTestFinished(() => store.close());
  expect([await store.gardenIds(), await store.factsVersion('plot')]).toEqual([['plot'], 3]);
  expect([await store.drafts(), await store.gardensPutAway()]).toEqual([[], []]);
});
