/**
 * The ledgers of a garden, worked out once for a view: a view is the same object until a fact or the day changes.
 */
import { memory } from '../climate/remembered.ts';
import { fertilitySheet, type LedgerTold } from '../digest/fertility-sheet.ts';
import { planningInput } from '../steward/planner.ts';
import type { GardenView } from '../steward/steward.ts';

const held = memory<GardenView, string, LedgerTold[]>();

/** The ledgers of a view, told. */
export function heldFertility(view: GardenView): LedgerTold[] {
  return held(view, 'fertility', () => fertilitySheet(planningInput(view)));
}
