/**
 * Keys for scripts that tell of piles: made here, shown once, known afterwards by their hash alone.
 */
import { createHash, randomBytes } from 'node:crypto';
import type { Store } from '../../store/store.ts';
import type { Steward } from '../doings/steward.ts';
import type { Clock } from '../planning/planner.ts';

/** 256 bits: more than can be guessed. */
const KEY_OCTETS = 32;

/** What a steward does with keys. */
export function keysIn({ store, clock }: { store: Store; clock: Clock }): Pick<Steward, KeyDoings> {
  return {
    async addReadingKey(gardenId, label) {
      const key = randomBytes(KEY_OCTETS).toString('base64url');
      return store.transaction(async (shelves) => {
        // Refused where there is no such garden, or it was put away.
        await shelves.factsVersion(gardenId);
        const count = (await shelves.readingKeys(gardenId)).length + 1;
        const kept = { id: `key-${count}`, gardenId, label, createdAt: clock.now() };
        await shelves.addReadingKey(kept, hashOf(key));
        return { kept, key };
      });
    },
    readingKeys: (gardenId) => store.readingKeys(gardenId),
    revokeReadingKey: (gardenId, id) => store.revokeReadingKey(gardenId, id, clock.now()),
    gardenOfKey: async (key) => (await store.findReadingKey(hashOf(key)))?.gardenId,
  };
}

type KeyDoings = 'addReadingKey' | 'readingKeys' | 'revokeReadingKey' | 'gardenOfKey';

/** The key is long and made by chance, so that one plain hash keeps it as well as a slow one. */
function hashOf(key: string): string {
  return createHash('sha256').update(key).digest('hex');
}
