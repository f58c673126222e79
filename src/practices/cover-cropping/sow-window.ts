/**
 * When a cover may be sown: published weeks against the garden's freeze odds, and soil warm enough to sprout.
 */
import type { Climate } from '../../climate/climate.ts';
import { freezeDay } from '../../climate/freeze.ts';
import { usualOf } from '../../climate/logged.ts';
import { memory } from '../../climate/remembered.ts';
import { seasonOf } from '../../climate/season.ts';
import { soilWarmOdds } from '../../climate/soil-temperature.ts';
import type { CoverCrop } from '../../handbook/shapes/cover.ts';
import { originOf } from '../../handbook/shapes/row.ts';
import { addDays, type Day, daysBetween, earliestOf, latestOf } from '../../measures/days.ts';
import type { CoverPart } from '../covers.ts';
import type { Reason, Window } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import { isMidwinter } from '../seasons.ts';

/** Part of the year a sowing belongs to: before the warm months, in them, or before winter. */
export type SowingHalf = 'spring' | 'summer' | 'autumn';

/** A sowing window with the reasons for its ends. */
export interface SowWindow {
  window: Window;
  reasons: readonly Reason[];
  half: SowingHalf;
}

/** One part's window; `best` is where its preferred days begin. */
interface PartWindow {
  earliest: Day;
  best: Day;
  latest: Day;
  reasons: readonly Reason[];
}

/** The halves of the year in which every part of a stand may be sown. */
export function sowingHalves(parts: readonly CoverPart[]): SowingHalf[] {
  if (parts.every(({ cover }) => cover.frostTender)) return ['summer'];
  const halves: SowingHalf[] = [];
  if (parts.every(({ cover }) => cover.springSow !== undefined)) halves.push('spring');
  if (parts.every(({ cover }) => cover.autumnSow !== undefined)) halves.push('autumn');
  return halves;
}

/**
 * The window in which a stand may be sown in one half of a season: every part's own window, held together. Its
 * preferred day lies a third into the days all parts like, or at the opening in the warm months.
 *
 * @returns nothing where a part is not sown then, no freeze date is known, or the parts' windows do not meet
 */
export function sowWindow(
  parts: readonly CoverPart[],
  half: SowingHalf,
  season: number,
  input: PracticeInput,
): SowWindow | undefined {
  const kinds = parts.map(({ cover }) => cover.id).join('+');
  const name = `${kinds}/${half}/${season}/${input.garden.place.frostRisk}`;
  return windowsOf(input.climate, name, () => workedSowWindow(parts, half, season, input));
}

/** Every gap of every bed asks after the same windows. */
const windowsOf = memory<Climate, string, SowWindow | undefined>();

function workedSowWindow(
  parts: readonly CoverPart[],
  half: SowingHalf,
  season: number,
  input: PracticeInput,
): SowWindow | undefined {
  const windows = parts.map(({ cover }) => partWindow(cover, half, season, input));
  const [first, ...rest] = windows;
  if (first === undefined) return undefined;
  let held = first;
  for (const next of rest) {
    if (next === undefined) return undefined;
    held = meet(held, next);
  }
  const { earliest, latest, reasons } = held;
  if (earliest > latest) return undefined;
  const best = held.best < latest ? held.best : earliest;
  const preferred = half === 'summer' ? best : addDays(best, daysBetween(best, latest) / 3);
  return { half, window: { earliest, preferred, latest }, reasons };
}

function meet(a: PartWindow, b: PartWindow): PartWindow {
  return {
    earliest: latestOf(a.earliest, b.earliest),
    best: latestOf(a.best, b.best),
    latest: earliestOf(a.latest, b.latest),
    reasons: [...a.reasons, ...b.reasons],
  };
}

function partWindow(cover: CoverCrop, half: SowingHalf, season: number, input: PracticeInput): PartWindow | undefined {
  if (half === 'summer') return warmWindow(cover, season, input);
  return half === 'autumn' ? autumnWindow(cover, season, input.climate) : springWindow(cover, season, input.climate);
}

function medianFreeze(climate: Climate, event: 'last-spring' | 'first-autumn', season: number): Day | undefined {
  return freezeDay(usualOf(climate), { event, limitF: 32, season, chancePercent: 50 });
}

/** Whether the median freeze dates that windows are counted from are known. */
export function freezesKnown(climate: Climate, season: number): boolean {
  return (
    medianFreeze(climate, 'last-spring', season) !== undefined &&
    medianFreeze(climate, 'first-autumn', season) !== undefined
  );
}

function autumnWindow(cover: CoverCrop, season: number, climate: Climate): PartWindow | undefined {
  const freeze = medianFreeze(climate, 'first-autumn', season);
  const rule = cover.autumnSow;
  if (freeze === undefined || rule === undefined) return undefined;
  const latest = weeksFrom(freeze, -rule.latestWeeks);
  return {
    earliest: weeksFrom(freeze, -rule.earliestWeeks),
    best: weeksFrom(freeze, -(rule.preferredFromWeeks ?? rule.earliestWeeks)),
    latest,
    reasons: [
      {
        rule: 'cover-sow.autumn',
        saw: {
          cover: cover.name.toLowerCase(),
          weeksEarliest: rule.earliestWeeks,
          weeksLatest: rule.latestWeeks,
          freeze,
        },
        limit: latest,
        source: originOf(cover, 'autumnSow'),
      },
    ],
  };
}

function springWindow(cover: CoverCrop, season: number, climate: Climate): PartWindow | undefined {
  const freeze = medianFreeze(climate, 'last-spring', season);
  const rule = cover.springSow;
  if (freeze === undefined || rule === undefined) return undefined;
  const warm = rule.onFrozenSoil ? ANY_SOIL : warmSoil(cover, season, climate);
  if (warm === 'never') return undefined;
  const earliest = latestOf(weeksFrom(freeze, rule.fromWeeks), ...warm.days);
  const latest = weeksFrom(freeze, rule.toWeeks);
  return {
    earliest,
    best: earliest,
    latest,
    reasons: [
      {
        rule: 'cover-sow.spring',
        saw: { cover: cover.name.toLowerCase(), weeksFrom: rule.fromWeeks, weeksTo: rule.toWeeks, freeze },
        limit: latest,
        source: originOf(cover, 'springSow'),
      },
      ...warm.reasons,
    ],
  };
}

function warmWindow(cover: CoverCrop, season: number, { climate, garden }: PracticeInput): PartWindow | undefined {
  const percent = garden.place.frostRisk;
  const safe = freezeDay(climate, { event: 'last-spring', limitF: 32, season, chancePercent: percent });
  const first = medianFreeze(climate, 'first-autumn', season);
  if (safe === undefined || first === undefined || cover.warmDaysNeeded === undefined) return undefined;
  const warm = warmSoil(cover, season, climate);
  if (warm === 'never') return undefined;
  const earliest = latestOf(safe, ...warm.days);
  const latest = addDays(first, -cover.warmDaysNeeded);
  return {
    earliest,
    best: earliest,
    latest,
    reasons: [
      {
        rule: 'cover-sow.warm',
        saw: { cover: cover.name.toLowerCase(), percent, safe, days: cover.warmDaysNeeded, freeze: first },
        limit: latest,
        source: originOf(cover, 'warmDaysNeeded'),
      },
      ...warm.reasons,
    ],
  };
}

/** The day the soil is warm enough, where warmth is asked for at all. */
interface WarmSoil {
  days: readonly Day[];
  reasons: readonly Reason[];
}

const ANY_SOIL: WarmSoil = { days: [], reasons: [] };

/** The median day from which the soil is warm enough for a cover to sprout; `never` where spring does not get there. */
function warmSoil(cover: CoverCrop, season: number, climate: Climate): WarmSoil | 'never' {
  const { soilMinC } = cover;
  if (soilMinC === undefined) return ANY_SOIL;
  const day = soilWarmOdds(climate, { season, tempC: soilMinC }).median;
  if (day === undefined) return 'never';
  const saw = { cover: cover.name.toLowerCase(), tempC: soilMinC, day };
  const rule = isMidwinter(climate, day) ? 'cover-sow.soil-warm' : 'cover-sow.soil';
  return { days: [day], reasons: [{ rule, saw, source: originOf(cover, 'soilMinC') }] };
}

/** So many weeks after a day (before it when negative), to the nearest day. */
function weeksFrom(day: Day, weeks: number): Day {
  return addDays(day, Math.round(7 * weeks));
}

/** Whether a sowing is of seed that waits on bare frozen ground for thaw to draw it in. */
export function isFrostSeeded(parts: readonly CoverPart[], { half }: SowWindow): boolean {
  return half === 'spring' && parts.every(({ cover }) => cover.springSow?.onFrozenSoil === true);
}

/** Weeks from a day to the median first autumn freeze of its season. */
export function weeksBeforeFreeze(climate: Climate, day: Day): number | undefined {
  const freeze = medianFreeze(climate, 'first-autumn', seasonOf(climate.seasonTurn, day));
  return freeze === undefined ? undefined : daysBetween(day, freeze) / 7;
}

/** A window held inside a span of days; nothing where the two do not meet. */
export function heldBetween(sow: SowWindow, from: Day | undefined, to: Day | undefined): SowWindow | undefined {
  const earliest = from === undefined ? sow.window.earliest : latestOf(sow.window.earliest, from);
  const latest = to === undefined ? sow.window.latest : earliestOf(sow.window.latest, to);
  if (earliest > latest) return undefined;
  return {
    ...sow,
    window: { earliest, preferred: latestOf(earliest, earliestOf(sow.window.preferred, latest)), latest },
  };
}
