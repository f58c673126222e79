/**
 * When a crop the gardener planned goes in: the planned day, held inside what the season and the bed allow.
 */
import { seasonOf } from '../../climate/season.ts';
import { originOf } from '../../handbook/shapes/row.ts';
import { addDays, clampDay, type Day, daysBetween, earliestOf, latestOf } from '../../measures/days.ts';
import type { Reason, Window } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import { type BedLimit, bedFreeFrom, mustBeInBy } from './bed-limits.ts';
import { type CropWindow, cooledFrom, cropWindow } from './crop-window.ts';
import { freezesKnown } from './ground.ts';
import { grownBy } from './grown-by.ts';
import { isSeed, type PlantingInBed } from './planting-in-bed.ts';
import { lateAfter } from './sown-again.ts';

/** Days by which a planned day is moved to reach its window; from farther off it is asked after. House default. */
const MOVE_DAYS = 45;
/** Days before the planned day that a planting may go in, weather and bed allowing: a week's choice. House default. */
const AHEAD_DAYS = 7;
/** Days a planting stays open where no freeze date is known and only the gardener's own day counts. House default. */
const OWN_DAY_OPEN_DAYS = 14;

/** Days after a window's opening within which what opens it is worth saying. House default. */
const OPENING_MATTERS_DAYS = 42;

/** A planting's window, with what its steps have to say about it. */
export interface PlannedStart {
  window: Window;
  reasons: readonly Reason[];
  /** The planned day, where it lies outside what the season allows. */
  pulledFrom?: Day;
  /** Set where the preferred day is so late that only early kinds ripen. */
  earlyKindsOnly: boolean;
  /** The planned day, where it leaves too little time to ripen before the bed's own end. */
  broughtForwardFrom?: Day;
  /** The last day that season and bed let the crop in; absent where no freeze date is known. */
  lastDay?: Day;
  /** Set where the soil is too hot to sprout and does not cool in time. */
  hot: boolean;
}

/** A planting's window; or why there is none, with the nearest season's window where there is one at all. */
export type Planned = { start: PlannedStart } | { refused: Reason };

/** Finds the window of a planting that has not gone in. */
export function plannedStart(input: PracticeInput, at: PlantingInBed): Planned {
  const { climate } = input;
  const wanted = at.planting.start.day;
  if (!freezesKnown(climate, wanted)) return heldInBed(input, at, ownDay(at));
  const near = nearestWindow(input, at);
  if (near === undefined) return { refused: refusal(at, 'plant.no-season', {}) };
  const off = daysOff(wanted, near);
  if (off > MOVE_DAYS) {
    return { refused: refusal(at, 'plant.not-then', { from: near.earliest, to: near.latest }) };
  }
  const sown = wanted > near.latest ? lateAfter(at, near.latest) : undefined;
  if (sown !== undefined) return { refused: refusal(at, 'plant.again-late', { to: near.latest, sown }) };
  const held = heldInBed(input, at, near);
  return 'refused' in held ? held : { start: { ...held.start, lastDay: held.start.window.latest } };
}

/** The window a planned day lies in, or the nearest to it of the seasons around. */
function nearestWindow({ climate, garden }: PracticeInput, { planting, crop }: PlantingInBed): CropWindow | undefined {
  const { how, day } = planting.start;
  const season = seasonOf(climate.seasonTurn, day);
  const { frostRisk } = garden.place;
  return [season - 1, season, season + 1]
    .flatMap((year) => cropWindow(climate, { crop, how, season: year, frostRisk }) ?? [])
    .sort((a, b) => daysOff(day, a) - daysOff(day, b))[0];
}

function daysOff(day: Day, { earliest, latest }: CropWindow): number {
  return Math.max(0, daysBetween(day, earliest), daysBetween(latest, day));
}

function ownDay({ planting }: PlantingInBed): CropWindow {
  const wanted = planting.start.day;
  const reason: Reason = {
    rule: 'plant.no-dates',
    saw: { wanted },
    source: "the garden's climate",
  };
  const latest = addDays(wanted, OWN_DAY_OPEN_DAYS);
  return { earliest: addDays(wanted, -AHEAD_DAYS), bestUntil: wanted, latest, opens: [], closes: [reason] };
}

/** A season's window held to the bed: not before it is free, not too late for what follows. */
function heldInBed(input: PracticeInput, at: PlantingInBed, ruled: CropWindow): Planned {
  const wanted = at.planting.start.day;
  const inSeason = clampDay(wanted, ruled.earliest, ruled.latest);
  const ripe = mustBeInBy(at);
  const lawful = ripe === undefined ? inSeason : latestOf(ruled.earliest, earliestOf(inSeason, ripe.day));
  const free = bedFreeFrom(input, at);
  const cool = isSeed(at) ? cooledFrom(input.climate, at.crop, lawful, ruled.latest) : lawful;
  // Plants that are still too small at the end of the season's window go out small.
  const grown = grownBy(at);
  const big = grown === undefined ? lawful : earliestOf(grown.day, latestOf(ruled.earliest, ruled.latest));
  const target = latestOf(cool ?? lawful, free?.day ?? lawful, big);
  if (target > ruled.latest) {
    return { refused: refusal(at, 'plant.bed-taken', { free: target, to: ruled.latest }) };
  }
  const latest = ripe === undefined ? ruled.latest : earliestOf(ruled.latest, latestOf(target, ripe.day));
  const opens = latestOf(
    ruled.earliest,
    addDays(lawful, -AHEAD_DAYS),
    ...(free ? [free.day] : []),
    ...(grown ? [big] : []),
  );
  const earliest = cool !== undefined && cool > lawful ? latestOf(opens, cool) : opens;
  const window = { earliest, preferred: target, latest };
  const reasons = [
    ...plannedReasons(at, inSeason),
    ...(daysBetween(ruled.earliest, target) <= OPENING_MATTERS_DAYS ? ruled.opens : []),
    ...ruled.closes,
    ...(free?.reasons ?? []),
    ...(grown !== undefined && grown.day > addDays(inSeason, -AHEAD_DAYS) ? [grown.reason] : []),
    ...(ripe !== undefined && latest < ruled.latest ? ripeReasons(ripe, target) : []),
    ...seasonReasons(at, ruled, target),
    ...heatReasons(at, lawful, cool),
  ];
  return {
    start: {
      window,
      reasons,
      ...(inSeason === wanted ? {} : { pulledFrom: wanted }),
      ...(target < inSeason ? { broughtForwardFrom: wanted } : {}),
      earlyKindsOnly: ruled.earlyKindsFrom !== undefined && target >= ruled.earlyKindsFrom,
      hot: cool === undefined,
    },
  };
}

/** Where the bed or the season lets a crop in only after the last day that leaves it time, that is said instead. */
function ripeReasons(ripe: BedLimit, target: Day): readonly Reason[] {
  if (target <= ripe.day) return ripe.reasons;
  return ripe.reasons.map((reason) => ({
    ...reason,
    rule: 'plant.short-of-days',
    saw: { ...reason.saw, left: Number(reason.saw.days) - daysBetween(ripe.day, target), day: target },
    limit: addDays(target, Number(reason.saw.days)),
  }));
}

function plannedReasons({ planting, name }: PlantingInBed, lawful: Day): Reason[] {
  const wanted = planting.start.day;
  const rule = lawful === wanted ? 'plant.planned' : 'plant.pulled-in';
  return [{ rule, saw: { crop: name, wanted, held: lawful }, source: "the garden's own plan" }];
}

function seasonReasons({ crop, name }: PlantingInBed, ruled: CropWindow, target: Day): Reason[] {
  const source = originOf(crop, 'lastSowWeeks');
  const late = ruled.lateFrom !== undefined && target >= ruled.lateFrom;
  const early = ruled.earlyKindsFrom !== undefined && target >= ruled.earlyKindsFrom;
  const later = !late && target > ruled.bestUntil;
  return [
    ...(later ? [{ rule: 'plant.later-sowing', saw: { crop: name, best: ruled.bestUntil }, source }] : []),
    ...(late
      ? [{ rule: 'plant.late', saw: { crop: name, from: ruled.lateFrom ?? target }, limit: ruled.latest, source }]
      : []),
    ...(early
      ? [{ rule: 'plant.early-kinds', saw: { crop: name, from: ruled.earlyKindsFrom ?? target }, source }]
      : []),
  ];
}

function heatReasons({ crop, name }: PlantingInBed, lawful: Day, cool: Day | undefined): Reason[] {
  const { soilMaxC } = crop;
  if (soilMaxC === undefined || cool === lawful) return [];
  const saw = { crop: name, tempC: soilMaxC, ...(cool === undefined ? {} : { cool }) };
  return [{ rule: 'plant.hot-soil', saw, source: originOf(crop, 'soilMaxC') }];
}

function refusal({ planting, name }: PlantingInBed, rule: string, saw: Reason['saw']): Reason {
  const source = rule === 'plant.bed-taken' ? "the garden's own plan" : 'house default';
  return { rule, saw: { crop: name, wanted: planting.start.day, ...saw }, source };
}
