import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clientKind } from '../../../src/web/requests/client-kind.ts';

describe('clientKind', () => {
  // Forms after RFC 9110, 10.1.5; the headers are from memory.
  test.each([
    ['Evolution/3.46.4', 'Evolution'],
    ['vdirsyncer/0.19.0', 'vdirsyncer'],
    ['Mozilla/5.0 (X11; Linux x86_64; rv:115.0) Gecko/20100101 Thunderbird/115.3.1', 'Thunderbird'],
    ['macOS/14.4 (23E214) CalendarAgent/993', 'macOS'],
    ['Mozilla/5.0 (compatible; Some-Calendar-Importer; +https://calendar.example/help)', 'Some-Calendar-Importer'],
    ['Mozilla/5.0 (X11) AppleWebKit/537.36 (KHTML, like Gecko) Safari/537.36', 'a browser'],
    ['curl', 'curl'],
    ['', 'an unnamed program'],
  ])('%s is %s', (userAgent, kind) => {
    expect(clientKind(userAgent)).toBe(kind);
  });

  test('is a short word or two, whatever is sent, and never holds a token', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 2_000 }), (userAgent) => {
        expect(clientKind(userAgent)).toMatch(/^[A-Za-z][\w.+ -]{0,39}$/);
      }),
    );
    expect(clientKind(`x${'A'.repeat(60)}/1`)).toHaveLength(40);
  });
});
