import type { Fact } from '../../src/garden/facts.ts';
import type { NewEntry } from '../../src/store/ledger.ts';

export const NOON = '2027-04-18T12:00:00.000Z';

/** The entry that says a task was skipped. */
export function skipping(key: string): NewEntry {
  return entryOf({ kind: 'task-skipped', key, title: 'Turn the pile', on: '2027-04-18' });
}

export function entryOf(fact: Fact): NewEntry {
  return { recordedAt: NOON, recordedOn: '2027-04-18', by: 'ada', fact };
}
