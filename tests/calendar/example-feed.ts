import type { FeedContent, FeedEvent } from '../../src/calendar/render-feed.ts';

/** An event for a test to bend to its purpose. */
export function exampleEvent(change: Partial<FeedEvent> = {}): FeedEvent {
  return {
    uid: 'b1946ac9-2492-5234-8b22-6235b4d2a1f0@loamtide',
    day: '2027-08-23',
    title: 'Sow winter rye in Long bed',
    description: 'Rake level.\nSow 120 g over the bed.',
    categories: ['Cover cropping'],
    sequence: 0,
    createdAt: '2027-03-01T06:00:00.000Z',
    changedAt: '2027-03-01T06:00:00.000Z',
    ...change,
  };
}

/** A feed of some events. */
export function exampleFeed(events: readonly FeedEvent[], change: Partial<FeedContent> = {}): FeedContent {
  return {
    calendarName: 'Hollow Lane',
    description: 'What to do in the garden, and when.',
    events,
    notice: exampleEvent({ uid: 'notice@loamtide', title: 'Nothing to do for now', description: '', categories: [] }),
    refreshHours: 6,
    lastModified: '2027-04-02T05:10:00.000Z',
    ...change,
  };
}

/** Events with every turn a title, a text or a day can take. */
export const varied: readonly FeedEvent[] = [
  exampleEvent(),
  exampleEvent({ uid: 'leap@loamtide', day: '2028-02-29', title: 'Order seed; check stock, twice', sequence: 3 }),
  exampleEvent({ uid: 'year-end@loamtide', day: '2027-12-31', title: 'Empty the rain barrel' }),
  exampleEvent({
    uid: 'window@loamtide',
    day: '2027-12-30',
    until: '2028-01-02',
    title: 'Lay 1/2 in of mulch — “early” 🌱 \u202Eabc\u202C',
    description: `First line\nsecond, with a comma; and more\n\n${'Work from a board, never from the soil. '.repeat(12)}`,
    categories: ['Mulching', 'Beds, north'],
    url: 'https://garden.example/tasks/1?keys=a,b;c',
    sequence: 12,
    changedAt: '2027-11-02T23:59:59.999Z',
  }),
];
