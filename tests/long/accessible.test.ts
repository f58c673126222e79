/**
 * Every page of the app in a real browser, on a phone and on a desk, light and dark: minutes of it.
 */
import { expect, test } from 'vitest';
import { faultsOnPages, openWalk } from '../journeys/axe-walk.ts';

test('no page, at either width and in either light, has a fault that axe-core finds', async () => {
  const walk = await openWalk();
  try {
    expect(
      await faultsOnPages(walk, walk.pages, ({ form }) => (form === undefined ? 'each width, both lights' : 'phone')),
    ).toEqual([]);
  } finally {
    await walk.close();
  }
}, 1_800_000);
