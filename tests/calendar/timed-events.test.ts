import ICAL from 'ical.js';
import nodeIcal from 'node-ical';
import { describe, expect, it } from 'vitest';
import { feedEventsOf } from '../../src/calendar/feed-events.ts';
import { renderFeed } from '../../src/calendar/render-feed.ts';
import { planOf } from '../digest/example.ts';
import { exampleEvent, exampleFeed } from './example-feed.ts';

/** Begins and ends of the events, as two unrelated readers find them. */
function spansIn(body: string): { icalJs: string[]; nodeIcal: string[] } {
  const events = new ICAL.Component(ICAL.parse(body)).getAllSubcomponents('vevent').map((one) => new ICAL.Event(one));
  const parts = Object.values(nodeIcal.sync.parseICS(body)).flatMap((part) => (part?.type === 'VEVENT' ? [part] : []));
  return {
    icalJs: events.flatMap(({ startDate, endDate }) => [startDate, endDate].map((at) => at.toJSDate().toISOString())),
    nodeIcal: parts.flatMap(({ start, end }) => [start.toISOString(), end?.toISOString() ?? '']),
  };
}

function feedAt(from: string, minutes: number, day: string): string {
  return renderFeed(exampleFeed([exampleEvent({ day, at: { from, minutes } })]));
}

describe('an event with an hour', () => {
  it('is written from one UTC moment to another, and is no all-day event', () => {
    const lines = feedAt('2027-09-28T22:45:00.000Z', 60, '2027-09-28').split('\r\n');
    expect(lines).toContain('DTSTART:20270928T224500Z');
    expect(lines).toContain('DTEND:20270928T234500Z');
    expect(lines.filter((line) => line.includes('ALLDAYEVENT:TRUE') || line.includes('VALUE=DATE:'))).toEqual([]);
    expect(lines).toContain('TRANSP:TRANSPARENT');
  });

  it.each([
    // Winter time begins in Chicago on 7 November 2027, in Sydney summer time ends on 4 April 2027.
    [
      'on the day the clocks go back in the north',
      '2027-11-07',
      '2027-11-07T21:40:00.000Z',
      '2027-11-07T22:10:00.000Z',
    ],
    [
      'on the day the clocks go back in the south',
      '2027-04-04',
      '2027-04-04T07:20:00.000Z',
      '2027-04-04T07:50:00.000Z',
    ],
    ['past UTC midnight', '2027-05-20', '2027-05-20T23:50:00.000Z', '2027-05-21T00:20:00.000Z'],
    ['on New Year’s Eve', '2027-12-31', '2028-01-01T00:05:00.000Z', '2028-01-01T00:35:00.000Z'],
    ['on a leap day', '2028-02-29', '2028-02-29T23:10:00.000Z', '2028-02-29T23:40:00.000Z'],
  ])('stands on the same moments for two readers %s', (_, day, from, to) => {
    const spans = spansIn(feedAt(from, 30, day));
    expect(spans).toEqual({ icalJs: [from, to], nodeIcal: [from, to] });
  });

  it('comes out of the plan with its hour', () => {
    const at = { from: '2027-09-28T22:45:00.000Z', minutes: 45 };
    const window = ['2027-09-28', '2027-09-28', '2027-09-28'] as const;
    const [event] = feedEventsOf(planOf('2027-09-28', [{ key: 'cover/north', window, at }]), 'metric');
    expect(event).toMatchObject({ day: '2027-09-28', at });
  });
});
