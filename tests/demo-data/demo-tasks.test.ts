import { describe, expect, it } from 'vitest';
import type { Stand } from '../../src/garden/garden.ts';
import { addDays, type Day, dayParts, daysBetween } from '../../src/measures/days.ts';
import { draftsOf } from '../../src/practices/catalogue.ts';
import { makePlan } from '../../src/schedule/reconcile.ts';
import { ANCHORS, demoClimate, demoGarden } from './demo-season.ts';

/** Days looked ahead for something to do. */
const SOON_DAYS = 14;

function draftsOn(anchor: Day) {
  return draftsOf({ garden: demoGarden(anchor), climate: demoClimate, today: anchor, until: addDays(anchor, 396) });
}

function planOn(anchor: Day) {
  const [garden, drafts] = [demoGarden(anchor), draftsOn(anchor)];
  return makePlan({ garden, drafts, today: anchor, now: `${anchor}T12:00:00.000Z`, factsVersion: 1 });
}

/** December to February, when the ground of the demo garden is frozen. */
function inDeepWinter(day: Day): boolean {
  const { month } = dayParts(day);
  return month === 12 || month <= 2;
}

describe.each(ANCHORS)('the demo garden on %s', (anchor) => {
  const plan = planOn(anchor);
  const soon = plan.tasks.filter(({ day, state }) => state === 'open' && daysBetween(anchor, day) <= SOON_DAYS);

  it('has something to do in the next two weeks', () => {
    expect(soon.length).toBeGreaterThanOrEqual(inDeepWinter(anchor) ? 1 : 3);
  });

  it('has work in its beds within two weeks while the ground is open, not only in its bins', () => {
    const inBeds = soon.filter(({ practice }) => practice !== 'composting');
    if (!inDeepWinter(anchor)) expect(inBeds.map(({ title }) => title)).not.toEqual([]);
  });

  it('looks most of a year ahead', () => {
    expect(plan.tasks.some(({ day }) => daysBetween(anchor, day) > 300)).toBe(true);
  });

  it("starts with nothing missed and nothing in each other's way", () => {
    expect(plan.tasks.filter(({ state }) => state === 'lapsed').map(({ title }) => title)).toEqual([]);
    expect(plan.clashes).toEqual([]);
  });

  it('has tasks of every practice', () => {
    const practices = new Set(plan.tasks.map(({ practice }) => practice));
    expect([...practices].sort()).toEqual(
      expect.arrayContaining(['composting', 'cover-cropping', 'rotation', 'topdressing']),
    );
  });
});

describe('what the demo household did', () => {
  /** Windows given in January, by the key of their task. */
  const windows = new Map(draftsOn('2027-01-15').map(({ key, window }) => [key, window]));
  const { stands } = demoGarden('2027-12-31');

  const happened = (keyOf: (id: string) => string, dayOf: (stand: Stand) => Day | undefined) =>
    stands.flatMap((stand) => {
      const [day, window] = [dayOf(stand), windows.get(keyOf(stand.id))];
      return day === undefined || window === undefined ? [] : [{ id: stand.id, day, window }];
    });

  it.each([
    [
      'sowing',
      9,
      happened(
        (id) => `cover-sow/stand:${id}`,
        ({ sow }) => sow.day,
      ),
    ],
    [
      'cut',
      6,
      happened(
        (id) => `cover-cut/stand:${id}`,
        ({ cutOn }) => cutOn,
      ),
    ],
    [
      'look after winter',
      4,
      happened(
        (id) => `cover-dead-check/stand:${id}`,
        ({ deadOn }) => deadOn,
      ),
    ],
  ] as const)('lies inside the windows it would have been given: each %s', (_, atLeast, events) => {
    expect(events.length).toBeGreaterThanOrEqual(atLeast);
    for (const { id, day, window } of events) {
      expect(day >= window.earliest, `${id}: ${day} from ${window.earliest}`).toBe(true);
      expect(day <= window.latest, `${id}: ${day} to ${window.latest}`).toBe(true);
    }
  });
});
