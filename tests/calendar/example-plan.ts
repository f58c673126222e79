import type { TaskDraft } from '../../src/practices/draft.ts';
import type { Entry, Plan, PlannedTask } from '../../src/schedule/plan.ts';

/** An entry of one task, for a test to bend to its purpose. */
export interface ExampleEntry {
  lotId: string;
  day: string;
  state?: Entry['state'];
  ifMissed?: PlannedTask['ifMissed'];
}

/** A plan of sowing jobs, one bed each, as the scheduler would hand it on. */
export function examplePlan(today: string, ...examples: ExampleEntry[]): Plan {
  return {
    gardenId: 'hollow-lane',
    today,
    factsVersion: 1,
    revisedAt: '2027-03-01T06:00:00.000Z',
    tasks: examples.map(taskOf),
    entries: examples.map(entryOf),
    changes: [],
    clashes: [],
  };
}

function taskOf(example: ExampleEntry): PlannedTask {
  const { lotId, day, state = 'open' } = example;
  return {
    ...exampleDraft(example),
    day,
    state,
    pinned: false,
    lotId,
    sequence: 2,
    changedAt: '2027-04-01T05:00:00.000Z',
  };
}

/** A sowing job of one bed, to be done on one day. */
export function exampleDraft({ lotId, day, ifMissed = 'still do' }: ExampleEntry): TaskDraft {
  return {
    key: `cover-sow/stand:${lotId}`,
    practice: 'cover-cropping',
    kind: 'sow',
    job: { id: 'sow-winter-rye', title: 'Sow winter rye' },
    subject: { type: 'bed', id: lotId, name: 'Long bed' },
    weight: 'work',
    title: 'Sow winter rye in Long bed',
    steps: ['Rake level.', 'Sow ⟦120 g⟧ over the bed.'],
    cautions: ['Do not step on wet soil.'],
    supplies: [{ what: 'winter rye seed', amount: { value: 120, unit: 'g' } }],
    window: { earliest: day, preferred: day, latest: day },
    ifMissed,
    missedNote: 'Mulch the bed instead.',
    effortMinutes: 30,
    needs: ['soil-fit'],
    after: [],
    confidence: 'recorded',
    reasons: [],
    makes: [],
  };
}

function entryOf(example: ExampleEntry): Entry {
  const { lotId, day, practice, kind, title, state, key, effortMinutes, sequence, changedAt } = taskOf(example);
  const createdAt = '2027-01-02T05:00:00.000Z';
  return {
    lotId,
    day,
    title,
    practice,
    kind,
    state,
    keys: [key],
    effortMinutes,
    sequence,
    createdAt,
    changedAt,
    content: title,
  };
}
