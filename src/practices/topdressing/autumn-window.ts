/**
 * A layer in the autumn before a season: once the bed is clear, before its cover or winter crop goes in and the ground
 * freezes.
 */

import type { Bed } from '../../garden/garden.ts';
import { inBed } from '../../garden/in-bed.ts';
import { addDays, clampDay, type Day, earliestOf, latestOf } from '../../measures/days.ts';
import { autumnWork, isOpenInAutumn } from '../autumn-work.ts';
import { cropSpans, type Gap, gapsOf } from '../bed-timeline.ts';
import { clearingsOf } from '../clearing.ts';
import type { Reason, TaskKey } from '../draft.ts';
import { autumnTopdressKey } from '../keys.ts';
import type { CoverSowing, CoverStanding, Findings, PracticeInput } from '../practice.ts';
import { midsummerOf } from '../seasons.ts';
import type { LayerWindow } from './layer-window.ts';

/** Days before a cover may first be sown from which the layer under it may go on. House default. */
const BEFORE_SOWING_DAYS = 14;
/** Days after a bed is free that the work is best done. House default. */
const AFTER_CLEARING_DAYS = 3;

/**
 * The autumn window of a bed.
 *
 * @returns nothing where the bed is not free, a cover holds it through winter, or no freeze date is known
 */
export function autumnWindow(input: PracticeInput, found: Findings, bed: Bed, season: number): LayerWindow | undefined {
  const { climate, garden } = input;
  const work = autumnWork(climate, season - 1);
  if (work === undefined) return undefined;
  const { from: usual, hard } = work;
  const midsummer = midsummerOf(climate, season - 1);
  const gap = gapsOf(garden, bed.id, climate, midsummer).find((each) => isOpenInAutumn(each, work));
  if (gap === undefined) return undefined;
  const from = latestOf(gap.from ?? midsummer, midsummer);
  const sowing = firstSowing(found, gap, from, hard);
  const closes = earliestOf(hard, sowing?.latest ?? hard, gap.to === undefined ? hard : addDays(gap.to, -1));
  const free = latestOf(from, sowing ? earliestOf(usual, addDays(sowing.earliest, -BEFORE_SOWING_DAYS)) : usual);
  const covers = coversStanding(found, bed, free, closes);
  if (covers.some(({ ends }) => ends === undefined || ends >= closes)) return undefined;
  const opens = latestOf(free, ...covers.flatMap(({ ends }) => ends ?? []));
  if (closes < opens) return undefined;
  const preferred = clampDay(sowing?.earliest ?? addDays(opens, AFTER_CLEARING_DAYS), opens, closes);
  return {
    key: autumnTopdressKey(bed.id, season),
    half: 'autumn',
    window: { earliest: opens, preferred, latest: closes },
    after: [
      ...clearings(input, gap).map((key) => ({ key, minDays: 0 })),
      ...covers.flatMap(({ endKey }) => (endKey === undefined ? [] : [{ key: endKey, minDays: 0 }])),
    ],
    reasons: [reason(gap, opens, hard, closes)],
  };
}

function clearings({ garden, climate }: PracticeInput, { before, bedId }: Gap): TaskKey[] {
  return before === undefined ? [] : clearingsOf(cropSpans(garden, bedId, climate), before);
}

/** The first sowing for winter in a gap, which the compost goes under. */
function firstSowing(found: Findings, gap: Gap, from: Day, hard: Day): CoverSowing | undefined {
  const sowings = inBed(found.coverSowings, gap.bedId).filter(
    ({ half, earliest, latest }) =>
      half === 'autumn' && latest >= from && earliest <= hard && (gap.to === undefined || earliest < gap.to),
  );
  return sowings.sort((a, b) => order(a.earliest, b.earliest) || order(a.standId, b.standId))[0];
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Covers in the ground between two days; those still to be sown for winter come after the compost and do not count. */
function coversStanding(found: Findings, bed: Bed, from: Day, to: Day): CoverStanding[] {
  const unsown = new Set(
    inBed(found.coverSowings, bed.id)
      .filter(({ half }) => half === 'autumn')
      .map(({ standId }) => standId),
  );
  return inBed(found.coverStands, bed.id)
    .filter(
      (cover) => !unsown.has(cover.standId) && cover.from <= to && (cover.ends === undefined || cover.ends >= from),
    )
    .sort((a, b) => order(a.standId, b.standId));
}

function reason({ before }: Gap, opens: Day, freeze: Day, closes: Day): Reason {
  const out = before?.to === undefined ? {} : { before: before.crop.name.toLowerCase(), out: before.to };
  return { rule: 'topdress.autumn', saw: { opens, freeze, ...out }, limit: closes, source: 'house default' };
}
