/**
 * What somebody reports of the garden: checked against it, and tried out before it is taken in.
 */
import { EXPECTED_DAYS } from '../../climate/logged.ts';
import type { WeatherTold } from '../../garden/facts.ts';
import type { Pile } from '../../garden/garden.ts';
import type { LedgerEntry } from '../../garden/ledger.ts';
import { InputRefused, type Problem } from '../../garden/problem.ts';
import {
  extremesProblem,
  isPossible,
  MEASURED_WORDS,
  type Measured,
  WEATHER_LIMITS,
} from '../../garden/weather-limits.ts';
import { vegetables } from '../../handbook/vegetables.ts';
import { addDays, type Day, earliestOf, isDay } from '../../measures/days.ts';
import type { Report, ReportPreview } from '../doings/steward.ts';
import { movesBetween } from '../ledger/moves-between.ts';
import type { Planner, VersionedView } from '../planning/planner.ts';
import { choiceProblems } from './cover-choice.ts';
import { householdProblems } from './household-reports.ts';
import { lookProblems } from './look-report.ts';
import { noWishProblems, planProblems, wishProblems } from './plan-problems.ts';
import { regrowthProblems } from './regrowth-report.ts';
import { stageProblems } from './stage-report.ts';

/** Days back the garden's own weather may go: the season before the one that is planned, and its winter. House default. */
const LOG_DAYS = 800;
/** Days back and ahead that anything else may be reported for: a year. House default. */
const REPORT_DAYS = 366;

/**
 * Refuses a report that cannot be true of this garden on its day.
 *
 * @throws {InputRefused} with every problem at once
 */
export function refuseUnlikely(view: VersionedView, report: Report): void {
  const problems = problemsOf(view, report);
  if (problems.length > 0) throw new InputRefused('It cannot be taken in.', problems);
}

/**
 * What taking a report in would do to the plan. Nothing is kept.
 *
 * @throws {InputRefused} when the report cannot be true
 */
export async function reportPreview(planner: Planner, view: VersionedView, report: Report): Promise<ReportPreview> {
  refuseUnlikely(view, report);
  const ledger = [...view.ledger, entryOf(view, report)];
  const { garden, plan: after } = await planner.wouldBe(ledger, view);
  return { before: view.plan, after, garden, moves: movesBetween(view.plan, after) };
}

function entryOf({ ledger, plan: { today } }: VersionedView, fact: Report): LedgerEntry {
  const entry = (ledger.at(-1)?.entry ?? 0) + 1;
  return { entry, recordedAt: `${today}T00:00:00.000Z`, recordedOn: today, by: '', fact };
}

function problemsOf(view: VersionedView, report: Report): Problem[] {
  const { today } = view.plan;
  switch (report.kind) {
    case 'cold-night-told': {
      const [from, to] = report.how === 'expected' ? [today, addDays(today, EXPECTED_DAYS)] : [back(today), today];
      return dayProblems('the evening', report.evening, from, to);
    }
    case 'away-told': {
      const problems = dayProblems('away from', report.from, back(today), addDays(today, REPORT_DAYS));
      if (problems.length > 0) return problems;
      return dayProblems('away to', report.to, report.from, addDays(report.from, REPORT_DAYS));
    }
    case 'soil-squeezed':
      return dayProblems('the day it was squeezed', report.on, back(today), today);
    case 'disease-found':
      return [...diseaseProblems(view, report), ...dayProblems('the day it was found', report.on, back(today), today)];
    case 'weather-logged':
      return loggedProblems(report.days, today);
    case 'compost-not-ready': {
      const pile = view.garden.piles.find(({ id }) => id === report.pileId);
      if (pile !== undefined) return lookDayProblems(report.on, pile.built, today);
      return pileProblems(view, report.pileId);
    }
    case 'stage-seen':
      return stageProblems(view, report);
    case 'stand-looked':
      return lookProblems(view, report);
    case 'regrowth-seen':
      return regrowthProblems(view, report);
    case 'stand-planned':
    case 'stand-dropped':
    case 'mulch-planned':
      return choiceProblems(view, report);
    case 'plantings-planned':
      return planProblems(view, report);
    case 'crop-wished':
      return wishProblems(report);
    case 'wish-dropped':
      return noWishProblems(view.garden, report);
    case 'member-kept':
    case 'member-gone':
    case 'mail-stopped':
    case 'people-told':
    case 'task-assigned':
      return householdProblems(view, report);
    default:
      return report satisfies never;
  }
}

/**
 * Days back to which a look may show that a planned pile was begun before its day: told within a month. House default;
 * an older look would make the pile, and all that is reckoned from its age, as old as a slip of the pen.
 */
const BEGUN_DAYS = 30;

/** A look at a pile: up to today, and not before it was built, or can have been begun. */
export function lookDayProblems(on: string, built: Pile['built'], today: Day): Problem[] {
  const where = 'the day it was looked at';
  if (!isDay(on) || on > today)
    return [{ where, what: `"${on}" cannot be used.`, mend: `Give a day up to today, such as ${today}.` }];
  const from = built.happened ? built.day : earliestOf(built.day, addDays(today, -BEGUN_DAYS));
  if (on >= from) return [];
  if (built.happened) {
    const mend = `Give a day from ${from} to ${today}, or mend "built" in the garden file.`;
    return [{ where, what: `"${on}" is before the pile was built, on ${from}.`, mend }];
  }
  const what = `"${on}" is before the pile was to be built, on ${built.day}, and nobody has marked that as done.`;
  const mend = `Mark its building done on its day first, or give a day from ${from} to ${today}.`;
  return [{ where, what, mend }];
}

function pileProblems({ garden }: VersionedView, pileId: string): Problem[] {
  const ids = garden.piles.map(({ id }) => id);
  if (ids.includes(pileId)) return [];
  const mend = `Piles: ${ids.join(', ') || 'none yet'}.`;
  return [{ where: 'the pile', what: `"${pileId}" is not a pile of this garden.`, mend }];
}

function back(today: Day): Day {
  return addDays(today, -REPORT_DAYS);
}

function dayProblems(where: string, day: string, from: Day, to: Day): Problem[] {
  if (isDay(day) && day >= from && day <= to) return [];
  const mend = from === to ? `Give ${from}.` : `Give a day from ${from} to ${to}.`;
  return [{ where, what: `"${day}" cannot be used.`, mend }];
}

function diseaseProblems({ garden }: VersionedView, report: Extract<Report, { kind: 'disease-found' }>): Problem[] {
  const beds = garden.beds.map(({ id }) => id);
  const problems: Problem[] = [];
  if (!beds.includes(report.bedId)) {
    const what = `"${report.bedId}" is not a bed of this garden.`;
    problems.push({ where: 'the bed', what, mend: `Beds: ${beds.join(', ')}.` });
  }
  if (!vegetables.some(({ id }) => id === report.cropId)) {
    const what = `"${report.cropId}" is not a known crop.`;
    problems.push({ where: 'the crop', what, mend: 'Give a crop id of the handbook, such as tomato.' });
  }
  return problems;
}

/** The days that may be logged: seen up to today, or expected from today on. */
export function logSpan(kind: WeatherTold['kind'], today: Day): { from: Day; to: Day } {
  return kind === 'expected'
    ? { from: today, to: addDays(today, EXPECTED_DAYS) }
    : { from: addDays(today, -LOG_DAYS), to: today };
}

/** What is wrong with days of logged weather. */
export function loggedProblems(days: readonly WeatherTold[], today: Day): Problem[] {
  return days.flatMap((row) => weatherProblems(row, today));
}

function weatherProblems(row: WeatherTold, today: Day): Problem[] {
  const { day, kind, ...measured } = row;
  const { from, to } = logSpan(kind, today);
  const problems = dayProblems(kind === 'expected' ? 'the day it is expected' : 'the day', day, from, to);
  const values = Object.entries(measured).filter(([, value]) => value !== undefined) as [Measured, number][];
  for (const [what, value] of values) {
    if (isPossible(what, value)) continue;
    problems.push({
      where: `${day}, ${MEASURED_WORDS[what]}`,
      what: `${value} cannot be.`,
      mend: WEATHER_LIMITS[what].mend,
    });
  }
  if (values.length === 0)
    problems.push({ where: day, what: 'Nothing is measured.', mend: 'Give at least one figure.' });
  const crossed = extremesProblem(measured, day);
  return crossed === undefined ? problems : [...problems, crossed];
}
