import { describe, expect, it } from 'vitest';
import { answerConditional, strongEtag } from '../../src/calendar/etag.ts';

const etag = strongEtag('a feed');

function answer(ifNoneMatch: string | undefined, ifModifiedSince?: string): 200 | 304 {
  return answerConditional({ ifNoneMatch, ifModifiedSince, etag, changedAt: '2027-04-18T09:30:00.400Z' });
}

describe('strongEtag', () => {
  it('is a quoted strong tag that follows the octets', () => {
    expect(etag).toMatch(/^"[A-Za-z0-9_-]{43}"$/);
    expect(strongEtag('a feed')).toBe(etag);
    expect(strongEtag('a feed ')).not.toBe(etag);
  });
});

describe('answerConditional, If-None-Match (RFC 9110, 13.1.2)', () => {
  it('sends the feed to whoever asks without a condition', () => expect(answer(undefined)).toBe(200));

  it('spares whoever holds the current tag', () => expect(answer(etag)).toBe(304));

  it('sends the feed for another tag', () => expect(answer('"old"')).toBe(200));

  it('compares weakly', () => expect(answer(`W/${etag}`)).toBe(304));

  it('reads a list, commas inside tags included', () => {
    expect(answer(`"old", W/"a,b" ,${etag}`)).toBe(304);
    expect(answer('"old", "older"')).toBe(200);
  });

  it('takes * for any copy', () => expect(answer(' * ')).toBe(304));

  it('sends the feed where the tag lacks its quotes or is empty', () => {
    expect(answer(etag.slice(1, -1))).toBe(200);
    expect(answer('')).toBe(200);
  });
});

describe('answerConditional, If-Modified-Since (RFC 9110, 13.1.3)', () => {
  it('spares a copy of the second of the change or later', () => {
    expect(answer(undefined, 'Sun, 18 Apr 2027 09:30:00 GMT')).toBe(304);
    expect(answer(undefined, 'Mon, 19 Apr 2027 00:00:00 GMT')).toBe(304);
  });

  it('sends the feed for an earlier copy', () => expect(answer(undefined, 'Sun, 18 Apr 2027 09:29:59 GMT')).toBe(200));

  it('passes over a date it cannot read', () => expect(answer(undefined, '2027-05-01')).toBe(200));

  it('lets If-None-Match decide alone where both are sent (13.2.2)', () => {
    expect(answer('"old"', 'Mon, 19 Apr 2027 00:00:00 GMT')).toBe(200);
    expect(answer(etag, 'Sun, 18 Apr 2027 09:29:59 GMT')).toBe(304);
  });
});
