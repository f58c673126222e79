import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { strongEtag } from '../../../src/calendar/etag.ts';
import { chosenCoding, codedFeed } from '../../../src/web/feeds/feed-answer.ts';

describe('chosenCoding (RFC 9110, 12.5.3)', () => {
  test.each([
    ['', 'identity'],
    ['identity', 'identity'],
    ['gzip', 'gzip'],
    ['gzip, deflate, br', 'br'],
    ['GZIP', 'gzip'],
    ['br;q=0.2, gzip;q=0.8', 'gzip'],
    ['br;q=0, gzip', 'gzip'],
    ['*', 'br'],
    ['*;q=0.5, br;q=0', 'gzip'],
    ['*;q=0', 'identity'],
    ['identity, gzip;q=0.5', 'identity'],
    ['gzip;q=nonsense', 'identity'],
    ['deflate, zstd', 'identity'],
  ])('of "%s" is %s', (header, coding) => {
    expect(chosenCoding(header)).toBe(coding);
  });
});

describe('a coded feed', () => {
  const body = 'SUMMARY:Sow rye 🌱\r\n'.repeat(400);
  const feed = { body, etag: strongEtag(body), changedAt: '2027-04-18T09:30:00.000Z' };

  test('is the same text, in octets of its own under a tag of its own', async () => {
    const codings = ['identity', 'gzip', 'br'] as const;
    const [plain, gzip, br] = await Promise.all(codings.map((coding) => codedFeed(feed, coding).whole()));
    if (!plain || !gzip || !br) throw new Error('a coding is missing');
    expect(Buffer.from(plain.octets).toString()).toBe(body);
    expect(gunzipSync(gzip.octets).toString()).toBe(body);
    expect(brotliDecompressSync(br.octets).toString()).toBe(body);
    expect(new Set([plain, gzip, br].map(({ headers }) => headers.ETag)).size).toBe(3);
    expect([plain, gzip, br].map(({ headers }) => headers['Content-Encoding'])).toEqual([undefined, 'gzip', 'br']);
    for (const { octets, headers } of [plain, gzip, br]) {
      expect(headers['Content-Length']).toBe(String(octets.byteLength));
      expect(headers.Vary).toBe('Accept-Encoding');
    }
  });

  test('is made once', () => {
    expect(codedFeed(feed, 'br').whole()).toBe(codedFeed(feed, 'br').whole());
  });

  test('has a strong tag', () => {
    expect(codedFeed({ ...feed, etag: '"abc"' }, 'gzip').etag).toBe('"abc-gzip"');
    expect(codedFeed({ ...feed, etag: '"abc"' }, 'identity').etag).toBe('"abc"');
  });

  test('renews a kept copy with its tag, how long it holds and what it varies by, and nothing else', () => {
    const { etag, unchangedHeaders } = codedFeed(feed, 'br');
    expect(unchangedHeaders).toEqual({ ETag: etag, 'Cache-Control': 'private, max-age=300', Vary: 'Accept-Encoding' });
  });
});
