import { join } from 'node:path';
import { expect } from 'vitest';
import { projectGarden } from '../../../src/garden/project.ts';
import { openStore } from '../../../src/store/store.ts';
import { someMoment, struck } from '../strike.ts';
import { recordOf } from '../turns.ts';
import { expectSound, type Kind, lastSaid } from './kind.ts';

/** Longest wait after a turn, ms: about as long as the next one takes. */
const SPAN_MS = 60;

/** A garden file and a weather record brought in together, again and again. */
export const imports: Kind = {
  name: 'imports of garden and weather',
  async lay({ folder, chance, programs }) {
    let promised = -1;
    return async () => {
      const before = promised;
      const argv = ['imports', folder, String(before + 1)];
      const { said, wasKilled, complaints } = await struck(
        { program: programs.victim, argv },
        someMoment(chance, SPAN_MS),
      );
      expect(complaints).toBe('');
      promised = lastSaid(said, before);
      const store = await openStore({ file: join(folder, 'loamtide.db') });
      try {
        if ((await store.gardenIds()).length === 0) expect(promised).toBe(-1);
        else {
          const entries = await store.ledger('plot');
          const turn = Number(projectGarden(entries)?.name.replace('Turn ', ''));
          // What was promised is there, and of the next either all of it or nothing.
          expect([promised, promised + 1]).toContain(turn);
          expect(entries).toHaveLength(turn + 1);
          expect(await store.weatherRecord('plot')).toEqual(recordOf(turn));
          promised = turn;
        }
      } finally {
        await store.close();
      }
      expectSound(join(folder, 'loamtide.db'));
      return { promised: promised - before, wasKilled };
    };
  },
};
