import { describe, expect, it } from 'vitest';
import { strongEtag } from '../../src/calendar/etag.ts';
import { renewedFeed } from '../../src/calendar/feed-body.ts';
import { exampleEvent, exampleFeed, varied } from './example-feed.ts';

const content = exampleFeed(varied);
const first = renewedFeed(undefined, content, '2027-04-02T05:10:00.000Z');

describe('renewedFeed', () => {
  it('dates a first feed now and tags its very text', () => {
    expect(first.changedAt).toBe('2027-04-02T05:10:00.000Z');
    expect(first.body).toContain('\r\nLAST-MODIFIED:20270402T051000Z\r\nBEGIN:VEVENT');
    expect(first.etag).toBe(strongEtag(first.body));
  });

  it('keeps text, tag and date while nothing in it changes, however often it is made', () => {
    expect(renewedFeed(first, structuredClone(content), '2027-04-03T00:00:00.000Z')).toEqual(first);
  });

  it('takes a new tag and date when an event changes', () => {
    const moved = varied.map((event) => ({ ...event, day: '2027-09-01', sequence: event.sequence + 1 }));
    const next = renewedFeed(first, { ...content, events: moved }, '2027-04-03T00:00:00.000Z');
    expect(next.etag).not.toBe(first.etag);
    expect(next.changedAt).toBe('2027-04-03T00:00:00.000Z');
    expect(next.body).toContain('\r\nLAST-MODIFIED:20270403T000000Z\r\nBEGIN:VEVENT');
  });

  it('takes a new date when an event only leaves', () => {
    const next = renewedFeed(first, { ...content, events: [exampleEvent()] }, '2027-04-03T00:00:00.000Z');
    expect(next.changedAt).toBe('2027-04-03T00:00:00.000Z');
  });
});
