import ICAL from 'ical.js';
import nodeIcal from 'node-ical';
import { describe, expect, it } from 'vitest';
import type { FeedEvent } from '../../src/calendar/render-feed.ts';
import { feedOf, renderEvent } from '../../src/calendar/render-feed.ts';
import { renderTodo } from '../../src/calendar/render-todo.ts';
import { todoUid } from '../../src/calendar/uid.ts';
import { exampleEvent, exampleFeed } from './example-feed.ts';

const hard = 'Beds; north, A\\B\n“quoted” 🌱 \u202Eabc\r\nEND:VTODO\u0007';

function todoOf(more: Partial<FeedEvent>): ICAL.Component {
  const body = feedOf(exampleFeed([]), [renderTodo(exampleEvent(more))]);
  const [todo, ...others] = new ICAL.Component(ICAL.parse(body)).getAllSubcomponents('vtodo');
  if (todo === undefined || others.length > 0) throw new Error('there is not one to-do');
  return todo;
}

const value = (todo: ICAL.Component, name: string) => todo.getFirstPropertyValue(name)?.toString();

describe('a to-do (RFC 5545, 3.6.2)', () => {
  it('is due on its day and still to be done', () => {
    const text = renderTodo(exampleEvent({ day: '2028-02-29' }));
    expect(text).toContain('\r\nDUE;VALUE=DATE:20280229\r\n');
    expect(text).toContain('\r\nSTATUS:NEEDS-ACTION\r\n');
    expect(text).not.toMatch(/DTSTART|DURATION|COMPLETED/);
  });

  it('of work with an hour is due at the end of it', () => {
    const todo = todoOf({ day: '2027-12-31', at: { from: '2027-12-31T23:45:00.000Z', minutes: 30 } });
    expect(value(todo, 'due')).toBe('2028-01-01T00:15:00Z');
  });

  it('that is done is ticked on its day, and its title says nothing of it', () => {
    const todo = todoOf({ day: '2027-04-18', title: 'Turn the pile', done: true });
    expect(['status', 'percent-complete', 'completed', 'summary'].map((name) => value(todo, name))).toEqual([
      'COMPLETED',
      '100',
      '2027-04-18T12:00:00Z',
      'Turn the pile',
    ]);
  });

  it('has the revision and the moments of its event under another name', () => {
    const event = exampleEvent({ sequence: 7 });
    const todo = todoOf({ sequence: 7 });
    expect(value(todo, 'sequence')).toBe('7');
    expect(value(todo, 'uid')).toBe(todoUid(event.uid));
    expect(value(todo, 'uid')).not.toBe(event.uid);
    expect(value(todo, 'dtstamp')).toBe(value(todo, 'last-modified'));
    expect(value(todo, 'dtstamp')).toBe(event.changedAt.replace('.000', ''));
  });

  it('keeps hard texts inside their properties, for two readers', () => {
    const body = feedOf(exampleFeed([]), [
      renderTodo(exampleEvent({ title: hard, description: hard, categories: [hard] })),
    ]);
    const meant = hard.replace('\r\n', '\n').replace('\u0007', '');
    const todo = new ICAL.Component(ICAL.parse(body)).getFirstSubcomponent('vtodo');
    expect(todo?.getFirstPropertyValue('summary')).toBe(meant);
    expect(todo?.getFirstProperty('categories')?.getValues()).toEqual([meant]);
    const [seen] = Object.values(nodeIcal.sync.parseICS(body)).filter((part) => part?.type === 'VTODO');
    expect(seen).toMatchObject({ summary: meant, description: meant });
  });

  it('has lines of at most 75 octets, each ended with CRLF', () => {
    const text = renderTodo(exampleEvent({ title: 'Långbädd 🌱 '.repeat(30) }));
    expect(text).toMatch(/^([^\r\n]+\r\n)+$/);
    for (const line of text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    expect(text).not.toContain('\uFFFD');
  });
});

describe('a reminder (RFC 5545, 3.6.6)', () => {
  const alarm = '2027-04-18T00:00:00.000Z';
  const expected = ['ACTION:DISPLAY', 'TRIGGER;VALUE=DATE-TIME:20270418T000000Z', 'DESCRIPTION:Turn\\, water'];

  it('is written alike in events and in to-dos: displayed, at a moment, with words', () => {
    const event = exampleEvent({ alarm, title: 'Turn, water' });
    for (const text of [feedOf(exampleFeed([]), [renderTodo(event)]), feedWith(event)]) {
      const inside = /BEGIN:VALARM\r\n([\s\S]*?)\r\nEND:VALARM/.exec(text)?.[1]?.split('\r\n') ?? [];
      expect(inside.sort()).toEqual([...expected].sort());
    }
  });

  it('is not there unless it is asked for', () => {
    expect(feedWith(exampleEvent()) + renderTodo(exampleEvent())).not.toContain('VALARM');
  });
});

function feedWith(event: FeedEvent): string {
  return feedOf(exampleFeed([]), [renderEvent(event)]);
}
