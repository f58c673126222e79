import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FeedEvent, renderFeed } from '../../src/calendar/render-feed.ts';
import { cleanText } from '../../src/calendar/repair.ts';
import { runs } from '../runs.ts';
import { exampleEvent, exampleFeed, varied } from './example-feed.ts';
import { propertyNames, type SeenEvent, seenByIcalJs, seenByNodeIcal } from './read-feed.ts';

/** What a calendar app should see of an event. */
function meant(event: FeedEvent): SeenEvent {
  return {
    uid: event.uid,
    day: event.day,
    lastDay: event.until ?? event.day,
    title: event.title,
    description: event.description,
    categories: [...event.categories],
    sequence: event.sequence,
    changed: `${event.changedAt.slice(0, 19)}Z`,
  };
}

/** Text that a careless writer or reader would trip over. */
const hardText = fc
  .array(
    fc.oneof(
      fc.constantFrom('\r\n', '\r', '\n', '\r\n ', ',', ';', ':', '\\', '\\n', '"', '\t', '\u0000', '\u001b', '\u007f'),
      fc.constantFrom(
        '\u2028',
        '\u0085',
        '\uD83C',
        '👩‍🌾',
        '\u202Eleft',
        'سماد',
        'e\u0301',
        '⟦',
        'TZID="x"',
        'x'.repeat(90),
      ),
      fc.constantFrom('\r\nEND:VEVENT\r\n', '\nBEGIN:VEVENT\n', '\r\nUID:stolen\r\n', 'END:VCALENDAR\r\n'),
      fc.string({ unit: 'grapheme', maxLength: 12 }),
      fc.string({ unit: 'binary', maxLength: 6 }),
    ),
    { maxLength: 14 },
  )
  .map((parts) => parts.join(''));

const textsOfEvents = fc.array(fc.tuple(hardText, hardText), { minLength: 1, maxLength: 4 });

function eventsWith(texts: [string, string][]): FeedEvent[] {
  return texts.map(([title, description], at) => exampleEvent({ uid: `${at}@loamtide`, title, description }));
}

describe('the feed read back', () => {
  it('is, to ical.js, entry by entry what was put in', () => {
    expect(seenByIcalJs(renderFeed(exampleFeed(varied)))).toEqual(varied.map(meant));
  });

  it('is, to node-ical, entry by entry what was put in', () => {
    // node-ical parts categories at escaped commas too, so they are left to ical.js.
    const but = (seen: SeenEvent[]) => seen.map(({ categories: _, ...rest }) => rest);
    expect(but(seenByNodeIcal(renderFeed(exampleFeed(varied))))).toEqual(but(varied.map(meant)));
  });

  it('keeps every text, whatever it holds, inside its own property for ical.js', () => {
    fc.assert(
      fc.property(textsOfEvents, hardText, (texts, calendarName) => {
        const events = eventsWith(texts);
        const body = renderFeed(exampleFeed(events, { calendarName }));
        const cleaned = events.map((event) =>
          meant({ ...event, title: cleanText(event.title), description: cleanText(event.description) }),
        );
        expect(seenByIcalJs(body)).toEqual(cleaned);
        const usual = propertyNames(renderFeed(exampleFeed([exampleEvent()])))[0] ?? [];
        for (const names of propertyNames(body)) {
          expect(names.filter((name) => name !== 'description')).toEqual(
            usual.filter((name) => name !== 'description'),
          );
        }
      }),
      { numRuns: runs(100, 3000) },
    );
  });

  it('keeps every text, whatever it holds, inside its own event for node-ical', () => {
    fc.assert(
      fc.property(textsOfEvents, hardText, (texts, calendarName) => {
        const events = eventsWith(texts);
        const seen = seenByNodeIcal(renderFeed(exampleFeed(events, { calendarName })));
        const but = (all: SeenEvent[]) => all.map(({ title: _, description: __, ...rest }) => rest);
        expect(but(seen)).toEqual(but(events.map(meant)));
      }),
      { numRuns: runs(100, 3000) },
    );
  });

  it('gives node-ical the very texts, but for those it unescapes in its own way', () => {
    // node-ical undoes \n ahead of \\, takes quotes off a quoted text, and all quotes off a line with TZID= in it.
    const kept = hardText.map((text) => text.replaceAll('\\', '').replaceAll('"', ''));
    fc.assert(
      fc.property(fc.array(fc.tuple(kept, kept), { minLength: 1, maxLength: 4 }), (texts) => {
        const seen = seenByNodeIcal(renderFeed(exampleFeed(eventsWith(texts))));
        expect(seen.map(({ title, description }) => [title, description])).toEqual(
          texts.map(([title, description]) => [cleanText(title), cleanText(description)]),
        );
      }),
      { numRuns: runs(100, 3000) },
    );
  });
});
