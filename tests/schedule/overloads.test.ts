/** A household that keeps four hours a week, on Wednesdays and Saturdays; 19 April 2027 is a Monday. */
import { describe, expect, it } from 'vitest';
import type { TaskDraft } from '../../src/practices/draft.ts';
import type { PlanInput } from '../../src/schedule/reconcile.ts';
import { type Days, doneMark, draft, garden, planOn } from './drafts.ts';

const TODAY = '2027-04-19';
const WEEK: Days = ['2027-04-19', '2027-04-21', '2027-04-25'];
const PAST: Days = ['2027-04-05', '2027-04-14', '2027-05-30'];

const long = (job: string, days: Days, parts: Partial<TaskDraft> = {}) =>
  draft(job, job, days, { effortMinutes: 150, ...parts });

const overloadsOn = (drafts: readonly TaskDraft[], parts: Partial<PlanInput> = {}, today = TODAY) =>
  planOn(today, drafts, parts).overloads;

describe('a week that wants more than it gives', () => {
  it('is named once all that can move has moved, with what it wants and gives', () => {
    expect(
      overloadsOn([long('sow', WEEK), long('plant', WEEK), long('dig', ['2027-04-01', '2027-04-21', '2027-05-30'])]),
    ).toEqual([
      {
        monday: '2027-04-19',
        wantedMinutes: 300,
        givenMinutes: 240,
        canWait: [],
        cannotWait: ['plant/bed:plant', 'sow/bed:sow'],
        until: {},
      },
    ]);
  });

  it('is not named where everything fits; then the plan has no such list', () => {
    expect(planOn(TODAY, [long('sow', WEEK)])).not.toHaveProperty('overloads');
  });

  it('tells what can wait, and until when, where late work takes its hours', () => {
    const late = ['2027-04-01', '2027-04-03', '2027-04-24'] as const;
    const dig = long('dig', ['2027-04-19', '2027-04-24', '2027-05-30'], { effortMinutes: 120 });
    const [week] = overloadsOn([long('sow', late), dig]) ?? [];
    expect(week).toMatchObject({ canWait: [dig.key], cannotWait: ['sow/bed:sow'], until: { [dig.key]: '2027-05-30' } });
  });

  it('lets nothing wait longer than what waits for it allows', () => {
    const late = ['2027-04-01', '2027-04-03', '2027-04-24'] as const;
    const dig = long('dig', ['2027-04-19', '2027-04-24', '2027-05-30'], { effortMinutes: 120 });
    const plant = draft('plant', 'dig', ['2027-04-19', '2027-05-12', '2027-05-20'], {
      after: [{ key: dig.key, minDays: 7 }],
    });
    expect(overloadsOn([long('sow', late), dig, plant])?.[0]?.until).toEqual({ [dig.key]: '2027-05-13' });
  });

  it('has pinned work stay, and counts it', () => {
    const [dig, sow] = [long('dig', PAST), long('sow', WEEK)];
    const pinned = garden({ pins: { [dig.key]: '2027-04-21' } });
    const [week] = overloadsOn([dig, sow], { garden: pinned }) ?? [];
    expect(week).toMatchObject({ wantedMinutes: 300, canWait: [], cannotWait: [dig.key, sow.key] });
  });

  it('counts what was done in it, as long as more is to do', () => {
    const dig = long('dig', WEEK);
    const done = garden({ done: [doneMark(dig, TODAY)] });
    expect(overloadsOn([long('sow', WEEK)], { garden: done })?.[0]?.wantedMinutes).toBe(300);
    const both = garden({ done: [doneMark(dig, TODAY), doneMark(long('sow', WEEK), TODAY)] });
    expect(overloadsOn([], { garden: both })).toBeUndefined();
  });

  it('counts done what it counted planned: what is spent once for a job is not counted anew', () => {
    const beds = ['a', 'b', 'c', 'd', 'e'].map((bed) =>
      draft('sow', bed, WEEK, { effortMinutes: 50, onceMinutes: 40 }),
    );
    const done = garden({ done: beds.map((bed) => doneMark(bed, TODAY)) });
    // By hand: 40 once and ten for each of five beds, of 240 that the week gives.
    expect(overloadsOn([long('dig', WEEK)], { garden: done })).toBeUndefined();
    expect(overloadsOn([long('dig', WEEK, { effortMinutes: 151 })], { garden: done })?.[0]?.wantedMinutes).toBe(241);
  });

  it('counts lapsed work that should still be done, and none that is past mending', () => {
    const gone: Days = ['2027-04-01', '2027-04-07', '2027-04-17'];
    const late = (ifMissed: TaskDraft['ifMissed']) =>
      overloadsOn([long('cut', gone, { ifMissed, effortMinutes: 300 })]);
    expect(late('still do')?.[0]?.wantedMinutes).toBe(300);
    expect(late('drop')).toBeUndefined();
  });

  it('lets late work wait until it is let go', () => {
    const late = long('cut', ['2027-04-01', '2027-04-07', '2027-04-17'], { effortMinutes: 300 });
    expect(overloadsOn([late])?.[0]).toMatchObject({ cannotWait: [], until: { [late.key]: '2027-06-16' } });
  });

  describe('names no last day that cannot be', () => {
    const dig = long('dig', ['2027-04-19', '2027-04-24', '2027-05-20'], { effortMinutes: 100 });
    const late = long('sow', ['2027-04-01', '2027-04-03', '2027-04-24'], { effortMinutes: 200 });
    const plant = (days: Days) => draft('plant', 'dig', days, { after: [{ key: dig.key, minDays: 7 }] });
    const week = (others: readonly TaskDraft[], parts: Parameters<typeof garden>[0]) =>
      overloadsOn([dig, late, ...others], { garden: garden(parts) })?.[0];

    it('in a time away at the end of its window', () => {
      expect(week([], { away: [{ from: '2027-05-01', to: '2027-05-25' }] })?.until).toEqual({
        [dig.key]: '2027-04-30',
      });
    });

    it('too near what waits for it and is pinned', () => {
      const pins = { 'plant/bed:dig': '2027-05-05' };
      expect(week([plant(['2027-04-26', '2027-05-12', '2027-05-20'])], { pins })?.until).toEqual({
        [dig.key]: '2027-04-28',
      });
    });

    it('too near what waits for it and can only be done before a time away', () => {
      const away = [{ from: '2027-05-06', to: '2027-06-30' }];
      expect(week([plant(['2027-04-26', '2027-05-05', '2027-05-20'])], { away })?.until).toEqual({
        [dig.key]: '2027-04-28',
      });
    });

    it.each([
      ['of its window', '2027-06-30', []],
      ['before what waits for it', '2027-05-10', [plant(['2027-04-26', '2027-05-05', '2027-05-05'])]],
    ] as const)('where every later day %s is away', (_, to, others) => {
      const away = [{ from: '2027-04-26', to }];
      expect(week(others, { away })).toMatchObject({ canWait: [], cannotWait: [late.key, dig.key] });
    });
  });

  describe('once some of it has passed', () => {
    const three = ['a', 'b', 'c'].map((job) => long(job, WEEK, { effortMinutes: 80 }));

    it('gives only the work days it has left', () => {
      const given = (today: string) => overloadsOn(three, {}, today)?.[0]?.givenMinutes;
      expect([given('2027-04-21'), given('2027-04-22'), given('2027-04-25')]).toEqual([undefined, 120, 0]);
    });

    it('counts what was done on its days before neither for nor against those left, up to its hours', () => {
      const [first, ...rest] = three;
      const done = (minutes: number) =>
        garden({ done: first ? [doneMark({ ...first, effortMinutes: minutes }, '2027-04-21')] : [] });
      const week = (minutes: number) => overloadsOn(rest, { garden: done(minutes) }, '2027-04-22')?.[0];
      expect(week(80)).toMatchObject({ wantedMinutes: 160, givenMinutes: 120 });
      expect(week(200)).toMatchObject({ wantedMinutes: 160, givenMinutes: 40 });
      expect(week(300)).toMatchObject({ wantedMinutes: 160, givenMinutes: 0 });
    });
  });

  it('gives only the hours of its work days at home', () => {
    const away = garden({ away: [{ from: '2027-04-24', to: '2027-04-25' }] });
    expect(overloadsOn([long('sow', WEEK)], { garden: away })?.[0]).toMatchObject({
      givenMinutes: 120,
      wantedMinutes: 150,
    });
  });

  it('is named up to eight weeks ahead and no further, over New Year too', () => {
    const pair = (monday: string, sunday: string) =>
      ['a', 'b'].map((job) => long(`${job}-${monday}`, [monday, monday, sunday]));
    const drafts = [...pair('2027-12-27', '2028-01-02'), ...pair('2028-02-28', '2028-03-05')];
    const mondays = (today: string) => overloadsOn(drafts, {}, today)?.map(({ monday }) => monday);
    expect(mondays('2027-12-27')).toEqual(['2027-12-27']);
    expect(mondays('2028-01-09')).toBeUndefined();
    expect(mondays('2028-01-10')).toEqual(['2028-02-28']);
  });
});
