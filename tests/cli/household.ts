import { join } from 'node:path';
import { createSteward } from '../../src/steward/create-steward.ts';
import type { Steward } from '../../src/steward/doings/steward.ts';
import { databaseIn, openStore, type Store } from '../../src/store/store.ts';
import { NOW } from './loamtide.ts';

/** Opens the data folder of a test beside the program, at the tests' own moment, and closes it again. */
export async function openedIn<Result>(
  folder: string,
  work: (household: { store: Store; steward: Steward }) => Promise<Result>,
): Promise<Result> {
  const store = await openStore({ file: databaseIn(join(folder, 'data')), now: NOW });
  const steward = createSteward({ store, clock: { now: () => NOW } });
  try {
    return await work({ store, steward });
  } finally {
    await steward.close();
  }
}
