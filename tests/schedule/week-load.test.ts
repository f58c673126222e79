import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/measures/days.ts';
import { FULL_WEEK_ENTRIES, WeekLoad } from '../../src/schedule/week-load.ts';
import { type Days, doneMark, draft, placedOn } from './drafts.ts';

const MARCH_1 = '2027-03-01';
const WEDNESDAY = '2027-04-14';
const WEEK: Days = ['2027-04-12', WEDNESDAY, '2027-04-18'];
const WIDE: Days = ['2027-04-05', WEDNESDAY, '2027-04-30'];
const jobs = Array.from({ length: FULL_WEEK_ENTRIES }, (_, at) => `job${at}`);

describe('a week', () => {
  it('is full once it holds five entries; a job gathered on its day is no further one', () => {
    const load = new WeekLoad([]);
    for (const [at, job] of jobs.entries()) load.add(addDays('2027-04-12', at), job);
    expect(load.isFullFor('2027-04-18', 'another')).toBe(true);
    expect(load.isFullFor('2027-04-12', 'job0')).toBe(false);
    expect(load.isFullFor('2027-04-13', 'job0')).toBe(true);
    expect(load.isFullFor('2027-04-19', 'another')).toBe(false);
  });

  it('counts what was done in it', () => {
    const load = new WeekLoad(jobs.map((job) => doneMark(draft(job, 'a', WEEK), WEDNESDAY)));
    expect(load.isFullFor(WEDNESDAY, 'another')).toBe(true);
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
