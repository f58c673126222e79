/**
 * What can hurt, beside the work it belongs to: in full the first time, and by its day where it comes again. What is about
 * the crop alone stands on the task's page and in the calendar.
 */
import type { Day } from '../measures/days.ts';
import { canHurt } from './hurts.ts';
import { isToDo, type WeekList } from './week-list.ts';

/** The cautions of one entry. */
export interface EntryCautions {
  /** Told here in full; may hold marked amounts. */
  told: readonly string[];
  /** Days earlier in the list, and entries earlier on the same day, that told the rest. */
  asOn: readonly Day[];
}

/** The cautions of every entry that is still to do, by the id of its entry; nothing for work without any. */
export function cautionsOf({ days }: Pick<WeekList, 'days'>): ReadonlyMap<string, EntryCautions> {
  const toldOn = new Map<string, Day>();
  const cautions = new Map<string, EntryCautions>();
  for (const { day, entries } of days) {
    for (const { entry, tasks } of entries.filter(isToDo)) {
      const own = [...new Set(tasks.flatMap((task) => task.cautions.filter(canHurt)))];
      const told = own.filter((caution) => !toldOn.has(caution));
      const asOn = [...new Set(own.flatMap((caution) => toldOn.get(caution) ?? []))];
      for (const caution of told) toldOn.set(caution, day);
      if (own.length > 0) cautions.set(entry.lotId, { told, asOn });
    }
  }
  return cautions;
}
