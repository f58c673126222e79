/**
 * Piles of horse manure and leaves, with the log each example wants.
 */
import type { Pile } from '../../src/garden/garden.ts';
import { addDays } from '../../src/measures/days.ts';
import { pile } from './gardens.ts';

const BUILT = '2026-05-01';

/** A finished pile of horse manure and leaves with no log at all: 400 L of compost. */
export function dungPile(parts: Partial<Pile> = {}): Pile {
  return pile(BUILT, {
    ingredients: [
      { materialId: 'horse_manure_bedded', litres: 400 },
      { materialId: 'leaves_dry_loose', litres: 600 },
    ],
    finishedOn: '2026-10-01',
    ...parts,
  });
}

/** The same with days of heat and turns among them logged. */
export function hotLog({ days, turns, tempC = 58 }: { days: number; turns: number; tempC?: number }): Pile {
  return dungPile({
    readings: Array.from({ length: days }, (_, at) => ({ on: addDays(BUILT, at + 2), tempC })),
    turns: Array.from({ length: turns }, (_, at) => addDays(BUILT, 2 * at + 3)),
  });
}

/** Leaves and grass, finished: no manure in it. */
export function leafPile(parts: Partial<Pile> = {}): Pile {
  return pile(BUILT, { id: 'q', binId: 'other', finishedOn: '2026-10-05', ...parts });
}
