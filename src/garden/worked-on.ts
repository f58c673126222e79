/**
 * A thing of the garden changed, and what work on it shows: that it was there.
 */
import { type Day, earliestOf } from '../measures/days.ts';
import type { Garden, Pile, Planting, Regrowth, Stand } from './garden.ts';

/** Work on a thing shows that it was there: planned or not, it began on its day, or on the day of the work if earlier. */
export function begun<Start extends { day: Day; happened: boolean }>(start: Start, workedOn: Day): Start {
  return { ...start, day: earliestOf(start.day, workedOn), happened: true };
}

/** The garden with a planting changed. */
export function changePlanting(garden: Garden, id: string, change: (planting: Planting) => Planting): Garden {
  return { ...garden, plantings: garden.plantings.map((row) => (row.id === id ? change(row) : row)) };
}

/** The garden with work done on a stand on a day. */
export function workStand(garden: Garden, id: string, on: Day, change: (stand: Stand) => Partial<Stand>): Garden {
  return changeStand(garden, id, (stand) => ({ ...stand, sow: begun(stand.sow, on), ...change(stand) }));
}

/** The garden with work done on a pile on a day. */
export function workPile(garden: Garden, id: string, on: Day, change: (pile: Pile) => Partial<Pile>): Garden {
  return changePile(garden, id, (pile) => ({ ...pile, built: begun(pile.built, on), ...change(pile) }));
}

/** The garden with a stand changed. */
export function changeStand(garden: Garden, id: string, change: (stand: Stand) => Stand): Garden {
  return { ...garden, stands: garden.stands.map((stand) => (stand.id === id ? change(stand) : stand)) };
}

/** The garden with a pile changed. */
export function changePile(garden: Garden, id: string, change: (pile: Pile) => Pile): Garden {
  return { ...garden, piles: garden.piles.map((pile) => (pile.id === id ? change(pile) : pile)) };
}

/** The garden with a cover that has grown again, or was worked on because it had. */
export function regrown(garden: Garden, standId: string, told: Regrowth): Garden {
  return workStand(garden, standId, told.on, ({ regrowth = [] }) => ({ regrowth: [...regrowth, told] }));
}
