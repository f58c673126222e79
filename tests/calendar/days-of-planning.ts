import fc from 'fast-check';
import type { DoneMark, Garden } from '../../src/garden/garden.ts';
import { addDays } from '../../src/measures/days.ts';
import type { TaskDraft } from '../../src/practices/draft.ts';
import type { Plan } from '../../src/schedule/plan.ts';
import { makePlan } from '../../src/schedule/reconcile.ts';
import { hollowLane } from '../digest/example.ts';
import { exampleDraft } from './example-plan.ts';

const today = '2027-12-20';

/** One bed's sowing as a day of planning finds it. */
export interface Found {
  dayAfterToday: number;
  step: string;
  jobId: string;
  state: 'open' | 'done' | 'skipped';
}

const found: fc.Arbitrary<Found> = fc.record({
  dayAfterToday: fc.integer({ min: -3, max: 6 }),
  step: fc.constantFrom('Sow ⟦120 g⟧.', 'Sow ⟦90 g⟧.'),
  jobId: fc.constantFrom('sow-winter-rye', 'sow-clover'),
  state: fc.constantFrom('open', 'open', 'open', 'done', 'skipped'),
});

/** What four beds may be found to want. */
export const fourBeds = fc.array(found, { minLength: 4, maxLength: 4 });

/** The plan of a day of planning, so many days after the first, with what was published before. */
export function planOf(beds: readonly Found[], units: Garden['place']['units'], day: number, published?: Plan): Plan {
  const drafts = beds.map((bed, at): TaskDraft => {
    const draft = exampleDraft({ lotId: `bed-${at}`, day: addDays(today, bed.dayAfterToday) });
    return { ...draft, steps: [bed.step], job: { ...draft.job, id: bed.jobId } };
  });
  const inState = (state: Found['state']) => drafts.filter((_, at) => beds[at]?.state === state);
  const done = inState('done').map(({ key, practice, kind, title, job, subject, effortMinutes }, entry): DoneMark => {
    return { key, practice, kind, title, job, subject, effortMinutes, entry, on: today };
  });
  const skipped = Object.fromEntries(inState('skipped').map(({ key }) => [key, today]));
  const garden: Garden = { ...hollowLane, place: { ...hollowLane.place, units }, done, skipped };
  const now = `${addDays(today, day)}T06:00:00.000Z`;
  return makePlan({ garden, drafts, today: addDays(today, day), now, factsVersion: day, published });
}
