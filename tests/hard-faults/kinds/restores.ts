import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { openStore } from '../../../src/store/store.ts';
import { NOON, skipping } from '../../store/entries.ts';
import { someMoment, struck } from '../strike.ts';
import { expectSound, type Kind, lastSaid } from './kind.ts';

/** Longest wait after a turn, ms: about as long as the next one takes. */
const SPAN_MS = 60;

/** Copies put back in turn, told apart by a garden and its number of entries: three, so that one before the last would show. */
const COPIES = ['first', 'second', 'third'];

/** Copies put back, again and again. */
export const restores: Kind = {
  name: 'copies put back',
  async lay({ folder, chance, programs }) {
    const file = join(folder, 'loamtide.db');
    for (const [index, name] of COPIES.entries()) {
      const store = await openStore({ file: join(folder, `${name}.db`), now: NOON });
      await store.createGarden({ id: name, name, createdAt: NOON });
      for (let entry = 0; entry <= index; entry += 1) await store.append(name, entry, [skipping(`task-${entry}`)]);
      await store.backup(join(folder, `${name}.copy`));
      await store.close();
    }
    let turn = 0;
    return async () => {
      const argv = ['restores', folder, String(turn)];
      const { said, wasKilled, complaints } = await struck(
        { program: programs.victim, argv },
        someMoment(chance, SPAN_MS),
      );
      expect(complaints).toBe('');
      const last = lastSaid(said, turn - 1);
      const store = await openStore({ file, now: NOON });
      const ids = await store.gardenIds();
      if (ids.length === 0) expect(last).toBe(-1);
      else {
        // Whole the one that was promised, or whole the one that was being put back.
        const [is = ''] = ids;
        expect(ids).toHaveLength(1);
        expect(await store.ledger(is)).toHaveLength(COPIES.indexOf(is) + 1);
        expect([last, last + 1].map((each) => COPIES[each % COPIES.length])).toContain(is);
      }
      await store.close();
      expectSound(file);
      const asides = readdirSync(folder).filter((name) => /\.replaced\.\d{8}T\d{6}Z$/.test(name));
      for (const aside of asides) expectSound(join(folder, aside));
      for (const name of readdirSync(folder).filter((each) => each.includes('.replaced.'))) rmSync(join(folder, name));
      const promised = last - (turn - 1);
      turn = last + 1;
      return { promised, wasKilled };
    };
  },
};
