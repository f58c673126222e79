import { onTestFinished } from 'vitest';
import { openStore, type Store } from '../../src/store/store.ts';
import { NOON } from './entries.ts';

/** A store with one empty garden named "plot" in it, closed when the test has ended. */
export async function stockedStore(file = ':memory:'): Promise<Store> {
  const store = await openStore({ file, now: NOON });
  onTestFinished(() => store.close());
  await store.createGarden({ id: 'plot', name: 'Hollow Lane', createdAt: NOON });
  return store;
}
