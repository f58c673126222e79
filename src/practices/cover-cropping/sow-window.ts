/**
 * When a cover may be sown: published weeks against the garden's freeze odds, and soil warm enough to sprout.
 */
import type { Climate } from '../../climate/climate.ts';
import { freezeDay } from '../../climate/freeze.ts';
import { seasonIndex, seasonOf } from '../../climate/season.ts';
import { soilWarmOdds } from '../../climate/soil-temperature.ts';
import { type CoverCrop, originOf } from '../../handbook/shapes.ts';
import { addDays, type Day, daysBetween, earliestOf, latestOf } from '../../measures/days.ts';
import type { CoverPart } from '../covers.ts';
import type { Reason, Window } from '../draft.ts';

/** A sowing window with the reasons for its ends. */
export interface SowWindow {
  window: Window;
  reasons: readonly Reason[];
  /** Whether the sowing is meant to be before winter (and what winter is to do), or in spring and summer. */
  half: 'spring' | 'summer' | 'autumn';
}

/** Season index of midsummer (1 July north, 31 December south): later sowings are autumn sowings. */
const MIDSUMMER_INDEX = 182;

/**
 * The window in which a stand may be sown near a wanted day: every part's own window, held together.
 *
 * @param parts the kinds in the stand
 * @param wanted a day in the season and half of the year meant
 * @param frostRisk percent odds of a freeze that frost-tender kinds are sown by
 * @returns nothing where a part has no window in that half of the year, or the parts' windows do not meet
 */
export function sowWindow(
  parts: readonly CoverPart[],
  wanted: Day,
  climate: Climate,
  frostRisk: number,
): SowWindow | undefined {
  const windows = parts.map(({ cover }) => partWindow(cover, wanted, climate, frostRisk));
  const [first, ...rest] = windows;
  if (first === undefined) return undefined;
  let held: SowWindow = first;
  for (const next of rest) {
    if (next === undefined) return undefined;
    held = meet(held, next);
  }
  const { earliest, latest } = held.window;
  if (earliest > latest) return undefined;
  const preferred = latestOf(earliest, earliestOf(held.window.preferred, latest));
  return { ...held, window: { earliest, preferred, latest } };
}

function meet(a: SowWindow, b: SowWindow): SowWindow {
  return {
    window: {
      earliest: latestOf(a.window.earliest, b.window.earliest),
      preferred: latestOf(a.window.preferred, b.window.preferred),
      latest: earliestOf(a.window.latest, b.window.latest),
    },
    reasons: [...a.reasons, ...b.reasons],
    half: a.half,
  };
}

function partWindow(cover: CoverCrop, wanted: Day, climate: Climate, frostRisk: number): SowWindow | undefined {
  const autumn = seasonIndex(climate.seasonTurn, wanted) > MIDSUMMER_INDEX;
  if (cover.frostTender) return warmWindow(cover, wanted, climate, frostRisk);
  if (autumn) return autumnWindow(cover, wanted, climate);
  return springWindow(cover, wanted, climate);
}

function freeze50(climate: Climate, event: 'last-spring' | 'first-autumn', wanted: Day): Day | undefined {
  const season = seasonOf(climate.seasonTurn, wanted);
  return freezeDay(climate, { event, limitF: 32, season, chancePercent: 50 });
}

function autumnWindow(cover: CoverCrop, wanted: Day, climate: Climate): SowWindow | undefined {
  const freeze = freeze50(climate, 'first-autumn', wanted);
  const rule = cover.autumnSow;
  if (freeze === undefined || rule === undefined) return undefined;
  const earliest = addDays(freeze, -7 * rule.earliestWeeks);
  const latest = addDays(freeze, Math.ceil(-7 * rule.latestWeeks));
  const from = rule.preferredFromWeeks ?? rule.earliestWeeks;
  const preferred = addDays(addDays(freeze, -7 * from), daysBetween(addDays(freeze, -7 * from), latest) / 3);
  return {
    half: 'autumn',
    window: { earliest, preferred: latestOf(earliest, preferred), latest },
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

function springWindow(cover: CoverCrop, wanted: Day, climate: Climate): SowWindow | undefined {
  const freeze = freeze50(climate, 'last-spring', wanted);
  const rule = cover.springSow;
  if (freeze === undefined || rule === undefined) return undefined;
  const warm = warmSoil(cover, wanted, climate);
  const byFreeze = addDays(freeze, 7 * rule.fromWeeks);
  const earliest = latestOf(byFreeze, warm?.day ?? byFreeze);
  const latest = latestOf(earliest, addDays(freeze, 7 * rule.toWeeks));
  return {
    half: 'spring',
    window: { earliest, preferred: addDays(earliest, daysBetween(earliest, latest) / 3), latest },
    reasons: [
      {
        rule: 'cover-sow.spring',
        saw: { cover: cover.name.toLowerCase(), weeksFrom: rule.fromWeeks, weeksTo: rule.toWeeks, freeze },
        limit: latest,
        source: originOf(cover, 'springSow'),
      },
      ...(warm ? [warm.reason] : []),
    ],
  };
}

function warmWindow(cover: CoverCrop, wanted: Day, climate: Climate, frostRisk: number): SowWindow | undefined {
  const season = seasonOf(climate.seasonTurn, wanted);
  const safe = freezeDay(climate, { event: 'last-spring', limitF: 32, season, chancePercent: frostRisk });
  const first = freeze50(climate, 'first-autumn', wanted);
  if (safe === undefined || first === undefined || cover.warmDaysNeeded === undefined) return undefined;
  const warm = warmSoil(cover, wanted, climate);
  const earliest = latestOf(safe, warm?.day ?? safe);
  const latest = addDays(first, -cover.warmDaysNeeded);
  return {
    half: 'summer',
    window: { earliest, preferred: earliest, latest },
    reasons: [
      {
        rule: 'cover-sow.warm',
        saw: { cover: cover.name.toLowerCase(), percent: frostRisk, safe, days: cover.warmDaysNeeded, freeze: first },
        limit: latest,
        source: originOf(cover, 'autumnSow'),
      },
      ...(warm ? [warm.reason] : []),
    ],
  };
}

/** The median day from which the soil is warm enough for a cover to sprout. */
function warmSoil(cover: CoverCrop, wanted: Day, climate: Climate): { day: Day; reason: Reason } | undefined {
  if (cover.soilMinC === undefined) return undefined;
  const season = seasonOf(climate.seasonTurn, wanted);
  const day = soilWarmOdds(climate, { season, tempC: cover.soilMinC }).median;
  if (day === undefined) return undefined;
  return {
    day,
    reason: {
      rule: 'cover-sow.soil',
      saw: { cover: cover.name.toLowerCase(), tempC: cover.soilMinC, day },
      source: originOf(cover, 'soilMinC'),
    },
  };
}

/** Weeks from a day to the median first autumn freeze of its season. */
export function weeksBeforeFreeze(climate: Climate, day: Day): number | undefined {
  const freeze = freeze50(climate, 'first-autumn', day);
  return freeze === undefined ? undefined : daysBetween(day, freeze) / 7;
}

/** A window held inside a bed's gap; nothing where the two do not meet. */
export function heldInGap(sow: SowWindow, from: Day | undefined, to: Day | undefined): SowWindow | undefined {
  const earliest = from === undefined ? sow.window.earliest : latestOf(sow.window.earliest, from);
  const latest = to === undefined ? sow.window.latest : earliestOf(sow.window.latest, to);
  if (earliest > latest) return undefined;
  return {
    ...sow,
    window: { earliest, preferred: latestOf(earliest, earliestOf(sow.window.preferred, latest)), latest },
  };
}
