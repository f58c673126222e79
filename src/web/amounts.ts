/**
 * The amount of compost a task is marked done with, asked for in the reader's unit.
 */

import type { UnitSystem } from '../measures/units.ts';
import { LITRES_PER_CUBIC_FOOT } from '../measures/units.ts';
import type { TaskKey } from '../practices/draft.ts';
import type { PlannedTask } from '../schedule/plan.ts';

/** Name of the field that asks for a task's amount. */
export function amountField(key: TaskKey): string {
  return `amount:${key}`;
}

/** Litres a task is planned with; nothing for a task that uses none. */
function plannedLitres({ makes }: PlannedTask): number | undefined {
  for (const effect of makes) if ('litres' in effect) return effect.litres;
  return undefined;
}

/** The unit that amounts are asked for in. */
export function amountUnit(units: UnitSystem): { label: string; litres: number } {
  return units === 'us' ? { label: 'cu ft', litres: LITRES_PER_CUBIC_FOOT } : { label: 'L', litres: 1 };
}

/** A task's planned amount as its field shows it; nothing for a task that uses none. */
export function plannedAmount(task: PlannedTask, units: UnitSystem): string | undefined {
  const litres = plannedLitres(task);
  return litres === undefined ? undefined : String(Math.round((litres / amountUnit(units).litres) * 10) / 10);
}
