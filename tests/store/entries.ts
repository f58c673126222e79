import type { Fact } from '../../src/garden/facts.ts';
import type { NewEntry } from '../../src/store/ledger.ts';

export const NOON = '2027-04-18T12:00:00.000Z';

/** The entry that says a task was skipped. */
export function skipping(key: string): NewEntry {
  return entryOf({ kind: 'tasks-skipped', on: '2027-04-18', tasks: [{ key, title: 'Turn the pile' }] });
}

export function entryOf(fact: Fact): NewEntry {
  return { recordedAt: NOON, recordedOn: '2027-04-18', by: 'ada', fact };
}
