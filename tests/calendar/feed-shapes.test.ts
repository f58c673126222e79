import { describe, expect, it } from 'vitest';
import { feedEventsOf, gardenFeed, PLAIN_VIEW } from '../../src/calendar/feed-events.ts';
import { type FeedShape, feedShapeSchema, PLAIN_SHAPE, sameShape } from '../../src/calendar/feed-shape.ts';
import { feedOf } from '../../src/calendar/render-feed.ts';
import { shownEntries } from '../../src/calendar/shown-entries.ts';
import type { Member } from '../../src/garden/household.ts';
import { addDays } from '../../src/measures/days.ts';
import type { Plan, PlannedTask } from '../../src/schedule/plan.ts';
import { type ExampleEntry, examplePlan } from './example-plan.ts';
import { seenByIcalJs } from './read-feed.ts';

const today = '2027-08-23';
const CHICAGO = 'America/Chicago';

function events(plan: Plan, shape: Partial<FeedShape>, revision = 0, timeZone = CHICAGO) {
  const revisedAt = '2027-08-22T10:00:00.000Z';
  const revised = revision === 0 ? { revision } : { revision, revisedAt };
  return feedEventsOf(plan, 'metric', {
    view: { feedId: 'feed-1', shape: { ...PLAIN_SHAPE, ...shape }, timeZone, ...revised },
  });
}

function days(shape: Partial<FeedShape>, ...entries: ExampleEntry[]): string[] {
  return events(examplePlan(today, ...entries), shape).map(({ day }) => day);
}

describe('a shape', () => {
  it('left as it comes shows a feed as it was before there were shapes', () => {
    expect(PLAIN_SHAPE).toEqual({
      practices: [],
      beds: [],
      alarm: null,
      daysAhead: 366,
      daysBack: 30,
      by: 'job',
      todos: false,
      done: true,
    });
  });

  it('is the same in whatever order its filters are named', () => {
    const one = { ...PLAIN_SHAPE, beds: ['a', 'b'], alarm: { when: 'evening', hour: 19 } as const };
    expect(sameShape(one, { ...one, beds: ['b', 'a'], alarm: { hour: 19, when: 'evening' } })).toBe(true);
    expect(sameShape(one, { ...one, alarm: { when: 'evening', hour: 20 } })).toBe(false);
  });

  it.each([
    { alarm: { when: 'morning', hour: 19 } },
    { daysBack: 61 },
    { daysAhead: 0 },
    { beds: 'north' },
    { hue: 1 },
  ])('out of its limits is not taken: %j', (wrong) => expect(feedShapeSchema.safeParse(wrong).success).toBe(false));
});

describe('a filtered feed', () => {
  const entries = ['north', 'south'].map((lotId) => ({ lotId, day: today }));
  const plan = examplePlan(today, ...entries);

  it('of a bed shows the entries of that bed, under the names they have in every feed', () => {
    const [north] = events(plan, { beds: ['north'] });
    expect(events(plan, { beds: ['north'] })).toHaveLength(1);
    expect(events(plan, {})).toContainEqual(north);
  });

  it('of a bed shows an entry that has one of its tasks there, whole', () => {
    const [first, second] = plan.entries;
    if (!first || !second) throw new Error('the example has two entries');
    const lot = { ...plan, entries: [{ ...first, keys: [...second.keys, ...first.keys] }] };
    expect(events(lot, { beds: ['north'] })).toEqual(events(lot, {}));
    expect(events(lot, { beds: ['wall'] })).toEqual([]);
  });

  it('of practices and beds asks for both in one task', () => {
    expect(events(plan, { practices: ['cover-cropping'] })).toHaveLength(2);
    expect(events(plan, { practices: ['composting'] })).toEqual([]);
    expect(events(plan, { practices: ['cover-cropping'], beds: ['south'] })).toHaveLength(1);
  });

  it('of beds leaves out work on piles and on the garden as a whole', () => {
    const [task] = plan.tasks;
    if (!task) throw new Error('the example has tasks');
    const ofGarden = { ...task, subject: { type: 'garden', id: 'north', name: 'garden' } } as const;
    expect(events({ ...plan, tasks: [ofGarden] }, { beds: ['north'] })).toEqual([]);
  });

  it('that nothing fits holds its notice and is no empty calendar', () => {
    const frame = { calendarName: 'G', description: 'd', notice: { title: 'Nothing here', description: '' } };
    const view = { ...PLAIN_VIEW, shape: { ...PLAIN_SHAPE, beds: ['gone'], todos: true } };
    const { head, eventTexts } = gardenFeed(plan, 'metric', frame, { view });
    const body = feedOf({ ...head, lastModified: '2027-08-23T00:00:00.000Z' }, eventTexts);
    expect(seenByIcalJs(body)).toMatchObject([{ title: 'Nothing here', day: today }]);
  });
});

describe('the feed of a person', () => {
  const ofBed = (id: string, practice: PlannedTask['practice']) => ({ lotId: `${practice}-${id}`, id, practice });
  const wanted = [
    ofBed('north', 'cover-cropping'),
    ofBed('north', 'mulching'),
    ofBed('south', 'cover-cropping'),
    ofBed('pile', 'composting'),
    ofBed('garden', 'soil-readiness'),
  ];
  const bare = examplePlan(today, ...wanted.map(({ lotId }) => ({ lotId, day: today })));
  const plan: Plan = {
    ...bare,
    tasks: bare.tasks.map((task, at) => {
      const { id = '', practice = 'planting' } = wanted[at] ?? {};
      return { ...task, practice, subject: subjectOf(id) };
    }),
  };

  function subjectOf(id: string): PlannedTask['subject'] {
    if (id === 'pile') return { type: 'pile', id, name: 'Left bay', binId: 'left-bay' };
    return { type: id === 'garden' ? 'garden' : 'bed', id, name: id };
  }

  function shownTo(
    member: Omit<Member, 'id' | 'name'>,
    shape: Partial<FeedShape> = {},
    assigned: Readonly<Record<string, string>> = {},
  ): string[] {
    const members = [
      { id: 'jonas', name: 'Jonas', practices: ['planting'] as const },
      { id: 'ida', name: 'Ida', ...member },
    ];
    return shownEntries(plan, { ...PLAIN_SHAPE, person: 'Ida', ...shape }, { members, assigned }).map(
      ({ lotId }) => lotId,
    );
  }

  it('to whom nothing is laid down shows everything', () => {
    expect(shownTo({})).toEqual(wanted.map(({ lotId }) => lotId));
  });

  it('shows the practices that are theirs, on every bed', () => {
    expect(shownTo({ practices: ['cover-cropping'] })).toEqual(['cover-cropping-north', 'cover-cropping-south']);
  });

  it('who has some of the beds shows these, and piles and the garden as a whole, which belong to no bed', () => {
    expect(shownTo({ beds: ['south'] })).toEqual(['cover-cropping-south', 'composting-pile', 'soil-readiness-garden']);
  });

  it('who has some practices on some beds asks for both, and for the practice alone on a pile', () => {
    const ida = { practices: ['mulching', 'composting'], beds: ['north'] } as const;
    expect(shownTo(ida)).toEqual(['mulching-north', 'composting-pile']);
    expect(shownTo({ ...ida, beds: ['south'] })).toEqual(['composting-pile']);
  });

  it('is narrowed further by the other filters of the feed', () => {
    expect(shownTo({ practices: ['cover-cropping'] }, { beds: ['north'] })).toEqual(['cover-cropping-north']);
    expect(shownTo({ practices: ['cover-cropping'] }, { practices: ['mulching'] })).toEqual([]);
    expect(shownTo({ beds: ['south'] }, { beds: ['south'] })).toEqual(['cover-cropping-south']);
  });

  it('shows what was given to them, whatever they see to, and leaves out what was given to somebody else', () => {
    const [mulching, sowing] = [keyOn('mulching', 'north'), keyOn('cover-cropping', 'north')];
    const given = { [mulching]: 'Ida', [sowing]: 'Jonas' };
    expect(shownTo({ practices: ['cover-cropping'] }, {}, given)).toEqual(['mulching-north', 'cover-cropping-south']);
    expect(shownTo({}, {}, given)).not.toContain('cover-cropping-north');
  });

  function keyOn(practice: string, bed: string): string {
    const at = wanted.findIndex((row) => row.practice === practice && row.id === bed);
    return plan.tasks[at]?.key ?? '';
  }

  it('who has left the household is one notice and no empty calendar', () => {
    const view = {
      ...PLAIN_VIEW,
      shape: { ...PLAIN_SHAPE, person: 'Runa' },
      people: { members: [{ id: 'ida', name: 'Ida' }], assigned: {} },
    };
    const frame = { calendarName: 'G', description: 'd', notice: { title: 'Runa has left', description: '' } };
    expect(gardenFeed(plan, 'metric', frame, { view }).eventTexts).toHaveLength(1);
    const people = { members: [{ id: 'runa', name: 'Runa' }], assigned: {} };
    const mine = gardenFeed(plan, 'metric', frame, { view: { ...view, people } });
    expect(mine.eventTexts).toHaveLength(wanted.length);
  });

  it('is another shape than everybody’s, and a shape stored before there were persons stays as it is', () => {
    expect(sameShape(PLAIN_SHAPE, { ...PLAIN_SHAPE, person: 'Ida' })).toBe(false);
    expect(feedShapeSchema.parse(JSON.parse(JSON.stringify(PLAIN_SHAPE)))).toEqual(PLAIN_SHAPE);
    expect('person' in PLAIN_SHAPE).toBe(false);
  });
});

describe('how far a feed reaches', () => {
  const at = (offset: number, state: ExampleEntry['state'] = 'open') => ({
    lotId: `${state}${offset}`,
    day: addDays(today, offset),
    state,
  });

  it('ahead counts from today, the last day included', () => {
    expect(days({ daysAhead: 14 }, at(14), at(15))).toEqual([addDays(today, 14)]);
  });

  it('back counts for finished work, and never longer than a week for work that is open', () => {
    expect(days({ daysBack: 60 }, at(-60, 'done'), at(-8), at(-7))).toEqual([addDays(today, -60), addDays(today, -7)]);
    expect(days({ daysBack: 0 }, at(-1, 'done'), at(-1), at(0))).toEqual([today]);
  });

  it('leaves finished work out where that is asked for', () => {
    expect(days({ done: false }, at(-1, 'done'), at(0))).toEqual([today]);
  });
});

describe('a reminder', () => {
  const alarm = (shape: FeedShape['alarm'], day: string, timeZone: string, entry: Partial<ExampleEntry> = {}) =>
    events(examplePlan(day, { lotId: 'a', day, ...entry }), { alarm: shape }, 0, timeZone)[0]?.alarm;
  const evening = { when: 'evening', hour: 19 } as const;
  const morning = { when: 'morning', hour: 7 } as const;

  // Summer time begins in Chicago on 14 March 2027; in Auckland it ends on 4 April 2027. Zone rules: IANA.
  it.each([
    ['the evening before, in winter time', evening, '2027-03-14', CHICAGO, '2027-03-14T01:00:00.000Z'],
    ['the evening before, once clocks are put forward', evening, '2027-03-15', CHICAGO, '2027-03-15T00:00:00.000Z'],
    ['on the morning clocks are put forward', morning, '2027-03-14', CHICAGO, '2027-03-14T12:00:00.000Z'],
    [
      'on the morning clocks go back in the south',
      morning,
      '2027-04-04',
      'Pacific/Auckland',
      '2027-04-03T19:00:00.000Z',
    ],
    ['on the evening before a leap day', evening, '2028-02-29', CHICAGO, '2028-02-29T01:00:00.000Z'],
    ['on the evening before New Year', evening, '2028-01-01', CHICAGO, '2028-01-01T01:00:00.000Z'],
  ])("comes at the hour of the garden's own clock %s", (_, shape, day, zone, moment) => {
    expect(alarm(shape, day, zone)).toBe(moment);
  });

  it('is not set for finished work', () => {
    expect(alarm(evening, today, CHICAGO, { state: 'done' })).toBeUndefined();
  });

  it('comes no later than work that has its hour', () => {
    const plan = examplePlan(today, { lotId: 'a', day: today });
    const at = { from: '2027-08-23T11:30:00.000Z', minutes: 20 };
    const early = { ...plan, entries: plan.entries.map((entry) => ({ ...entry, at })) };
    expect(events(early, { alarm: morning })[0]?.alarm).toBe(at.from);
  });
});

describe('a feed whose shape was changed', () => {
  it('revises all its events, so that apps which look at nothing else take the change in', () => {
    const plan = examplePlan(today, { lotId: 'a', day: today });
    expect(events(plan, {}, 3)).toMatchObject([{ sequence: 5, changedAt: '2027-08-22T10:00:00.000Z' }]);
  });
});
