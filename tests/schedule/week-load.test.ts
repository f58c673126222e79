import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/measures/days.ts';
import { FULL_WEEK_ENTRIES, WeekLoad } from '../../src/schedule/week-load.ts';
import { type Days, doneMark, draft, placedOn } from './drafts.ts';

const MARCH_1 = '2027-03-01';
const WEDNESDAY = '2027-04-14';
const WEEK: Days = ['2027-04-12', WEDNESDAY, '2027-04-18'];
const WIDE: Days = ['2027-04-05', WEDNESDAY, '2027-04-30'];
const jobs = Array.from({ length: FULL_WEEK_ENTRIES }, (_, at) => `job${at}`);

const HOURS = { workDays: [3, 6], away: [], hoursPerWeek: 4 } as const;
const twenty = (job: string, bed = 'a') => [draft(job, bed, WEEK)];

function loaded(days: readonly (readonly [day: string, job: string])[]): WeekLoad {
  const load = new WeekLoad([], HOURS);
  for (const [day, job] of days) load.add(day, draft(job, 'a', WEEK));
  return load;
}

describe('a week', () => {
  it('is full once it holds five entries; a job gathered on its day is no further one', () => {
    const load = loaded(jobs.map((job, at) => [addDays('2027-04-12', at), job]));
    expect(load.isFullFor('2027-04-18', twenty('another'))).toBe(true);
    expect(load.isFullFor('2027-04-12', twenty('job0', 'b'))).toBe(false);
    expect(load.isFullFor('2027-04-13', twenty('job0', 'b'))).toBe(true);
    expect(load.isFullFor('2027-04-19', twenty('another'))).toBe(false);
  });

  it('is full once its hours are given away, however few its entries', () => {
    const load = new WeekLoad([], HOURS);
    load.add(WEDNESDAY, draft('dig', 'a', WEEK, { effortMinutes: 230 }));
    expect(load.isFullFor('2027-04-17', [draft('look', 'a', WEEK, { effortMinutes: 10 })])).toBe(false);
    expect(load.isFullFor('2027-04-17', [draft('sow', 'a', WEEK, { effortMinutes: 11 })])).toBe(true);
    expect(load.overMinutes).toBe(0);
    load.add('2027-04-17', draft('sow', 'a', WEEK, { effortMinutes: 11 }));
    expect([load.overMinutes, load.overIn(WEDNESDAY), load.overfullWeeks()]).toEqual([1, 1, ['2027-04-12']]);
  });

  it('counts what is spent once for a job on a day once, as its entry does', () => {
    const load = new WeekLoad([], HOURS);
    for (const bed of ['a', 'b', 'c']) {
      load.add(WEDNESDAY, draft('sow', bed, WEEK, { effortMinutes: 85, onceMinutes: 10 }));
    }
    expect(load.overMinutes).toBe(0);
    expect(load.isFullFor(WEDNESDAY, [draft('sow', 'd', WEEK, { effortMinutes: 15, onceMinutes: 10 })])).toBe(false);
    expect(load.isFullFor('2027-04-17', [draft('sow', 'd', WEEK, { effortMinutes: 15, onceMinutes: 10 })])).toBe(true);
  });

  it('counts what was done in it', () => {
    const load = new WeekLoad(
      jobs.map((job) => doneMark(draft(job, 'a', WEEK), WEDNESDAY)),
      HOURS,
    );
    expect(load.isFullFor(WEDNESDAY, twenty('another'))).toBe(true);
  });
});

describe('work that can wait', () => {
  const bound = jobs.map((job) => draft(job, 'a', WEEK));
  const free = draft('a-free-job', 'a', WIDE);

  it('is put in another week when work that cannot fills its own', () => {
    expect(placedOn(MARCH_1, [...bound, free]).days[free.key]).toBe('2027-04-10');
    expect(placedOn(MARCH_1, [...bound.slice(1), free]).days[free.key]).toBe(WEDNESDAY);
  });

  it('stays there when some of that work has been done', () => {
    const [first, ...rest] = bound;
    const done = first === undefined ? [] : [doneMark(first, WEDNESDAY)];
    expect(placedOn(MARCH_1, [...rest, free], { done }).days[free.key]).toBe('2027-04-10');
  });

  it('keeps its week where all the weeks of its window are full', () => {
    const bed = draft('a-free-job', 'a', WEEK);
    expect(placedOn(MARCH_1, [...bound, bed]).days[bed.key]).toBe(WEDNESDAY);
  });

  it('goes by the full week when it is late', () => {
    const late = draft('late', 'b', ['2027-04-01', '2027-04-07', '2027-04-30']);
    expect(placedOn('2027-04-12', [...bound, late]).days[late.key]).toBe('2027-04-21');
  });

  it('gives way, late, to late work that has to be done sooner', () => {
    const late = (job: string, latest: string) => draft(job, 'b', ['2027-04-01', '2027-04-03', latest]);
    const urgent = jobs.map((job) => late(job, '2027-04-18'));
    const patient = late('a-patient-job', '2027-06-30');
    expect(placedOn('2027-04-12', [patient, ...urgent]).days[patient.key]).toBe('2027-04-21');
  });
});
