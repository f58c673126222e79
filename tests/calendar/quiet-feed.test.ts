import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { feedEventsOf, gardenFeed, PLAIN_VIEW } from '../../src/calendar/feed-events.ts';
import { KeptTexts } from '../../src/calendar/kept-texts.ts';
import type { Plan } from '../../src/schedule/plan.ts';
import { runs } from '../runs.ts';
import { type Found, fourBeds, planOf } from './days-of-planning.ts';

const frame = { calendarName: 'Hollow Lane', description: '', notice: { title: 'Nothing to do', description: '' } };

/** Each event's octets by UID. */
function octetsOf(plan: Plan, { view = PLAIN_VIEW, kept = new KeptTexts() } = {}): Map<string, string> {
  const { eventTexts } = gardenFeed(plan, 'metric', frame, { view, kept });
  return new Map(eventTexts.map((text) => [valueIn(text, 'UID'), text]));
}

function valueIn(text: string, name: string): string {
  return new RegExp(`^${name}:(.*)$`, 'm').exec(text)?.[1] ?? '';
}

/** A sowing that many days from now. */
function sowing(dayAfterToday: number): Found {
  return { dayAfterToday, step: 'Sow ⟦120 g⟧.', jobId: 'sow-winter-rye', state: 'open' };
}

describe('an event’s octets from one plan to the next', () => {
  it('are the same, or rise in SEQUENCE, DTSTAMP and LAST-MODIFIED all three', () => {
    fc.assert(
      fc.property(fourBeds, fourBeds, (before, after) => {
        const first = planOf(before, 'metric', 0);
        const old = octetsOf(first);
        for (const [uid, text] of octetsOf(planOf(after, 'metric', 1, first))) {
          const was = old.get(uid);
          if (was === undefined || text === was) continue;
          expect(Number(valueIn(text, 'SEQUENCE'))).toBe(Number(valueIn(was, 'SEQUENCE')) + 1);
          expect(valueIn(text, 'DTSTAMP') > valueIn(was, 'DTSTAMP')).toBe(true);
          expect(valueIn(text, 'LAST-MODIFIED') > valueIn(was, 'LAST-MODIFIED')).toBe(true);
        }
      }),
      { numRuns: runs(40, 800) },
    );
  });

  it('are other ones when the day is another, and the same for beds that stayed', () => {
    const first = planOf([sowing(1), sowing(4)], 'metric', 0);
    const second = planOf([sowing(2), sowing(4)], 'metric', 1, first);
    const [old, now] = [octetsOf(first), octetsOf(second)];
    expect([...now.keys()]).toEqual([...old.keys()]);
    expect([...now].map(([uid, text]) => text === old.get(uid))).toEqual([false, true]);
  });

  it.each(['job', 'day'] as const)('by %s are those of a feed written from nothing, whatever was kept before', (by) => {
    const view = { ...PLAIN_VIEW, shape: { ...PLAIN_VIEW.shape, by } };
    fc.assert(
      fc.property(fourBeds, fourBeds, fourBeds, (...days) => {
        const kept = new KeptTexts();
        let published: Plan | undefined;
        for (const [day, beds] of days.entries()) {
          published = planOf(beds, 'metric', day, published);
          expect(octetsOf(published, { view, kept })).toEqual(octetsOf(published, { view }));
        }
      }),
      { numRuns: runs(25, 500) },
    );
  });
});

describe('the same job on several beds', () => {
  const uidsOf = (plan: Plan) => feedEventsOf(plan, 'metric').map(({ uid }) => uid);

  it('keeps its UID when a bed joins it and when one leaves', () => {
    const two = planOf([sowing(3), sowing(3)], 'metric', 0);
    const three = planOf([sowing(3), sowing(3), sowing(3)], 'metric', 1, two);
    const one = planOf([sowing(3)], 'metric', 2, three);
    expect(uidsOf(two)).toHaveLength(1);
    expect(uidsOf(three)).toEqual(uidsOf(two));
    expect(uidsOf(one)).toEqual(uidsOf(two));
  });
});
