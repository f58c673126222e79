import type { Change, Entry, Plan, PlannedTask } from '../../src/schedule/plan.ts';

/** A task of an otherwise plain job, for a test to bend to its purpose. */
export function sampleTask(key: string, day: string, change: Partial<PlannedTask> = {}): PlannedTask {
  return {
    key,
    practice: 'cover-cropping',
    kind: 'sow',
    job: { id: key, title: `Job ${key}` },
    subject: { type: 'bed', id: key, name: `bed ${key}` },
    weight: 'work',
    title: `Do ${key}`,
    steps: [],
    cautions: [],
    supplies: [],
    window: { earliest: day, preferred: day, latest: day },
    ifMissed: 'still do',
    missedNote: `What to do about ${key}.`,
    effortMinutes: 30,
    needs: [],
    after: [],
    confidence: 'derived',
    reasons: [],
    makes: [],
    day,
    state: 'open',
    pinned: false,
    lotId: key,
    sequence: 0,
    changedAt: '2027-04-01T00:00:00.000Z',
    ...change,
  };
}

/** A plan of some tasks: those of one lot share an entry, skipped ones have none. */
export function samplePlan(tasks: readonly PlannedTask[], changes: readonly Change[] = []): Plan {
  const lots = new Map<string, PlannedTask[]>();
  for (const task of tasks.filter(({ state }) => state !== 'skipped')) {
    lots.set(task.lotId, [...(lots.get(task.lotId) ?? []), task]);
  }
  return {
    gardenId: 'mill-row',
    today: '2027-04-20',
    factsVersion: 1,
    revisedAt: '2027-04-01T00:00:00.000Z',
    tasks,
    entries: [...lots.values()].flatMap(entryOf),
    changes,
    clashes: [],
  };
}

function entryOf(tasks: readonly PlannedTask[]): Entry[] {
  const [first] = tasks;
  if (first === undefined) return [];
  const { lotId, day, practice, kind, title, state, sequence, changedAt } = first;
  const effortMinutes = tasks.reduce((sum, task) => sum + task.effortMinutes, 0);
  const keys = tasks.map(({ key }) => key);
  const createdAt = changedAt;
  return [
    { lotId, day, practice, kind, title, state, sequence, changedAt, keys, effortMinutes, createdAt, content: title },
  ];
}

/** A change of a task, newest first in a plan. */
export function sampleChange(key: string, kind: Change['kind'], from?: string, to?: string): Change {
  return {
    key,
    title: `Do ${key}`,
    kind,
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
    because: [{ rule: 'schedule.unpinned', saw: {}, source: "the garden's own plan" }],
    at: '2027-04-19T00:00:00.000Z',
  };
}
