import fc from 'fast-check';
import ICAL from 'ical.js';
import nodeIcal from 'node-ical';
import { describe, expect, it } from 'vitest';
import { closedFeed } from '../../src/calendar/closed-feed.ts';
import { feedOf, renderFeed } from '../../src/calendar/render-feed.ts';
import { renderTodo } from '../../src/calendar/render-todo.ts';
import { cleanText, cleanTexts } from '../../src/calendar/repair.ts';
import { runs } from '../runs.ts';
import { exampleEvent, exampleFeed } from './example-feed.ts';
import { propertyNames, seenByIcalJs, seenByNodeIcal } from './read-feed.ts';

/** Bits that a careless writer or reader would trip over, and ordinary ones between them. */
const bits = fc.constantFrom(
  ...[
    '\r',
    '\n',
    '\r\n',
    '\r\n ',
    '"',
    ',',
    ';',
    ':',
    '\\',
    '\\n',
    '\\,',
    '\u0000',
    '\u0008',
    '\u001b',
    '\u007f',
    '\u0085',
  ],
  ...[
    '👩‍🌾',
    '🌱',
    '\uD83C',
    '\u202Eelbat\u202C',
    '\u2067سماد\u2069',
    'שלום',
    'e\u0301',
    '堆肥',
    'bed ',
    'Sow 120 g. ',
  ],
  ...['\r\nEND:VEVENT\r\nBEGIN:VEVENT\r\nUID:stolen\r\n', '\r\nATTENDEE:x\r\n', '\nEND:VCALENDAR\n', 'X-A;B="c":d'],
);

/** Ten thousand characters of such bits. */
const longText = fc.array(bits, { minLength: 1, maxLength: 60 }).map((some) => {
  const once = some.join('');
  return once.repeat(Math.ceil(10_000 / once.length)).slice(0, 10_000);
});

const usualNames = (propertyNames(renderFeed(exampleFeed([exampleEvent()])))[0] ?? []).sort();

describe('a text of control characters alone', () => {
  const event = exampleEvent({
    title: '\u0007',
    description: '\u0000\u001b',
    categories: ['\u007f', 'Mulching', '\u0008'],
  });

  it('leaves no trace, and the rest of the event is written', () => {
    expect(seenByIcalJs(renderFeed(exampleFeed([event])))).toMatchObject([
      { uid: event.uid, day: event.day, title: '', description: '', categories: ['Mulching'] },
    ]);
    expect(renderTodo(event)).toContain('CATEGORIES:Mulching\r\n');
  });

  it('does not make a list of nothing', () => {
    const bare = exampleEvent({ categories: ['\u0007'] });
    expect(renderFeed(exampleFeed([bare]))).not.toContain('CATEGORIES');
    expect(renderTodo(bare)).not.toContain('CATEGORIES');
  });
});

describe('texts of ten thousand characters', () => {
  it('stay inside their own properties in two parsers, wherever they stand', () => {
    fc.assert(
      fc.property(longText, longText, (a, b) => {
        const event = exampleEvent({ title: a, description: b, categories: [b] });
        const body = renderFeed(exampleFeed([event], { calendarName: b, description: a }));
        expect(seenByIcalJs(body)).toMatchObject([
          { uid: event.uid, title: cleanText(a), description: cleanText(b), categories: cleanTexts([b]) },
        ]);
        const [names = []] = propertyNames(body);
        // A text of control characters alone has nothing left to write, so its property may be missing.
        expect(usualNames).toEqual(expect.arrayContaining(names));
        expect(names).toEqual([...new Set(names)]);
        expect(seenByNodeIcal(body)).toMatchObject([
          { uid: event.uid, day: event.day, lastDay: event.day, sequence: 0 },
        ]);
        expect(Math.max(...body.split('\r\n').map((line) => Buffer.byteLength(line)))).toBeLessThanOrEqual(75);
      }),
      { numRuns: runs(15, 300) },
    );
  });

  it('stay inside their own properties in a to-do', () => {
    const todoNames = 'categories created description dtstamp due last-modified sequence status summary uid'.split(' ');
    fc.assert(
      fc.property(longText, longText, (a, b) => {
        const body = feedOf(exampleFeed([]), [renderTodo(exampleEvent({ title: a, description: b, categories: [b] }))]);
        const todos = new ICAL.Component(ICAL.parse(body)).getAllSubcomponents();
        expect(todos.map(({ name }) => name)).toEqual(['vtodo']);
        expect(todos[0]?.getFirstPropertyValue('summary')).toBe(cleanText(a));
        expect(todos[0]?.getFirstPropertyValue('description')).toBe(cleanText(b));
        expect(todos[0]?.getAllProperties().map(({ name }) => name)).toSatisfy((names: string[]) =>
          names.every((name, index) => todoNames.includes(name) && names.indexOf(name) === index),
        );
        const seen = Object.values(nodeIcal.sync.parseICS(body)).map((part) => part?.type);
        expect(seen.filter((type) => type !== undefined && type !== 'VCALENDAR')).toEqual(['VTODO']);
      }),
      { numRuns: runs(8, 150) },
    );
  });

  it('stay inside the notice of a closed address', () => {
    fc.assert(
      fc.property(longText, fc.constantFrom('revoked', 'moved', 'put away'), (label, why) => {
        const closed = { gardenId: 'plot', feedId: 'feed-1', label, closedAt: '2027-04-20T13:00:00.000Z', why };
        const body = renderFeed(closedFeed(closed));
        for (const read of [seenByIcalJs, seenByNodeIcal]) {
          expect(read(body)).toMatchObject([{ day: '2027-04-19', title: 'This calendar is no longer kept' }]);
        }
      }),
      { numRuns: runs(8, 150) },
    );
  });
});
