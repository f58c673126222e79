/**
 * Plants raised under a roof: which are, and when those that were sown on a day are old enough to go out.
 */
import { originOf } from '../../handbook/shapes/row.ts';
import { addDays, type Day } from '../../measures/days.ts';
import type { Reason } from '../draft.ts';
import type { PlantingInBed } from './planting-in-bed.ts';

/** Whether a planting's plants are raised under a roof: crowns and kinds with no published weeks are bought. */
export function isRaised({ planting, crop }: PlantingInBed): boolean {
  return planting.start.how === 'set-out' && crop.indoorWeeks !== undefined && crop.maturityFrom !== 'crown';
}

/** The first day on which plants that were sown under a roof are as old as their kind is set out; nothing of others. */
export function grownBy(at: PlantingInBed): { day: Day; reason: Reason } | undefined {
  const { planting, crop, name } = at;
  if (!isRaised(at) || planting.indoorsOn === undefined || crop.indoorWeeks === undefined) return undefined;
  const weeks = crop.indoorWeeks.low;
  const day = addDays(planting.indoorsOn, 7 * weeks);
  const saw = { crop: name, indoors: planting.indoorsOn, weeks };
  return { day, reason: { rule: 'plant.grown-by', saw, limit: day, source: originOf(crop, 'indoorWeeks') } };
}
