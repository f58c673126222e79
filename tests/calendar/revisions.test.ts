import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { feedEventsOf } from '../../src/calendar/feed-events.ts';
import type { FeedEvent } from '../../src/calendar/render-feed.ts';
import { type Found, fourBeds, planOf } from './days-of-planning.ts';

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
