import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { feedEventsOf } from '../../src/calendar/feed-events.ts';
import type { FeedEvent } from '../../src/calendar/render-feed.ts';
import type { DoneMark, Garden } from '../../src/garden/garden.ts';
import { addDays } from '../../src/measures/days.ts';
import type { TaskDraft } from '../../src/practices/draft.ts';
import type { Plan } from '../../src/schedule/plan.ts';
import { makePlan } from '../../src/schedule/reconcile.ts';
import { hollowLane } from '../digest/example.ts';
import { exampleDraft } from './example-plan.ts';

const today = '2027-12-20';

/** One bed's sowing as a day of planning finds it. */
interface Found {
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

const fourBeds = fc.array(found, { minLength: 4, maxLength: 4 });

function planOf(beds: readonly Found[], units: Garden['place']['units'], day: number, published?: Plan): Plan {
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

function shown({ sequence: _, changedAt: __, createdAt: ___, ...rest }: FeedEvent) {
  return rest;
}

describe('an event from one plan to the next', () => {
  it('rises in SEQUENCE and takes a new stamp exactly when something it shows has changed', () => {
    fc.assert(
      fc.property(fourBeds, fourBeds, (before, after) => {
        const first = planOf(before, 'metric', 0);
        const old = feedEventsOf(first, 'metric');
        for (const event of feedEventsOf(planOf(after, 'metric', 1, first), 'metric')) {
          const was = old.find(({ uid }) => uid === event.uid);
          if (was === undefined) continue;
          const changed = JSON.stringify(shown(event)) !== JSON.stringify(shown(was));
          expect(event.sequence - was.sequence).toBe(changed ? 1 : 0);
          expect(event.changedAt > was.changedAt).toBe(changed);
          expect(event.createdAt).toBe(was.createdAt);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('rises when its amounts are written in other units', () => {
    const beds: Found[] = [{ dayAfterToday: 4, step: 'Sow ⟦120 g⟧.', jobId: 'sow-winter-rye', state: 'open' }];
    const first = planOf(beds, 'metric', 0);
    const [metric] = feedEventsOf(first, 'metric');
    const [us] = feedEventsOf(planOf(beds, 'us', 1, first), 'us');
    expect([metric?.sequence, us?.sequence]).toEqual([0, 1]);
    expect([metric?.description.includes('120 g'), us?.description.includes('4.2 oz')]).toEqual([true, true]);
  });

  it('keeps one name for each entry', () => {
    fc.assert(
      fc.property(fourBeds, fourBeds, (before, after) => {
        const second = planOf(after, 'metric', 1, planOf(before, 'metric', 0));
        const uids = feedEventsOf(second, 'metric').map(({ uid }) => uid);
        expect(new Set(uids).size).toBe(uids.length);
      }),
    );
  });
});
