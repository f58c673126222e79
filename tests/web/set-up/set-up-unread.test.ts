/**
 * A set-up whose data cannot be read any more.
 */
import { expect, onTestFinished, test } from 'vitest';
import { EMPTY_DRAFT, type SetUpDraft } from '../../../src/garden/set-up-draft.ts';
import { createSteward } from '../../../src/steward/create-steward.ts';
import { openStore } from '../../../src/store/store.ts';
import { plain } from '../plain-text.ts';
import { appOver, NOW, TODAY } from '../sample-garden.ts';

/** A household with a set-up that can be read, and one that another version of the program kept. */
async function withUnread() {
  const store = await openStore({ file: ':memory:', now: NOW });
  const steward = createSteward({ store, clock: { now: () => NOW, today: TODAY } });
  onTestFinished(() => steward.close());
  const kept = { createdAt: NOW, changedAt: NOW };
  await store.addDraft({ id: 'aa', ...kept, draft: EMPTY_DRAFT });
  await store.addDraft({ id: 'bb', ...kept, draft: { ...EMPTY_DRAFT, ponds: 3 } as SetUpDraft });
  return { ...appOver(steward), store };
}

test('it is listed as such beside the others, on both pages that list them', async () => {
  const { get } = await withUnread();
  for (const path of ['/gardens', '/set-up']) {
    const answer = await get(path);
    expect(answer.status).toBe(200);
    const text = plain(await answer.text());
    expect(text).toContain('Go on with a garden without a name');
    expect(text).toContain('A set-up that cannot be read');
    expect(text).not.toContain('Go on with a set-up that cannot be read');
  }
});

test('it can be thrown away, and is asked after first', async () => {
  const { get, send, store } = await withUnread();
  expect(plain(await (await get('/set-up/bb/throw-away')).text())).toContain(
    'Throw away a set-up that cannot be read?',
  );
  expect((await send('/set-up/bb/throw-away', {})).headers.get('location')).toBe('/gardens');
  expect((await store.drafts()).map(({ id }) => id)).toEqual(['aa']);
  expect((await get('/set-up/bb/throw-away')).status).toBe(404);
});

test('its own pages say what is wrong', async () => {
  const { get } = await withUnread();
  const answer = await get('/set-up/bb/where');
  expect([answer.status, plain(await answer.text())]).toEqual([503, expect.stringContaining('Unrecognized key')]);
});
