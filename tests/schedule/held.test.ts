import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Garden } from '../../src/garden/garden.ts';
import { addDays, type Day, daysBetween } from '../../src/measures/days.ts';
import type { TaskDraft } from '../../src/practices/draft.ts';
import type { SaidToday } from '../../src/schedule/held.ts';
import type { Plan } from '../../src/schedule/plan.ts';
import { runs } from '../runs.ts';
import { drawn } from './arbitrary.ts';
import { type Days, doneMark, draft, garden, planOn } from './drafts.ts';

/** In April 2027 the Wednesdays are 7, 14, 21, 28 and the Saturdays 3, 10, 17, 24. */
const APRIL: Days = ['2027-04-01', '2027-04-12', '2027-04-30'];
/** The eve and the day after it: the tenth is seven days after the third. */
const [EVE, TODAY] = ['2027-04-02', '2027-04-03'];
const a = draft('sow', 'a', APRIL);

/** The same work with another window, its preferred day among it. */
const at = (one: TaskDraft, ...[earliest, preferred, latest]: Days): TaskDraft => ({
  ...one,
  window: { earliest, preferred, latest },
});
const later = at(a, '2027-04-01', '2027-04-17', '2027-04-30');

interface Then {
  today?: Day;
  facts?: Partial<Garden>;
  said?: SaidToday;
}

/** A plan held against the one before. */
function then(published: Plan, drafts: readonly TaskDraft[], { today = TODAY, facts = {}, said }: Then = {}): Plan {
  return planOn(today, drafts, { published, garden: garden(facts), ...(said === undefined ? {} : { said }) });
}

const days = ({ tasks }: Plan): Record<string, Day> => Object.fromEntries(tasks.map(({ key, day }) => [key, day]));
const dayOf = (plan: Plan): Day | undefined => days(plan)[a.key];
const eve = planOn(EVE, [a]);

describe('work published for the next seven days', () => {
  it('stays when another day of its window would suit it better now', () => {
    expect(dayOf(eve)).toBe('2027-04-10');
    expect(dayOf(then(eve, [later]))).toBe('2027-04-10');
    expect(then(eve, [later]).changes).toEqual([]);
  });

  it('stays night after night, until it is done or its day is over', () => {
    let plan = eve;
    for (let today = TODAY; today <= '2027-04-10'; today = addDays(today, 1)) plan = then(plan, [later], { today });
    expect(dayOf(plan)).toBe('2027-04-10');
    expect(dayOf(then(plan, [later], { today: '2027-04-11' }))).toBe('2027-04-17');
  });

  it('stays over a night on which the program did not run', () => {
    expect(dayOf(then(eve, [later], { today: '2027-04-08' }))).toBe('2027-04-10');
  });

  it('moves eight days ahead, for nobody has been told yet to come', () => {
    expect(dayOf(then(planOn('2027-04-01', [a]), [later], { today: EVE }))).toBe('2027-04-17');
  });

  it('moves when its window shuts the day out, and says so', () => {
    const shut = { ...later, window: { ...later.window, earliest: '2027-04-12' } };
    const plan = then(eve, [shut]);
    expect(dayOf(plan)).toBe('2027-04-17');
    expect(plan.changes.map(({ because }) => because.map(({ rule }) => rule))).toEqual([['schedule.window']]);
  });

  it('moves when its window now closes before the day', () => {
    expect(dayOf(then(eve, [at(a, '2027-04-01', '2027-04-07', '2027-04-09')]))).toBe('2027-04-07');
  });

  it('moves when what waits for it needs it sooner', () => {
    const next = draft('cut', 'a', ['2027-04-08', '2027-04-09', '2027-04-09'], { after: [{ key: a.key, minDays: 1 }] });
    const plan = then(eve, [a, next]);
    expect([dayOf(plan), days(plan)[next.key]]).toEqual(['2027-04-07', '2027-04-09']);
    expect(plan.clashes).toEqual([]);
  });

  it('moves when nobody is at home on the day, unless nobody is on any other', () => {
    const away = [{ from: '2027-04-09', to: '2027-04-11' }];
    expect(dayOf(then(eve, [a], { facts: { away } }))).toBe('2027-04-14');
    expect(dayOf(then(eve, [later], { facts: { away: [{ from: EVE, to: '2027-04-30' }] } }))).toBe('2027-04-10');
  });

  it('moves when the household no longer works on that weekday', () => {
    const place = { ...garden().place, workDays: [1] as const };
    expect(dayOf(then(eve, [a], { facts: { place } }))).toBe('2027-04-12');
  });

  it('stays on a day that never was a work day though a work day comes into its window', () => {
    const tuesday = draft('sow', 'a', ['2027-04-06', '2027-04-06', '2027-04-06']);
    const wider = at(tuesday, '2027-04-06', '2027-04-07', '2027-04-10');
    expect(dayOf(then(planOn(EVE, [tuesday]), [wider]))).toBe('2027-04-06');
  });

  it('moves when what it waits for is late', () => {
    const wait = draft('cut', 'a', ['2027-04-01', '2027-04-02', '2027-04-30']);
    const sow = { ...a, after: [{ key: wait.key, minDays: 3 }] };
    const before = planOn(EVE, [wait, sow]);
    expect(days(before)).toEqual({ [wait.key]: '2027-04-03', [sow.key]: '2027-04-10' });
    const late = then(then(before, [wait, sow]), [wait, sow], { today: '2027-04-08' });
    expect(days(late)).toEqual({ [wait.key]: '2027-04-10', [sow.key]: '2027-04-14' });
    expect(late.changes.find(({ key }) => key === sow.key)?.because[0]?.rule).toBe('schedule.follows');
  });

  it('goes where it is pinned, and where it belongs once it is not', () => {
    const pinned = then(eve, [later], { facts: { pins: { [a.key]: '2027-04-13' } } });
    expect(dayOf(pinned)).toBe('2027-04-13');
    expect(dayOf(then(pinned, [later], { today: '2027-04-07' }))).toBe('2027-04-17');
  });

  it('stays on its late day, once its window has closed', () => {
    const lapsed = draft('sow', 'a', ['2027-03-01', '2027-03-02', '2027-03-31']);
    const full = ['m', 'n', 'o', 'p', 'q'].map((job) => doneMark(draft(job, 'b', APRIL), '2027-04-05'));
    const late = planOn('2027-04-04', [lapsed]);
    expect(dayOf(late)).toBe('2027-04-07');
    expect(dayOf(then(late, [lapsed], { today: '2027-04-05', facts: { done: full } }))).toBe('2027-04-07');
  });
});

describe('later work', () => {
  const first = planOn('2027-04-01', [draft('cut', 'a', ['2027-04-01', '2027-04-20', '2027-04-30'])]);
  const cut = (preferred: Day, earliest = '2027-04-01') => draft('cut', 'a', [earliest, preferred, '2027-04-30']);
  const onEve = (one: TaskDraft, published = first, today = EVE) => days(then(published, [one], { today }))[one.key];

  it('stays while the day that suits it best has shifted by three days at most', () => {
    expect(days(first)).toEqual({ 'cut/bed:a': '2027-04-21' });
    expect(['2027-04-17', '2027-04-23', '2027-04-24'].map((day) => onEve(cut(day)))).toEqual([
      '2027-04-21',
      '2027-04-21',
      '2027-04-24',
    ]);
  });

  it('goes with it once it has wandered further, a day a night', () => {
    let plan = first;
    const stood = ['2027-04-21', '2027-04-22', '2027-04-23', '2027-04-24', '2027-04-25'].map((preferred, night) => {
      plan = then(plan, [cut(preferred)], { today: addDays(EVE, night) });
      return days(plan)['cut/bed:a'];
    });
    expect(stood).toEqual(['2027-04-21', '2027-04-21', '2027-04-21', '2027-04-24', '2027-04-24']);
  });

  it('leaves a week that has come to hold more than its hours, where it would go elsewhere by itself', () => {
    const long = { effortMinutes: 120, ifMissed: 'drop' } as const;
    const cutting = draft('cut', 'a', ['2027-04-01', '2027-04-21', '2027-05-20'], long);
    const urgent = ['m', 'n'].map((job) => draft(job, 'b', ['2027-04-21', '2027-04-21', '2027-04-24'], long));
    const plan = then(planOn('2027-04-01', [cutting]), [cutting, ...urgent], { today: EVE });
    expect(days(plan)[cutting.key]).not.toMatch(/^2027-04-2[1-5]$/);
    expect(plan.changes.find(({ key }) => key === cutting.key)?.because[0]?.rule).toBe('schedule.hours');
    expect(days(plan)['m/bed:b']).toMatch(/^2027-04-2[14]$/);
    const near = { published: planOn('2027-04-14', [cutting]), today: '2027-04-15' };
    expect(days(then(near.published, [cutting, ...urgent], near))[cutting.key]).toBe('2027-04-21');
  });

  it('moves when its window shuts the day out', () => {
    expect(onEve(cut('2027-04-22', '2027-04-22'))).toBe('2027-04-24');
  });
});

describe('work gathered with what is held', () => {
  const b = draft('sow', 'b', APRIL);
  const moved = (one: TaskDraft) => at(one, '2027-04-01', '2027-04-17', '2027-04-30');

  it('goes on the held day too, where its window lets it', () => {
    const plan = then(eve, [moved(a), b]);
    expect(days(plan)).toEqual({ [a.key]: '2027-04-10', [b.key]: '2027-04-10' });
    expect(plan.entries).toHaveLength(1);
  });

  it('goes on its own day where its window does not, or where that would be before its time', () => {
    for (const wanted of [at(b, '2027-04-12', '2027-04-17', '2027-04-30'), moved(b)])
      expect(days(then(eve, [moved(a), wanted]))).toEqual({ [a.key]: '2027-04-10', [b.key]: '2027-04-17' });
  });

  it('takes later work with it to a day that suits them all, so that it stays one entry', () => {
    const early = planOn('2027-04-01', [a]);
    const plan = then(early, [a, moved(b)], { today: EVE });
    expect(days(plan)).toEqual({ [a.key]: '2027-04-17', [b.key]: '2027-04-17' });
    expect(plan.changes.find(({ key }) => key === a.key)?.because[0]?.rule).toBe('schedule.gathered');
  });

  it('as a check rides with it still, and goes with it when it has to move', () => {
    const look = draft('look', 'a', ['2027-04-05', '2027-04-06', '2027-04-28'], { weight: 'check' });
    const riding = planOn(EVE, [a, look]);
    expect(then(riding, [later, look]).entries.map(({ keys }) => keys)).toEqual([[a.key, look.key]]);
    const shut = at(a, '2027-04-12', '2027-04-17', '2027-04-30');
    expect(days(then(riding, [shut, look]))).toEqual({ [a.key]: '2027-04-17', [look.key]: '2027-04-17' });
  });

  it('as a check by itself stays there though work comes to its bed on another day', () => {
    const look = draft('look', 'a', ['2027-04-05', '2027-04-06', '2027-04-28'], { weight: 'check' });
    expect(days(then(planOn(EVE, [look]), [look, later]))[look.key]).toBe('2027-04-07');
  });
});

describe('what is said on a day', () => {
  const morning = then(eve, [a]);

  it('moves work whose window it changes', () => {
    expect(dayOf(then(morning, [later], { said: { edited: true, settled: false } }))).toBe('2027-04-17');
    expect(dayOf(then(eve, [later], { said: { edited: true, settled: false } }))).toBe('2027-04-17');
  });

  it('moves nothing else of these days: weather by itself shifts no entry', () => {
    expect(dayOf(then(morning, [later], { said: { edited: false, settled: false } }))).toBe('2027-04-10');
    const shifted = then(eve, [later]);
    expect(dayOf(then(shifted, [later], { said: { edited: true, settled: false } }))).toBe('2027-04-10');
  });

  it('leaves no trace when it is taken back on the same day', () => {
    const shifted = then(eve, [later]);
    const other = at(a, '2027-04-01', '2027-04-24', '2027-04-30');
    const edited = then(shifted, [other], { said: { edited: true, settled: false } });
    expect(dayOf(edited)).toBe('2027-04-24');
    expect(days(then(edited, [later], { said: { edited: false, settled: false } }))).toEqual(days(shifted));
  });

  it('and taken back days later, gives the day back that stood before it, and the other when it is said again', () => {
    const shifted = then(eve, [later]);
    const shut = at(a, '2027-04-07', '2027-04-07', '2027-04-09');
    const moved = then(shifted, [shut], { said: { edited: true, settled: false } });
    const next = then(moved, [shut], { today: '2027-04-04' });
    const back = then(next, [later], {
      today: '2027-04-05',
      said: { edited: false, settled: false, takenBack: { since: TODAY, about: [] } },
    });
    expect([moved, next, back].map(dayOf)).toEqual(['2027-04-07', '2027-04-07', '2027-04-10']);
    expect(dayOf(then(back, [shut], { today: '2027-04-05' }))).toBe('2027-04-07');
    expect(dayOf(then(back, [later], { today: '2027-04-06' }))).toBe('2027-04-10');
  });
});

describe('what is taken back', () => {
  const back = (about: readonly string[] | 'all'): SaidToday => {
    return { edited: false, settled: false, takenBack: { since: '2027-04-04', about } };
  };
  /** Told on the 5th that the seeds suit the 14th better: from then on it stands there, and still could on the 10th. */
  const otherwise = at(a, '2027-04-01', '2027-04-14', '2027-04-30');
  const told = then(eve, [otherwise], { today: '2027-04-05', said: { edited: true, settled: false } });
  const morning = then(told, [otherwise], { today: '2027-04-07' });

  it('moves nothing it has nothing to do with, and leaves true what was told of it', () => {
    expect([eve, told, morning].map(dayOf)).toEqual(['2027-04-10', '2027-04-14', '2027-04-14']);
    const other = draft('cut', 'b', APRIL);
    const plan = planOn('2027-04-07', [otherwise, other], {
      published: then(morning, [otherwise, other], { today: '2027-04-07' }),
      garden: garden(),
      said: back([other.key]),
      silent: true,
    });
    expect(dayOf(plan)).toBe('2027-04-14');
    expect(plan.changes).toContainEqual(told.changes[0]);
  });

  it('gives their day back to work it names, work in order with that, and work gathered with it', () => {
    const waits = draft('cut', 'b', APRIL, { after: [{ key: a.key, minDays: 0 }] });
    for (const [about, day] of [
      [[a.key], '2027-04-10'],
      [[waits.key], '2027-04-10'],
      ['all', '2027-04-10'],
      [[], '2027-04-14'],
    ] as const)
      expect([about, dayOf(then(morning, [otherwise, waits], { today: '2027-04-07', said: back(about) }))]).toEqual([
        about,
        day,
      ]);
    const mate = draft('sow', 'b', ['2027-04-01', '2027-04-20', '2027-04-30']);
    const far = draft('sow', 'c', ['2027-05-01', '2027-05-20', '2027-05-30']);
    const with_ = (key: string) =>
      dayOf(then(morning, [otherwise, mate, far], { today: '2027-04-07', said: back([key]) }));
    expect([with_(mate.key), with_(far.key)]).toEqual(['2027-04-10', '2027-04-14']);
  });
});

describe('a plan made day after day, whatever the drafts', () => {
  /** Windows whose preferred day wanders from night to night, as odds do. */
  const wandering = (drafts: readonly TaskDraft[], night: number): TaskDraft[] =>
    drafts.map((one, i) => {
      const { earliest, latest } = one.window;
      const length = daysBetween(earliest, latest) + 1;
      return { ...one, window: { ...one.window, preferred: addDays(earliest, (i * 7 + night * 3) % length) } };
    });

  it('moves nothing of the next seven days that is not late, waiting or riding, and tells of every move', () => {
    fc.assert(
      fc.property(drawn({ pins: false, todayFrom: -5, todayTo: 30 }), (input) => {
        const facts = { place: { ...garden().place, workDays: input.workDays }, away: input.away };
        let before = planOn(input.today, wandering(input.drafts, 0), { garden: garden(facts) });
        for (let night = 1; night <= 6; night += 1) {
          const today = addDays(input.today, night);
          const drafts = wandering(input.drafts, night);
          const plan = then(before, drafts, { today, facts });
          const moved = before.tasks.filter(({ key, day, state }) => state === 'open' && days(plan)[key] !== day);
          for (const { key, day, after, weight } of moved.filter((row) => row.day <= addDays(today, 7))) {
            const excused = day < today || weight === 'check' || after.length > 0 || waitedFor(drafts, key);
            expect([key, day, excused]).toEqual([key, day, true]);
          }
          const told = new Set(plan.changes.map(({ key, because }) => (because.length > 0 ? key : '')));
          for (const { key } of moved) expect(told.has(key)).toBe(true);
          expect(JSON.stringify(then(plan, drafts, { today, facts }).tasks)).toBe(JSON.stringify(plan.tasks));
          before = plan;
        }
      }),
      { seed: 20270418, numRuns: runs(25, 300) },
    );
  });

  it('gives back every day when a done mark is taken back on the day it was made', () => {
    fc.assert(
      fc.property(drawn({ todayFrom: -5, todayTo: 40 }), fc.nat(), (input, pick) => {
        const facts = { place: { ...garden().place, workDays: input.workDays }, away: input.away, pins: input.pins };
        const before = planOn(input.today, input.drafts, { garden: garden(facts) });
        const today = addDays(input.today, 1);
        const drafts = wandering(input.drafts, 1);
        const morning = then(before, drafts, { today, facts });
        const open = morning.tasks.filter(({ state }) => state === 'open');
        const task = open[pick % Math.max(1, open.length)];
        fc.pre(task !== undefined);
        if (task === undefined) return;
        const done = [doneMark(task, today)];
        const during = then(morning, drafts, {
          today,
          facts: { ...facts, done },
          said: { edited: true, settled: false },
        });
        expect(days(then(during, drafts, { today, facts }))).toEqual(days(morning));
      }),
      { seed: 20270418, numRuns: runs(50, 600) },
    );
  });
});

function waitedFor(drafts: readonly TaskDraft[], key: string): boolean {
  return drafts.some(({ after }) => after.some((wait) => wait.key === key));
}
