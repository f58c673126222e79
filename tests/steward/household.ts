import { onTestFinished } from 'vitest';
import type { GardenFile } from '../../src/garden/garden-file.ts';
import type { Instant } from '../../src/measures/days.ts';
import type { Plan, PlannedTask } from '../../src/schedule/plan.ts';
import { createSteward } from '../../src/steward/create-steward.ts';
import type { Steward } from '../../src/steward/doings/steward.ts';
import { openStore, type Store } from '../../src/store/store.ts';
import { NORTH_TODAY, northernFile } from './gardens.ts';

/** A clock that stands until it is set. */
export interface StandingClock {
  moment: Instant;
  now(): Instant;
}

/** A household over a real database, its clock standing at eight in the morning of the northern garden's first day. */
export interface Household {
  steward: Steward;
  store: Store;
  clock: StandingClock;
  /** The northern garden's id. */
  garden: string;
}

export const MORNING: Instant = `${NORTH_TODAY}T13:00:00.000Z`;

/** A clock standing at a moment. */
export function clockAt(moment: Instant): StandingClock {
  const clock = { moment, now: () => clock.moment };
  return clock;
}

/** An empty household; closed when the test has ended. */
export async function emptyHousehold(moment = MORNING, file = ':memory:') {
  const clock = clockAt(moment);
  const store = await openStore({ file, now: moment });
  const steward = createSteward({ store, clock });
  onTestFinished(() => steward.close());
  return { steward, store, clock };
}

/** A household with the northern garden, or another, brought in. */
export async function household(
  file: GardenFile = northernFile(),
  moment = MORNING,
  path = ':memory:',
): Promise<Household> {
  const empty = await emptyHousehold(moment, path);
  const { gardenId } = await empty.steward.importGarden({ file, prefer: 'reported' }, 'ada');
  return { ...empty, garden: gardenId };
}

/** Lets a minute pass, so that what happens next is later than what happened before. */
export function later(clock: StandingClock, minutes = 1): void {
  clock.moment = new Date(Date.parse(clock.moment) + minutes * 60_000).toISOString();
}

/** The first open task of a kind of job. */
export function openTask(plan: Plan, kind: string): PlannedTask {
  const task = plan.tasks.find((row) => row.kind === kind && row.state === 'open');
  if (task === undefined) throw new Error(`No open ${kind} among ${plan.tasks.map((row) => row.kind).join(', ')}`);
  return task;
}

/** A plan without what rises with each revision and with the facts: what an undo must bring back exactly. */
export function told({ tasks, entries, clashes, gardenId, today }: Plan) {
  return {
    gardenId,
    today,
    tasks: tasks.map(({ sequence: _s, changedAt: _c, ...task }) => task),
    entries: entries.map(({ sequence: _s, changedAt: _c, ...entry }) => entry),
    clashes,
  };
}
