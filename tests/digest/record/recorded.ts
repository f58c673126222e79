/**
 * Ledgers whose record is looked at.
 */

import { type RecordAsked, seasonRecord } from '../../../src/digest/record/season-record.ts';
import type { Effect } from '../../../src/garden/effects.ts';
import type { DoneTask, Fact } from '../../../src/garden/facts.ts';
import type { Subject } from '../../../src/garden/garden.ts';
import type { LedgerEntry } from '../../../src/garden/ledger.ts';
import type { Day } from '../../../src/measures/days.ts';
import { gardenOf } from '../../garden/example-garden.ts';
import { frostDates } from '../../practices/gardens.ts';

/** The record of a ledger on a day, in a garden of the north unless told otherwise. */
export function recordOf(
  ledger: readonly LedgerEntry[],
  today: Day = '2027-12-31',
  asked: RecordAsked = {},
  climate = frostDates('05-10', '10-05', 43.2),
) {
  return seasonRecord({ garden: gardenOf(ledger), climate, ledger, today }, asked);
}

/** The lines of a record in short: day, what it is about, what was done. */
export function lines(record: { rows: readonly { on: Day; aboutName: string; doing: string }[] }): string[] {
  return record.rows.map(({ on, aboutName, doing }) => `${on} ${aboutName}: ${doing}`);
}

export const NORTH: Subject = { type: 'bed', id: 'north-bed', name: 'North bed' };

/** A task done on a day, with what is said of it. */
export function did(on: Day, makes: Effect[], told: Partial<DoneTask> = {}): Fact {
  const task = {
    ...{ key: `a-task/bed:north-bed/${on}`, practice: 'topdressing', taskKind: 'topdress', title: 'Spread compost' },
    ...{ job: { id: 'topdress', title: 'Spread compost' }, subject: NORTH, effortMinutes: 40, makes },
    ...told,
  };
  return { kind: 'tasks-done', on, tasks: [task] };
}

/** So many litres on the north bed. */
export function spread(on: Day, litres: number, told: Partial<DoneTask> = {}): Fact {
  return did(on, [{ makes: 'bed-topdressed', bedId: 'north-bed', litres }], told);
}
