/**
 * Gardens' worth of drafts drawn at random: beds, jobs, windows, waits without rings, work days, times away and pins.
 */
import * as fc from 'fast-check';
import { addDays, type Day, type Weekday } from '../../src/measures/days.ts';
import type { TaskDraft } from '../../src/practices/draft.ts';
import type { Placing } from '../../src/schedule/place.ts';
import { doneMark, draft } from './drafts.ts';

/** First days of the spans drawn: plain spring, New Year, a leap day, a southern season's turn. */
const ORIGINS = ['2027-03-20', '2027-12-15', '2028-02-10', '2027-06-20'] as const;

/** Days over which windows are spread. */
const SPREAD_DAYS = 70;

/** What a test draws: drafts and what placing has to reckon with. */
export interface Drawn extends Placing {
  origin: Day;
  drafts: TaskDraft[];
}

export interface Wanted {
  /** Whether tasks wait for one another. */
  waits?: boolean;
  pins?: boolean;
  done?: boolean;
  checks?: boolean;
  /** Days from the origin at which today may lie. */
  todayFrom?: number;
  todayTo?: number;
}

const window = fc
  .tuple(fc.nat(SPREAD_DAYS), fc.nat(30), fc.double({ min: 0, max: 1, noNaN: true }))
  .map(([from, length, share]) => ({ from, to: from + length, preferred: from + Math.round(length * share) }));

const row = fc.record({
  window,
  job: fc.constantFrom('clear', 'sow', 'topdress'),
  bed: fc.constantFrom('a', 'b', 'c', 'd', 'e'),
  weight: fc.constantFrom('work', 'work', 'work', 'deadline', 'check'),
  ifMissed: fc.constantFrom('still do', 'replace', 'drop'),
  after: fc.array(fc.record({ back: fc.integer({ min: 1, max: 6 }), minDays: fc.nat(12) }), { maxLength: 2 }),
  pin: fc.option(fc.nat(SPREAD_DAYS + 30), { freq: 6 }),
  done: fc.option(fc.nat(SPREAD_DAYS + 30), { freq: 8 }),
  sort: fc.nat(999),
} as const);

const away = fc.array(fc.tuple(fc.nat(SPREAD_DAYS), fc.nat(14)), { maxLength: 2 });
const weekdays = fc.uniqueArray(fc.constantFrom<Weekday>(1, 2, 3, 4, 5, 6, 7), { minLength: 1, maxLength: 3 });

/** Drafts with everything that placing has to reckon with. */
export function drawn(wanted: Wanted = {}): fc.Arbitrary<Drawn> {
  const { todayFrom = -5, todayTo = SPREAD_DAYS + 40 } = wanted;
  return fc
    .record({
      origin: fc.constantFrom(...ORIGINS),
      rows: fc.array(row, { minLength: 1, maxLength: 14 }),
      workDays: weekdays,
      hoursPerWeek: fc.constantFrom(1, 2, 4, 8),
      away,
      today: fc.integer({ min: todayFrom, max: todayTo }),
    })
    .map(({ origin, rows, workDays, hoursPerWeek, away, today }) => {
      const at = (days: number): Day => addDays(origin, days);
      const keys = rows.map(({ sort, job, bed }, i) => `${String(sort).padStart(3, '0')}-${job}/bed:${bed}/${i}`);
      const all = rows.map(({ window, job, bed, weight, ifMissed, after }, i) =>
        draft(job, bed, [at(window.from), at(window.preferred), at(window.to)], {
          key: keys[i] ?? '',
          weight: weight === 'check' && wanted.checks === false ? 'work' : weight,
          job: weight === 'check' ? { id: `check-${job}`, title: `Check ${job}` } : { id: job, title: job },
          ifMissed,
          after: wanted.waits === false ? [] : after.flatMap(({ back, minDays }) => waitOn(keys[i - back], minDays)),
        }),
      );
      const isDone = (i: number): boolean =>
        wanted.done === true && rows[i]?.done !== null && (rows[i]?.done ?? 0) < today;
      const drafts = all.filter((_, i) => !isDone(i));
      const done = all.flatMap((one, i) => (isDone(i) ? [doneMark(one, at(rows[i]?.done ?? 0))] : []));
      const pins = Object.fromEntries(
        rows.flatMap(({ pin }, i) => (pin === null || wanted.pins === false ? [] : [[keys[i] ?? '', at(pin)]])),
      );
      return {
        origin,
        drafts,
        today: at(today),
        workDays,
        hoursPerWeek,
        away: away.map(([from, length]) => ({ from: at(from), to: at(from + length) })),
        pins,
        done,
      };
    });
}

function waitOn(key: string | undefined, minDays: number): { key: string; minDays: number }[] {
  return key === undefined ? [] : [{ key, minDays }];
}
