/**
 * Small gardens' worth of work drawn at random, and the least minutes their weeks can be over their hours, solved exactly
 * as a mixed-integer model by HiGHS: what the schedule's own placing is held against.
 */
import { addDays, type Day, daysBetween, eachDay, weekdayOf, weekStart } from '../../src/measures/days.ts';
import type { TaskDraft } from '../../src/practices/draft.ts';
import { type Placing, place } from '../../src/schedule/place.ts';
import { givenMinutes } from '../../src/schedule/week-hours.ts';
import { WeekLoad } from '../../src/schedule/week-load.ts';
import type { Solver } from '../../src/steward/solver/solver.ts';
import { draft } from '../schedule/drafts.ts';

/** First Mondays drawn: spring, New Year, a leap day, clocks going forward and back. */
const MONDAYS = ['2027-04-05', '2027-12-13', '2028-02-14', '2027-03-01', '2027-10-18'] as const;
const WORK_DAYS = [3, 6] as const;

/** One small garden's work. */
interface Case {
  drafts: readonly TaskDraft[];
  placing: Placing;
}

/** Six to ten tasks over four to six weeks, about as much as those give, some in order and some of one job. */
function drawnCase(next: () => number): Case {
  const between = (low: number, high: number): number => low + Math.floor(next() * (high - low + 1));
  const monday = MONDAYS[between(0, MONDAYS.length - 1)] ?? MONDAYS[0];
  const [weeks, count] = [between(4, 6), between(6, 10)];
  const drafts: TaskDraft[] = [];
  for (let at = 0; at < count; at += 1) {
    const from = 7 * between(0, weeks - 1) + between(0, 6);
    const to = Math.max(from + 6, Math.min(7 * weeks - 1, from + between(6, 27)));
    const preferred = from + between(0, Math.max(0, to - from));
    const job = next() < 0.3 ? 'shared' : `job${at}`;
    const earlier = drafts.filter(({ window }) => window.latest <= addDays(monday, to));
    const before = next() < 0.4 ? earlier[between(0, earlier.length - 1)] : undefined;
    drafts.push(
      draft(job, `b${at}`, [addDays(monday, from), addDays(monday, preferred), addDays(monday, to)], {
        effortMinutes: 5 * between(5, 24),
        ...(job === 'shared' ? { onceMinutes: 15 } : {}),
        after: before === undefined ? [] : [{ key: before.key, minDays: between(0, 5) }],
      }),
    );
  }
  const wanted = drafts.reduce((sum, { effortMinutes }) => sum + effortMinutes, 0);
  const hoursPerWeek = Math.max(0.5, Math.round((wanted / weeks / 60) * (1 + 0.8 * next()) * 4) / 4);
  const today = addDays(monday, -1);
  return { drafts, placing: { today, workDays: WORK_DAYS, hoursPerWeek, away: [], pins: {}, done: [] } };
}

/** What a run of cases came to. */
export interface Gap {
  /** Cases drawn; those whose windows and order no days can keep; those the schedule put on days that are no work days. */
  cases: number;
  impossible: number;
  offWorkDays: number;
  /** Cases that fit into their hours, and those of them that the schedule leaves over. */
  fit: number;
  fitMissed: number;
  /** Minutes over beyond the least there are, in each case that can be compared. */
  gaps: readonly number[];
}

/** Draws cases one after another and holds the schedule against the exact solution. */
export async function gapOf(seed: number, cases: number, solver: Solver): Promise<Gap> {
  const next = randomFrom(seed);
  const gap = { cases, impossible: 0, offWorkDays: 0, fit: 0, fitMissed: 0 };
  const gaps: number[] = [];
  for (let n = 0; n < cases; n += 1) {
    const problem = drawnCase(next);
    const [least, ours] = [await leastOver(problem, solver), placedWeeks(problem)];
    if (least === undefined) gap.impossible += 1;
    else if (!ours.isComparable) gap.offWorkDays += 1;
    else {
      gaps.push(ours.overMinutes - least);
      gap.fit += Number(least === 0);
      gap.fitMissed += Number(least === 0 && ours.overMinutes > 0);
    }
  }
  return { ...gap, gaps };
}

/** Numbers from 0 to 1, the same for the same seed: a linear congruence with the constants of Numerical Recipes, from memory. */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** What the schedule makes of a case. */
interface Ours {
  overMinutes: number;
  /** Whether windows and order were all kept, on work days alone. */
  isComparable: boolean;
}

function placedWeeks({ drafts, placing }: Case): Ours {
  const { placed, clashes } = place(drafts, placing);
  const load = new WeekLoad([], placing);
  for (const { draft: task, day } of placed) load.add(day, task);
  const onWorkDays = placed.every(({ day }) => placing.workDays.includes(weekdayOf(day)));
  return { overMinutes: load.overMinutes, isComparable: clashes.length === 0 && onWorkDays };
}

/** The least minutes over, all weeks together; nothing where windows and order cannot all be kept on work days. */
async function leastOver(problem: Case, solver: Solver): Promise<number | undefined> {
  const solved = await solver.solve(modelOf(problem));
  if (solved.found === 'impossible') return undefined;
  if (solved.found !== 'best') throw new Error(`The solver has not proven its answer: ${solved.found}.`);
  const over = Object.entries(solved.values).filter(([name]) => name.startsWith('over_'));
  return Math.round(over.reduce((sum, [, minutes]) => sum + minutes, 0));
}

interface Choice {
  name: string;
  at: number;
  day: Day;
  task: TaskDraft;
}

/** The model in the LP format: one day for each task, in order; what weeks are over is made as little as can be. */
function modelOf({ drafts, placing }: Case): string {
  const origin = placing.today;
  const choices = drafts.flatMap((task, t) =>
    eachDay(task.window.earliest, task.window.latest)
      .filter((day) => placing.workDays.includes(weekdayOf(day)))
      .map((day): Choice => ({ name: `x_${t}_${daysBetween(origin, day)}`, at: daysBetween(origin, day), day, task })),
  );
  const mondays = [...new Set(choices.map(({ day }) => weekStart(day)))];
  const once = onceOf(choices);
  const rows = [
    ...drafts.map((task) => `${sum(choices.filter((one) => one.task === task).map(({ name }) => name))} = 1`),
    ...orderRows(drafts, choices),
    ...[...once].flatMap(([name, { doing }]) => doing.map((x) => `${name} - ${x} >= 0`)),
    ...mondays.map((monday, week) => {
      const work = choices
        .filter(({ day }) => weekStart(day) === monday)
        .map(({ name, task }) => `${task.effortMinutes - (task.onceMinutes ?? 0)} ${name}`);
      const startUps = [...once]
        .filter(([, { day }]) => weekStart(day) === monday)
        .map(([name, { minutes }]) => `${minutes} ${name}`);
      return `${sum([...work, ...startUps])} - over_${week} <= ${givenMinutes(monday, placing)}`;
    }),
  ];
  const whole = [...choices.map(({ name }) => name), ...once.keys()];
  return `Minimize\n ${sum(mondays.map((_, week) => `over_${week}`))}\nSubject To\n ${rows.join('\n ')}\nBinary\n ${whole.join('\n ')}\nEnd\n`;
}

interface Once {
  day: Day;
  minutes: number;
  doing: string[];
}

/** What is spent once for a job on a day: one more choice, made where any of its tasks stands there. */
function onceOf(choices: readonly Choice[]): Map<string, Once> {
  const once = new Map<string, Once>();
  for (const { name, at, day, task } of choices) {
    if (task.onceMinutes === undefined) continue;
    const known = once.get(`once_${at}`) ?? { day, minutes: task.onceMinutes, doing: [] };
    once.set(`once_${at}`, { ...known, doing: [...known.doing, name] });
  }
  return once;
}

function orderRows(drafts: readonly TaskDraft[], choices: readonly Choice[]): string[] {
  const dayOf = (key: string, sign: string): string[] =>
    choices.filter(({ task }) => task.key === key).map(({ name, at }) => `${sign} ${at} ${name}`);
  return drafts.flatMap(({ key, after }) =>
    after.map((wait) => `${[...dayOf(key, '+'), ...dayOf(wait.key, '-')].join(' ')} >= ${wait.minDays}`),
  );
}

function sum(terms: readonly string[]): string {
  return terms.join(' + ');
}
