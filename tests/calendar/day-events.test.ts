import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { feedEventsOf, PLAIN_VIEW } from '../../src/calendar/feed-events.ts';
import { PLAIN_SHAPE } from '../../src/calendar/feed-shape.ts';
import type { FeedEvent } from '../../src/calendar/render-feed.ts';
import type { Plan } from '../../src/schedule/plan.ts';
import { fourBeds, planOf } from './days-of-planning.ts';
import { examplePlan } from './example-plan.ts';

const today = '2027-08-23';

function byDay(plan: Plan, feedId = 'feed-1'): FeedEvent[] {
  const shape = { ...PLAIN_SHAPE, by: 'day' } as const;
  return feedEventsOf(plan, 'metric', { view: { ...PLAIN_VIEW, feedId, shape } });
}

describe('a feed with one entry a day', () => {
  const plan = examplePlan(
    today,
    { lotId: 'a', day: today },
    { lotId: 'b', day: today, state: 'done' },
    { lotId: 'c', day: '2027-08-24' },
  );

  it('gathers the jobs of a day, what is to be done first, each under its own name', () => {
    const [first, second] = byDay(plan);
    expect(byDay(plan)).toHaveLength(2);
    expect(first).toMatchObject({ day: today, title: 'Sow winter rye in Long bed, and 1 more' });
    expect(first?.description).toMatch(
      /^Sow winter rye in Long bed\nRake level\.[\s\S]*\n\nDone: Sow winter rye in Long bed\n/,
    );
    expect(second?.title).toBe('Sow winter rye in Long bed');
  });

  it('gathers them in the order of the plan, which is that of the work', () => {
    const two = examplePlan(today, { lotId: 'a', day: today }, { lotId: 'b', day: today });
    const entries = two.entries.map((entry) => ({ ...entry, title: `Job ${entry.lotId}` }));
    expect(byDay({ ...two, entries })[0]?.title).toBe('Job a, and 1 more');
    expect(byDay({ ...two, entries: [...entries].reverse() })[0]?.title).toBe('Job b, and 1 more');
  });

  it('has names of its own: neither those of jobs nor those of another feed', () => {
    const uids = [...byDay(plan), ...byDay(plan, 'feed-2'), ...feedEventsOf(plan, 'metric')].map(({ uid }) => uid);
    expect(new Set(uids).size).toBe(2 + 2 + 3);
  });

  it('keeps work that has its hour on its own', () => {
    const at = { from: '2027-08-23T22:00:00.000Z', minutes: 30 };
    const entries = plan.entries.map((entry) => (entry.lotId === 'a' ? { ...entry, at } : entry));
    expect(byDay({ ...plan, entries }).map((event) => event.at)).toEqual(expect.arrayContaining([at, undefined]));
    expect(byDay({ ...plan, entries })).toHaveLength(3);
  });

  it('marks a day as done when all of it is', () => {
    const done = examplePlan(today, { lotId: 'a', day: today, state: 'done' });
    expect(byDay(done)[0]?.title).toBe('Done: Sow winter rye in Long bed');
  });

  it('keeps what was left undone on its day for as long as it looks back', () => {
    expect(byDay(examplePlan(today, { lotId: 'a', day: '2027-08-01' }))).toHaveLength(1);
  });
});

describe('the entry of a day from one plan to the next', () => {
  it('is revised whenever it says something else, also when what it loses has left the plan', () => {
    fc.assert(
      fc.property(fc.array(fourBeds, { minLength: 2, maxLength: 5 }), (found) => {
        const revisions = new Map<string, FeedEvent>();
        let published: Plan | undefined;
        found.forEach((beds, day) => {
          published = planOf(beds, 'metric', day, published);
          for (const event of byDay(published)) {
            const was = revisions.get(event.uid);
            revisions.set(event.uid, event);
            if (was === undefined) continue;
            const same = was.title === event.title && was.description === event.description;
            if (!same) expect(event.sequence).toBeGreaterThan(was.sequence);
            if (!same) expect(event.changedAt > was.changedAt).toBe(true);
            expect(event.sequence).toBeGreaterThanOrEqual(was.sequence);
          }
        });
      }),
      { numRuns: 200 },
    );
  });

  it('is the same, to the last figure, when the plan is', () => {
    fc.assert(
      fc.property(fourBeds, (beds) => {
        const first = planOf(beds, 'metric', 0);
        const again = planOf(beds, 'metric', 0, first);
        expect(byDay(again)).toEqual(byDay(first));
      }),
    );
  });
});
