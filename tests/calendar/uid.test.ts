import { describe, expect, it } from 'vitest';
import { feedUid, nameUuid } from '../../src/calendar/uid.ts';

describe('nameUuid', () => {
  it('gives the published version 5 example (RFC 9562, appendix A.4)', () => {
    const dnsNamespace = '6ba7b810-9dad-11d1-80b4-00c04fd430c8';
    expect(nameUuid(dnsNamespace, 'www.example.com')).toBe('2ed6657d-e927-568b-95e1-2665a8aea6a2');
  });
});

describe('feedUid', () => {
  it('is the same for the same entry, today and in any later version', () => {
    expect(feedUid('hollow-lane', 'lot-7')).toBe('1644fdb9-68cc-56b7-97f4-26234208cdae@loamtide');
  });

  it('differs between entries and between gardens, however their ids are cut', () => {
    const uids = [feedUid('a', 'b'), feedUid('a', 'c'), feedUid('b', 'b'), feedUid('ab', 'c'), feedUid('a', 'bc')];
    expect(new Set(uids).size).toBe(uids.length);
  });

  it('shows nothing of the garden and stays well inside 255 octets (RFC 5545, 3.8.4.7)', () => {
    const uid = feedUid('the-maple-street-garden', `cover-cut/stand:${'s'.repeat(300)}`);
    expect(uid).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}@loamtide$/);
  });
});
