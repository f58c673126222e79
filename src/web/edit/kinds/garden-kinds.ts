/**
 * Everything told of a garden besides its beds, in the order its page tells it.
 */

import { binKind } from './bins.ts';
import { climateKind, frostDatesKind, monthlyMeansKind } from './climate.ts';
import { awayKind, coldNightKind } from './days.ts';
import { householdKind } from './household.ts';
import type { EditKind } from './kind.ts';
import { pileKind } from './piles.ts';
import { careKind, placeKind, workKind } from './place.ts';
import { compostBoughtKind, gearKind, seedKind, wishKind } from './shed.ts';
import { topdressingKind } from './topdressing.ts';

/** The garden itself, its yard, its shed and its household. */
export const gardenKinds: readonly EditKind[] = [
  placeKind,
  workKind,
  careKind,
  climateKind,
  frostDatesKind,
  monthlyMeansKind,
  topdressingKind,
  binKind,
  pileKind,
  compostBoughtKind,
  householdKind,
  gearKind,
  seedKind,
  wishKind,
  awayKind,
  coldNightKind,
];
