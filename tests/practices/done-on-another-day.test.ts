import { describe, expect, test } from 'vitest';
import { applyFact } from '../../src/garden/apply-fact.ts';
import type { Garden } from '../../src/garden/garden.ts';
import { addDays, type Day, daysBetween } from '../../src/measures/days.ts';
import type { TaskDraft } from '../../src/practices/draft.ts';
import { cover, draft, draftsIn, frostDates, garden, milwaukee, pile, sown } from './gardens.ts';

/** A garden once a task of its plan was marked done on a day. */
function marked(of: Garden, task: TaskDraft, on: Day): Garden {
  const { key, practice, kind: taskKind, title, job, subject, effortMinutes, makes } = task;
  const done = { key, practice, taskKind, title, job, subject, effortMinutes, makes: [...makes] };
  const fact = { kind: 'tasks-done' as const, on, tasks: [done] };
  return applyFact(of, { entry: 2, recordedAt: `${on}T00:00:00Z`, recordedOn: on, by: 'a', fact });
}

interface Case {
  of: Garden;
  doing: string;
  on: Day;
  moves: string;
  climate?: typeof milwaukee;
}

/** The first day of what follows, once a task was done on a day and ten days after it. */
function firstDays({ of, doing, on, moves, climate = milwaukee }: Case): [Day, Day] {
  const task = draft(draftsIn(of, climate), doing);
  const first = (day: Day): Day =>
    draft(draftsIn(marked(of, task, day), climate, addDays(on, 10)), moves).window.earliest;
  return [first(on), first(addDays(on, 10))];
}

const rye = cover('cereal_rye', '2026-09-20');
const built = pile('2027-05-01', { built: { day: '2027-05-01', happened: false } });

const CASES: Record<string, Case> = {
  'a cover sown: the look at it': {
    of: garden({ startedOn: '2027-08-01', stands: [cover('oats', '2027-08-20')] }),
    doing: 'cover-sow/stand:s',
    on: '2027-08-15',
    moves: 'cover-check/stand:s',
  },
  'a cover cut: the look for regrowth': {
    of: garden({ startedOn: '2027-04-15', stands: [rye] }),
    doing: 'cover-cut/stand:s',
    on: '2027-04-20',
    moves: 'cover-regrowth/stand:s/check:1',
  },
  'a sheet laid: its lifting': {
    of: garden({
      startedOn: '2027-05-20',
      stands: [{ ...rye, cutOn: '2027-05-05', regrowth: [{ on: '2027-05-18', what: 'grew-again', answer: 'sheet' }] }],
    }),
    doing: 'cover-sheet/stand:s/lay:1',
    on: '2027-05-20',
    moves: 'cover-sheet/stand:s/lift:1',
  },
  'a pile built: its first turn': {
    of: garden({ startedOn: '2027-04-15', piles: [built] }),
    doing: 'pile-build/pile:p',
    on: '2027-04-25',
    moves: 'pile-turn/pile:p/turn:1',
  },
  'a pile turned: the next turn': {
    of: garden({ startedOn: '2027-05-02', piles: [built] }),
    doing: 'pile-turn/pile:p/turn:1',
    on: '2027-05-05',
    moves: 'pile-turn/pile:p/turn:2',
  },
  'garlic planted: its mulch': {
    of: garden({ startedOn: '2027-09-15', plantings: [sown('garlic', '2027-10-20')] }),
    doing: 'sow/planting:garlic-2027-10-20',
    on: '2027-11-10',
    moves: 'mulch-garlic/planting:garlic-2027-10-20',
  },
  'carrots sown: their clearing': {
    of: garden({ startedOn: '2027-04-15', plantings: [sown('carrot', '2027-05-01')] }),
    doing: 'sow/planting:carrot-2027-05-01',
    on: '2027-04-25',
    moves: 'bed-clear/planting:carrot-2027-05-01',
  },
  'in the south over New Year, carrots sown: their clearing': {
    of: garden({
      startedOn: '2027-11-15',
      place: { latitude: -45.9 },
      plantings: [sown('carrot', '2027-12-24')],
    }),
    doing: 'sow/planting:carrot-2027-12-24',
    on: '2027-12-27',
    moves: 'bed-clear/planting:carrot-2027-12-24',
    climate: frostDates('10-20', '05-10', -45.9),
  },
  'over 29 February, a cover cut in a mild place: the look for regrowth': {
    of: garden({ startedOn: '2028-02-15', stands: [cover('cereal_rye', '2027-10-20')] }),
    doing: 'cover-cut/stand:s',
    on: '2028-02-20',
    moves: 'cover-regrowth/stand:s/check:1',
    climate: frostDates('02-20', '12-10', 34),
  },
};

describe('work done ten days later moves what follows by ten days', () => {
  test.each(Object.entries(CASES))('%s', (_, its) => {
    const [sooner, later] = firstDays(its);
    expect(daysBetween(sooner, later)).toBe(10);
  });
});
