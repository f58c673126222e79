import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cleanText, contentLines, escapedText, folded, sentLines } from '../../src/calendar/repair.ts';

describe('cleanText', () => {
  it('turns every kind of line break into LF', () => {
    expect(cleanText('a\r\nb\rc\nd\ve\ff\u0085g\u2028h\u2029i')).toBe('a\nb\nc\nd\ne\nf\ng\nh\ni');
  });

  it('drops control characters and keeps tabs', () => {
    expect(cleanText('a\u0000b\u0007c\td\u001be\u007ff\u0090g')).toBe('abc\tdefg');
  });

  it('replaces half of a surrogate pair and leaves whole pairs alone', () => {
    expect(cleanText('a\uD83Cb \u{1F331}')).toBe('a\uFFFDb \u{1F331}');
  });

  it('leaves nothing that TEXT may not hold (RFC 5545, 3.3.11)', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.integer({ min: 0, max: 0xffff }).map((code) => String.fromCharCode(code)) }),
        (text) => {
          expect(cleanText(text)).not.toMatch(/[^\P{Cc}\t\n]|[\u2028\u2029]/u);
          expect(Buffer.from(cleanText(text)).toString()).toBe(cleanText(text));
        },
      ),
    );
  });
});

describe('escapedText', () => {
  it('escapes backslash, semicolon, comma and line break, and nothing else (RFC 5545, 3.3.11)', () => {
    expect(escapedText('a\\b;c,d\ne:f"g')).toBe('a\\\\b\\;c\\,d\\ne:f"g');
  });
});

describe('folded', () => {
  it('leaves a line of 75 octets whole and cuts one of 76', () => {
    expect(folded('x'.repeat(75))).toBe('x'.repeat(75));
    expect(folded('x'.repeat(76))).toBe(`${'x'.repeat(75)}\r\n x`);
  });

  it('counts octets, not characters, and never cuts a character', () => {
    expect(folded('é'.repeat(38))).toBe(`${'é'.repeat(37)}\r\n é`);
    expect(folded(`${'x'.repeat(73)}🌱`)).toBe(`${'x'.repeat(73)}\r\n 🌱`);
  });

  it('gives lines that fit and unfold to what they were', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', minLength: 100, maxLength: 400 }).map(escapedText), (line) => {
        const lines = folded(line).split('\r\n');
        for (const part of lines) expect(Buffer.byteLength(part)).toBeLessThanOrEqual(75);
        expect(folded(line).replaceAll('\r\n ', '')).toBe(line);
      }),
    );
  });
});

describe('contentLines and sentLines', () => {
  const written = [
    'BEGIN:VEVENT',
    'SUMMARY:Beds\\, north',
    'URL;VALUE=URI:https://g.example/?a=1\\,2\\;3',
    'END:VEVENT',
  ].join('\r\n');

  it('end every line with CRLF, the last one too (RFC 5545, 3.1)', () => {
    expect(sentLines(contentLines(written))).toMatch(/^([^\r\n]+\r\n)+$/);
  });

  it('take TEXT escapes out of a URL (RFC 5545, 3.3.13), also out of a folded one, and out of nothing else', () => {
    expect(contentLines(written.replace('1\\,', '1\\\r\n ,'))).toEqual([
      'BEGIN:VEVENT',
      'SUMMARY:Beds\\, north',
      'URL;VALUE=URI:https://g.example/?a=1,2;3',
      'END:VEVENT',
    ]);
  });
});
