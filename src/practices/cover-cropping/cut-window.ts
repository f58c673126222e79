/**
 * When a stand is cut: before it flowers, and early enough that what follows can be planted.
 */
import { freezeDay } from '../../climate/freeze.ts';
import type { Odds } from '../../climate/odds.ts';
import { seasonOf } from '../../climate/season.ts';
import { originOf } from '../../handbook/shapes.ts';
import { addDays, type Day, daysBetween, earliestOf, latestOf } from '../../measures/days.ts';
import { type CropSpan, nextCrop, soonest } from '../bed-timeline.ts';
import { type CoverPart, waitDaysOf } from '../covers.ts';
import type { Reason, Window } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import { type BloomClose, bloomClose, situationOf } from './bloom.ts';

/** Days before its close that a cut window opens: earlier cutting loses growth for nothing. */
const OPEN_DAYS = 14;
/** Days before the close that a cut is best: young enough to rot fast, a weekend left in hand. House default. */
const PREFERRED_DAYS_BEFORE_CLOSE = 5;
/** Days after sowing before a stand is worth cutting at all. House default. */
const LEAST_GROWTH_DAYS = 30;
/** Days a cut window stays open at the least, so that a weekend lies in it. */
const LEAST_WINDOW_DAYS = 6;
/** Days after a cut when regrowth shows. House default within the 10–14 days of practice. */
export const REGROWTH_DAYS = { low: 10, high: 14 } as const;
/** Days of sheet that finish regrowth (Practical Farmers of Iowa 2023: 3 weeks worked, 1 did not). */
export const SHEET_DAYS = { low: 21, high: 28 } as const;

/** Days from a cut before bloom to a bed free of regrowth: long enough to see it, then the shortest sheet. */
export const FINISH_DAYS = REGROWTH_DAYS.low + SHEET_DAYS.low;

/** A window to cut in, with its reasons. */
export interface CutWindow {
  window: Window;
  reasons: readonly Reason[];
  odds?: Odds;
  next?: CropSpan;
}

/** Whether some part of a stand would grow again after a cut before bloom. */
export function growsAgain(parts: readonly CoverPart[]): boolean {
  return parts.some(({ cover }) => cover.regrows === 'yes');
}

/**
 * The cut window of a stand sown on a day.
 *
 * @returns nothing where nothing asks for a cut: frost or winter ends the stand and no crop waits for the bed
 */
export function cutWindow(
  input: PracticeInput,
  bedId: string,
  parts: readonly CoverPart[],
  sown: Day,
): CutWindow | undefined {
  const bloom = bloomClose(parts, sown, input.climate);
  const next = nextCrop(input.garden, bedId, input.climate, sown);
  const living = parts.filter(({ cover }) => standsUntil(cover, sown, next?.from, input));
  const byNext = next && living.length > 0 ? beforeNext(living, next) : undefined;
  const latest = soonest(bloom?.close, byNext?.day);
  if (latest === undefined) return undefined;
  const opens = latestOf(addDays(latest, -OPEN_DAYS), addDays(sown, LEAST_GROWTH_DAYS));
  const earliest = earliestOf(opens, addDays(latest, -LEAST_WINDOW_DAYS));
  return {
    window: { earliest, preferred: latestOf(earliest, addDays(latest, -PREFERRED_DAYS_BEFORE_CLOSE)), latest },
    reasons: [
      ...(bloom?.reasons ?? []),
      ...(byNext ? [byNext.reason] : []),
      ...whichDecides(bloom, byNext?.day),
      ...littleGrowth(input, parts, sown, latest),
    ],
    ...(bloom?.odds ? { odds: bloom.odds } : {}),
    ...(next ? { next } : {}),
  };
}

/** Whether a part is still alive when the next crop goes in, so that somebody has to cut it. */
function standsUntil(cover: CoverPart['cover'], sown: Day, next: Day | undefined, input: PracticeInput): boolean {
  const situation = situationOf(cover, sown, input.climate);
  if (situation !== 'summer-sown' || next === undefined) return true;
  return daysBetween(sown, next) < DAYS_TO_MIDWINTER;
}

/** A stand that dies in winter is gone by the time a crop is planted this many days later. */
const DAYS_TO_MIDWINTER = 150;

function beforeNext(parts: readonly CoverPart[], next: CropSpan): { day: Day; reason: Reason } {
  const sown = next.planting.start.how === 'sow';
  const wait = waitDaysOf(parts);
  const waitDays = sown ? wait.smallSeed : wait.transplant;
  const sheetDays = growsAgain(parts) ? FINISH_DAYS : 0;
  const days = Math.max(waitDays, sheetDays);
  const day = addDays(next.from, -days);
  return {
    day,
    reason: {
      rule: sheetDays > waitDays ? 'cover-cut.next-sheet' : 'cover-cut.next-wait',
      saw: {
        next: next.crop.name.toLowerCase(),
        how: sown ? 'sown' : 'set out',
        day: next.from,
        waitDays,
        regrowthDays: REGROWTH_DAYS.low,
        sheetDays: SHEET_DAYS.low,
      },
      limit: day,
      source: sheetDays > waitDays ? 'cover:S39' : waitOrigin(parts),
    },
  };
}

function waitOrigin(parts: readonly CoverPart[]): Reason['source'] {
  const [first] = parts;
  return first === undefined ? 'house default' : originOf(first.cover, 'waitDays');
}

/** A living cover that has to go before spring growth has begun has gained little: said, so that it can be replanned. */
function littleGrowth(input: PracticeInput, parts: readonly CoverPart[], sown: Day, latest: Day): Reason[] {
  const { climate } = input;
  if (!parts.some(({ cover }) => situationOf(cover, sown, climate) === 'overwintered')) return [];
  const season = seasonOf(climate.seasonTurn, sown) + 1;
  const freeze = freezeDay(climate, { event: 'last-spring', limitF: 28, season, chancePercent: 50 });
  if (freeze === undefined || latest > addDays(freeze, LITTLE_GROWTH_DAYS)) return [];
  return [{ rule: 'cover-cut.little-growth', saw: { freeze }, limit: latest, source: 'house default' }];
}

/** Days after the median last killing freeze (28 °F) by which an overwintered cover has little spring growth. House default. */
const LITTLE_GROWTH_DAYS = 14;

function whichDecides(bloom: BloomClose | undefined, byNext: Day | undefined): Reason[] {
  if (bloom === undefined || byNext === undefined) return [];
  const decides = bloom.close <= byNext ? 'bloom' : 'the next crop';
  return [
    {
      rule: 'cover-cut.decides',
      saw: { decides, bloom: bloom.close, next: byNext },
      limit: earliestOf(bloom.close, byNext),
      source: 'common practice',
    },
  ];
}
