import { describe, expect, it } from 'vitest';
import { feedEventsOf, gardenFeed, noticeEvent } from '../../src/calendar/feed-events.ts';
import { feedOf } from '../../src/calendar/render-feed.ts';
import { feedUid } from '../../src/calendar/uid.ts';
import type { UnitSystem } from '../../src/measures/units.ts';
import { entryText } from '../../src/schedule/entry-text.ts';
import type { Plan, TaskState } from '../../src/schedule/plan.ts';
import { type ExampleEntry, examplePlan } from './example-plan.ts';
import { seenByIcalJs, seenByNodeIcal } from './read-feed.ts';

const today = '2027-08-23';

const frame = {
  calendarName: 'Hollow Lane',
  description: 'What to do in the garden, and when.',
  notice: { title: 'Nothing to do for now', description: 'The next work shows here.' },
};

/** The days that show of entries in one state. */
function shownDays(state: TaskState, days: string[], ifMissed: ExampleEntry['ifMissed'] = 'still do'): string[] {
  const plan = examplePlan(today, ...days.map((day) => ({ lotId: `lot-${day}`, day, state, ifMissed })));
  return feedEventsOf(plan, 'metric').map((event) => event.day);
}

describe('feedEventsOf, which entries', () => {
  it('shows open work from a week back to 366 days ahead', () => {
    const days = ['2027-08-15', '2027-08-16', '2027-08-23', '2028-08-23', '2028-08-24'];
    expect(shownDays('open', days)).toEqual(['2027-08-16', '2027-08-23', '2028-08-23']);
  });

  it('shows finished work for 30 days', () => {
    expect(shownDays('done', ['2027-07-23', '2027-07-24', '2027-08-23'])).toEqual(['2027-07-24', '2027-08-23']);
  });

  it('drops skipped work', () => expect(shownDays('skipped', [today])).toEqual([]));

  it('shows missed work only where it should still be done, and for a week', () => {
    expect(shownDays('lapsed', ['2027-08-15', '2027-08-16'])).toEqual(['2027-08-16']);
    expect(shownDays('lapsed', [today], 'drop')).toEqual([]);
    expect(shownDays('lapsed', [today], 'replace')).toEqual([]);
  });

  it('lets the job decide about missed work, not the checks that ride along', () => {
    const plan = examplePlan(today, { lotId: 'a', day: today, state: 'lapsed', ifMissed: 'drop' });
    const [job] = plan.tasks;
    const [entry] = plan.entries;
    if (!job || !entry) throw new Error('the example has one entry of one task');
    const check = { ...job, key: 'check', weight: 'check', ifMissed: 'still do' } as const;
    const withCheck = { ...plan, tasks: [check, job], entries: [{ ...entry, keys: [job.key, check.key] }] };
    expect(feedEventsOf(withCheck, 'metric')).toEqual([]);
  });
});

describe('feedEventsOf, what of them', () => {
  const plan = examplePlan(today, { lotId: 'b', day: '2027-08-24' }, { lotId: 'a', day: today, state: 'done' });

  it('takes identity, day and revision from the entry', () => {
    expect(feedEventsOf(plan, 'metric')[1]).toMatchObject({
      uid: feedUid('hollow-lane', 'b'),
      day: '2027-08-24',
      sequence: 2,
      createdAt: '2027-01-02T05:00:00.000Z',
      changedAt: '2027-04-01T05:00:00.000Z',
    });
  });

  it('takes its texts from the plan, in the units of the gardener', () => {
    for (const units of ['metric', 'us'] as const) {
      const texts = plan.entries.map((entry) => entryText(plan, entry, units)).reverse();
      const events = feedEventsOf(plan, units);
      expect(events.map((event) => event.description)).toEqual(texts.map((text) => text.description));
      expect(events.map((event) => event.categories)).toEqual(texts.map((text) => text.categories));
    }
  });

  it('marks finished work, and only that, in its title', () => {
    const titles = feedEventsOf(plan, 'metric').map((event) => event.title);
    expect(titles.map((title) => title.startsWith('Done: '))).toEqual([true, false]);
  });

  it('puts events by day, whatever the order of the entries', () => {
    const turned = { ...plan, entries: [...plan.entries].reverse() };
    expect(feedEventsOf(turned, 'metric')).toEqual(feedEventsOf(plan, 'metric'));
    expect(feedEventsOf(plan, 'metric').map((event) => event.day)).toEqual([today, '2027-08-24']);
  });

  it('links to a page only where there is one', () => {
    expect(feedEventsOf(plan, 'metric')[0]).not.toHaveProperty('url');
    const pageOf = ({ lotId }: { lotId: string }) => `https://g.example/${lotId}`;
    const urls = feedEventsOf(plan, 'metric', { pageOf }).map((event) => event.url);
    expect(urls).toEqual(['https://g.example/a', 'https://g.example/b']);
  });
});

describe('noticeEvent', () => {
  const noticeOn = (day: string) => noticeEvent('hollow-lane', day, frame.notice);

  it('keeps its name and rises in revision as the days pass', () => {
    const [before, after] = [noticeOn('2027-12-31'), noticeOn('2028-01-01')];
    expect(after.uid).toBe(before.uid);
    expect(after.sequence).toBe(before.sequence + 1);
    expect(after.changedAt).toBe('2028-01-01T00:00:00.000Z');
  });

  it('has a name that no entry has', () => {
    const uids = feedEventsOf(examplePlan(today, { lotId: 'notice', day: today }), 'metric').map((event) => event.uid);
    expect(uids).not.toContain(noticeOn(today).uid);
  });
});

describe('gardenFeed', () => {
  const lastModified = '2027-08-23T04:00:00.000Z';
  const written = (plan: Plan, units: UnitSystem) => {
    const { head, eventTexts } = gardenFeed(plan, units, frame);
    return feedOf({ ...head, lastModified }, eventTexts);
  };

  it('is never empty: with no entries it holds the notice, today', () => {
    const body = written(examplePlan(today), 'metric');
    expect(seenByIcalJs(body)).toMatchObject([
      { day: today, title: frame.notice.title, description: frame.notice.description },
    ]);
  });

  it('reads back, in two parsers, entry by entry as the plan has it', () => {
    const plan = examplePlan(
      today,
      { lotId: 'a', day: today },
      { lotId: 'b', day: '2028-02-29' },
      { lotId: 'c', day: '2027-12-31' },
    );
    const body = written(plan, 'us');
    const meant = feedEventsOf(plan, 'us').map(({ day, title, description, sequence }) => ({
      day,
      title,
      description,
      sequence,
    }));
    expect(seenByIcalJs(body)).toMatchObject(meant);
    expect(seenByNodeIcal(body)).toMatchObject(meant);
  });

  it('holds nothing like a token or the address of a feed, and no id of the garden', () => {
    const body = written(examplePlan(today, { lotId: 'a', day: today }), 'us');
    expect(body).not.toMatch(/hollow-lane|\/feed\/|[A-Za-z0-9_-]{43}/);
  });
});
