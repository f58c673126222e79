/**
 * Every garden's plan made again when its day has passed, behind whatever somebody waits for.
 */
import { setImmediate as turn } from 'node:timers/promises';
import type { Store } from '../../store/store.ts';
import type { Crew } from '../crew/crew.ts';
import type { Planner } from './planner.ts';

interface Room {
  store: Store;
  planner: Planner;
  crew: Crew;
}

/**
 * Plans every garden whose plan is out of date, as many at once as the crew does; those that fail are told of when all have
 * been tried.
 *
 * @returns the gardens planned, in the order of all
 */
export async function refreshed(room: Room, signal?: AbortSignal): Promise<string[]> {
  const ids = await room.store.gardenIds();
  const planned = new Set<string>();
  const failures: unknown[] = [];
  const left = ids.values();
  const hand = async () => {
    for (const id of left) {
      if (signal?.aborted) return;
      try {
        if (await replanned(room, id)) planned.add(id);
      } catch (error) {
        if (!signal?.aborted) failures.push(error);
      }
      // Whoever asked meanwhile is answered before the next garden.
      await turn();
    }
  };
  await Promise.all(Array.from({ length: room.crew.size }, hand));
  if (failures.length > 0)
    throw failures.length === 1 ? failures[0] : new AggregateError(failures, failures.join('\n'));
  return ids.filter((id) => planned.has(id));
}

/** Looks at a garden's plan; returns whether another one was published. */
async function replanned({ store, planner }: Room, id: string): Promise<boolean> {
  const before = await store.planMade(id);
  const { plan } = await planner.standing(id, { isWaitedFor: false });
  return before?.today !== plan.today || before.factsVersion !== plan.factsVersion;
}
