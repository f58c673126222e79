/**
 * Keys for scripts that tell of piles: made here, shown once, known afterwards by their hash alone.
 */
import { createHash, randomBytes } from 'node:crypto';
import type { ReadingKey } from '../store/reading-keys.ts';
import type { Shelves } from '../store/store.ts';
import type { Clock } from './planner.ts';

/** 256 bits: more than can be guessed. */
const KEY_OCTETS = 32;

/** Makes a key. It cannot be shown again. */
export async function addReadingKey(
  { store, clock }: { store: Shelves; clock: Clock },
  gardenId: string,
  label: string,
): Promise<{ kept: ReadingKey; key: string }> {
  const key = randomBytes(KEY_OCTETS).toString('base64url');
  const count = (await store.readingKeys(gardenId)).length + 1;
  const kept = { id: `key-${count}`, gardenId, label, createdAt: clock.now() };
  await store.addReadingKey(kept, hashOf(key));
  return { kept, key };
}

/** The garden whose key this is; nothing for a wrong key or a revoked one. */
export async function gardenOfKey(store: Shelves, key: string): Promise<string | undefined> {
  return (await store.findReadingKey(hashOf(key)))?.gardenId;
}

/** The key is long and made by chance, so that one plain hash keeps it as well as a slow one. */
function hashOf(key: string): string {
  return createHash('sha256').update(key).digest('hex');
}
