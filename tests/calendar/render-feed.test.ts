import { describe, expect, it } from 'vitest';
import { renderFeed } from '../../src/calendar/render-feed.ts';
import { exampleEvent, exampleFeed, varied } from './example-feed.ts';

/** Content lines of a feed, folds undone. */
function linesOf(body: string): string[] {
  return body.replaceAll('\r\n ', '').split('\r\n');
}

/** The value of the one line with a name. */
function valueIn(body: string, name: string): string {
  const found = linesOf(body).filter((line) => line.startsWith(`${name}:`));
  expect(found).toHaveLength(1);
  return found[0]?.slice(name.length + 1) ?? '';
}

describe('renderFeed, as a whole', () => {
  it('writes these lines for one event', () => {
    expect(renderFeed(exampleFeed([exampleEvent()])).split('\r\n')).toEqual([
      'BEGIN:VCALENDAR',
      'VERSION:2.0',
      'PRODID:-//Loamtide//Garden plan//EN',
      'NAME:Hollow Lane',
      'X-WR-CALNAME:Hollow Lane',
      'X-WR-CALDESC:What to do in the garden\\, and when.',
      'REFRESH-INTERVAL;VALUE=DURATION:PT6H',
      'X-PUBLISHED-TTL:PT6H',
      'DESCRIPTION:What to do in the garden\\, and when.',
      'LAST-MODIFIED:20270402T051000Z',
      'COLOR:olivedrab',
      'BEGIN:VEVENT',
      'UID:b1946ac9-2492-5234-8b22-6235b4d2a1f0@loamtide',
      'SEQUENCE:0',
      'DTSTAMP:20270301T060000Z',
      'DTSTART;VALUE=DATE:20270823',
      'DTEND;VALUE=DATE:20270824',
      'X-MICROSOFT-CDO-ALLDAYEVENT:TRUE',
      'X-MICROSOFT-MSNCALENDAR-ALLDAYEVENT:TRUE',
      'SUMMARY:Sow winter rye in Long bed',
      'TRANSP:TRANSPARENT',
      'DESCRIPTION:Rake level.\\nSow 120 g over the bed.',
      'CATEGORIES:Cover cropping',
      'CREATED:20270301T060000Z',
      'LAST-MODIFIED:20270301T060000Z',
      'END:VEVENT',
      'END:VCALENDAR',
      '',
    ]);
  });

  it('ends every line with CRLF, the last one too, and has no stray CR or LF (RFC 5545, 3.1)', () => {
    expect(renderFeed(exampleFeed(varied))).toMatch(/^([^\r\n]+\r\n)+$/);
  });

  it('keeps every line to 75 octets and cuts no character in two (RFC 5545, 3.1)', () => {
    const body = Buffer.from(renderFeed(exampleFeed(varied, { calendarName: 'Långbädd 🌱 '.repeat(12) })));
    const whole = new TextDecoder('utf-8', { fatal: true });
    for (let start = 0; start < body.length; ) {
      const end = body.indexOf('\r\n', start);
      expect(end - start).toBeLessThanOrEqual(75);
      expect(() => whole.decode(body.subarray(start, end))).not.toThrow();
      start = end + 2;
    }
  });

  it('gives the same octets every time', () => {
    expect(renderFeed(exampleFeed(varied))).toBe(renderFeed(exampleFeed(structuredClone(varied))));
  });

  it('has neither METHOD, nor a UID, SOURCE or zone of the calendar itself', () => {
    const head = renderFeed(exampleFeed(varied)).split('BEGIN:VEVENT')[0] ?? '';
    expect(head).not.toMatch(/^(METHOD|UID|SOURCE|URL|TIMEZONE-ID|X-WR-TIMEZONE|BEGIN:VTIMEZONE)/m);
    expect(renderFeed(exampleFeed(varied))).not.toContain('TZID');
  });

  it('shows the notice alone when there is nothing else to show', () => {
    const body = renderFeed(exampleFeed([]));
    expect(linesOf(body).filter((line) => line === 'BEGIN:VEVENT')).toHaveLength(1);
    expect(valueIn(body, 'SUMMARY')).toBe('Nothing to do for now');
    expect(renderFeed(exampleFeed(varied))).not.toContain('Nothing to do for now');
  });
});

describe('renderFeed, days (RFC 5545, 3.6.1 and 3.8.2.2)', () => {
  const daysOf = (day: string, until?: string) => {
    const body = renderFeed(exampleFeed([exampleEvent(until === undefined ? { day } : { day, until })]));
    return [valueIn(body, 'DTSTART;VALUE=DATE'), valueIn(body, 'DTEND;VALUE=DATE')];
  };

  it('ends an event on the first day that is no longer part of it', () => {
    expect(daysOf('2027-08-20', '2027-09-05')).toEqual(['20270820', '20270906']);
  });

  it('passes over a leap day, into one and out of one', () => {
    expect(daysOf('2028-02-28')).toEqual(['20280228', '20280229']);
    expect(daysOf('2028-02-29')).toEqual(['20280229', '20280301']);
    expect(daysOf('2027-02-28')).toEqual(['20270228', '20270301']);
  });

  it('passes over New Year', () => {
    expect(daysOf('2027-12-31')).toEqual(['20271231', '20280101']);
    expect(daysOf('2027-12-30', '2028-01-02')).toEqual(['20271230', '20280103']);
  });

  it('keeps days on which clocks change in one place or another', () => {
    expect(daysOf('2027-03-14')).toEqual(['20270314', '20270315']);
    expect(daysOf('2027-04-04')).toEqual(['20270404', '20270405']);
  });
});

describe('renderFeed, texts', () => {
  const hard = 'a,b;c\\d\ne "f": g';
  const escaped = 'a\\,b\\;c\\\\d\\ne "f": g';

  it('escapes NAME and X-WR-CALNAME (RFC 5545, 3.3.11)', () => {
    const body = renderFeed(exampleFeed([exampleEvent()], { calendarName: hard }));
    expect(valueIn(body, 'NAME')).toBe(escaped);
    expect(valueIn(body, 'X-WR-CALNAME')).toBe(escaped);
  });

  it('escapes SUMMARY, DESCRIPTION and CATEGORIES', () => {
    const event = exampleEvent({ title: hard, description: hard, categories: [hard, 'plain'] });
    const lines = linesOf(renderFeed(exampleFeed([event])));
    expect(lines).toContain(`SUMMARY:${escaped}`);
    expect(lines).toContain(`DESCRIPTION:${escaped}`);
    expect(lines).toContain(`CATEGORIES:${escaped},plain`);
  });

  it('writes the description of the calendar under both its names, alike', () => {
    const head = linesOf(renderFeed(exampleFeed([exampleEvent()], { description: hard })));
    expect(head.filter((line) => line.endsWith(`:${escaped}`))).toEqual([
      `X-WR-CALDESC:${escaped}`,
      `DESCRIPTION:${escaped}`,
    ]);
  });

  it('does not escape a URL (RFC 5545, 3.3.13), and makes an odd one harmless', () => {
    const urlOf = (url: string) => valueIn(renderFeed(exampleFeed([exampleEvent({ url })])), 'URL;VALUE=URI');
    expect(urlOf('https://g.example/tasks?keys=a,b;c')).toBe('https://g.example/tasks?keys=a,b;c');
    expect(urlOf('https://g.example/a\\b\r\nX-EVIL:1')).toBe('https://g.example/a/bX-EVIL:1');
  });

  it('lets no UID break out of its line', () => {
    expect(valueIn(renderFeed(exampleFeed([exampleEvent({ uid: 'a\r\nX-EVIL:1' })])), 'UID')).toBe('a\\nX-EVIL:1');
  });
});

describe('renderFeed, revisions (RFC 5545, 3.8.7)', () => {
  it('takes SEQUENCE, DTSTAMP, LAST-MODIFIED and CREATED from the event', () => {
    const event = exampleEvent({
      sequence: 4,
      createdAt: '2027-01-05T03:00:00.000Z',
      changedAt: '2027-05-06T07:08:09.999Z',
    });
    const inEvent = renderFeed(exampleFeed([event])).split('BEGIN:VEVENT')[1] ?? '';
    expect(valueIn(inEvent, 'SEQUENCE')).toBe('4');
    expect(valueIn(inEvent, 'DTSTAMP')).toBe('20270506T070809Z');
    expect(valueIn(inEvent, 'LAST-MODIFIED')).toBe('20270506T070809Z');
    expect(valueIn(inEvent, 'CREATED')).toBe('20270105T030000Z');
  });

  it('changes only the lines of the event that changed', () => {
    const before = linesOf(renderFeed(exampleFeed(varied)));
    const [first, ...others] = varied;
    const moved = { ...first, day: '2027-08-25', sequence: 1, changedAt: '2027-08-01T00:00:00.000Z' };
    const after = linesOf(renderFeed(exampleFeed([exampleEvent(moved), ...others])));
    const changed = after.filter((line, at) => line !== before[at]).map((line) => line.split(/[;:]/)[0]);
    expect(changed).toEqual(['SEQUENCE', 'DTSTAMP', 'DTSTART', 'DTEND', 'LAST-MODIFIED']);
  });

  it('writes the hours between two looks as a duration (RFC 5545, 3.3.6)', () => {
    for (const [refreshHours, duration] of [
      [1, 'PT1H'],
      [24, 'P1D'],
      [30, 'P1DT6H'],
    ] as const) {
      const body = renderFeed(exampleFeed([exampleEvent()], { refreshHours }));
      expect(valueIn(body, 'REFRESH-INTERVAL;VALUE=DURATION')).toBe(duration);
      expect(valueIn(body, 'X-PUBLISHED-TTL')).toBe(duration);
    }
  });
});
