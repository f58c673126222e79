/**
 * A clock that is wrong for a while: what calendars hold never grows older, and the plan comes back to the real day.
 */
import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import { household, MORNING } from './household.ts';

const HOUR_MS = 3_600_000;
const YEARS_MS = 10 * 365.25 * 24 * HOUR_MS;

interface Stamp {
  sequence: number;
  stamp: string;
  modified: string;
}

function stampsOf(body: string): Map<string, Stamp> {
  const events = new ICAL.Component(ICAL.parse(body)).getAllSubcomponents('vevent');
  const text = (event: ICAL.Component, name: string) => String(event.getFirstPropertyValue(name) ?? '');
  return new Map(
    events.map((event) => [
      text(event, 'uid'),
      {
        sequence: Number(text(event, 'sequence')),
        stamp: text(event, 'dtstamp'),
        modified: text(event, 'last-modified'),
      },
    ]),
  );
}

test.each([
  ['back past midnight and on again', [-14 * HOUR_MS, 0, HOUR_MS]],
  ['ten years ahead and back', [YEARS_MS, YEARS_MS + 24 * HOUR_MS, 0, HOUR_MS]],
  ['ten years ahead, back past midnight, and on', [YEARS_MS, -20 * HOUR_MS, 0, 24 * HOUR_MS]],
])('a clock that goes %s: no revision and no stamp ever falls', async (_, moves) => {
  const { steward, clock, garden } = await household();
  const { token } = await steward.addFeed(garden, 'Phone');
  const highest = new Map<string, Stamp>();
  let newest = '';
  let met = 0;
  for (const move of [0, ...moves]) {
    clock.moment = new Date(Date.parse(MORNING) + move).toISOString();
    const { plan } = await steward.view(garden);
    const task = plan.tasks.find(({ state }) => state === 'open');
    // Something changes at every stop, so that a stamp has reason to be set.
    if (task !== undefined) await steward.skip(garden, [task.key], 'ada');
    const feed = await steward.feedBody(token);
    const changedAt = feed?.changedAt ?? '';
    expect(changedAt >= newest).toBe(true);
    newest = changedAt;
    for (const [uid, now] of stampsOf(feed?.body ?? '')) {
      const before = highest.get(uid);
      if (before !== undefined) {
        met += 1;
        expect({ uid, ...now, isOlder: now.sequence < before.sequence }).toMatchObject({ isOlder: false });
        expect(now.stamp >= before.stamp, uid).toBe(true);
        expect(now.modified >= before.modified, uid).toBe(true);
      }
      highest.set(uid, now);
    }
  }
  expect(met).toBeGreaterThan(10);
  const { plan } = await steward.view(garden);
  expect(plan.today).toBe(clock.moment.slice(0, 10));
});
