/**
 * When a stand is cut: before it flowers, and early enough that what follows can be planted.
 */
import { freezeDay } from '../../climate/freeze.ts';
import type { Odds } from '../../climate/odds.ts';
import { seasonOf } from '../../climate/season.ts';
import { originOf } from '../../handbook/shapes.ts';
import { addDays, type Day, earliestOf, latestOf } from '../../measures/days.ts';
import { type CropSpan, nextCrop, soonest } from '../bed-timeline.ts';
import { type CoverPart, waitDaysOf } from '../covers.ts';
import type { Reason, Window } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import { midwinterAfter, soilAwake } from '../seasons.ts';
import { type BloomClose, bloomClose, endedByOneCut } from './bloom.ts';
import { situationOf, winterFate } from './winter.ts';

/** Days before its close that a cut window opens: earlier cutting loses growth for nothing (phenology, section 3). */
const OPEN_DAYS = 14;
/** Days before the close that a cut is best: young enough to rot fast, a weekend left in hand. House default. */
const PREFERRED_DAYS_BEFORE_CLOSE = 5;
/** Days after sowing before a stand is worth cutting for the crop that follows. House default. */
export const LEAST_GROWTH_DAYS = 30;
/** Days a cut window stays open at the least, so that a weekend lies in it. House default. */
const LEAST_WINDOW_DAYS = 6;
/** Days after a cut when regrowth shows. House default within the 10–14 days of practice. */
export const REGROWTH_DAYS = { low: 10, high: 14 } as const;
/** Days of sheet that finish regrowth (cover:S39: three weeks worked, one did not). */
export const SHEET_DAYS = { low: 21, high: 28 } as const;
/** Days after the median last killing freeze (28 °F) by which a living cover has little spring growth. House default. */
const LITTLE_GROWTH_DAYS = 14;

/** Days from a cut before bloom to a bed free of regrowth: long enough to see it, then the shortest sheet. */
const FINISH_DAYS = REGROWTH_DAYS.low + SHEET_DAYS.low;

/** A window to cut in, with its reasons. */
export interface CutWindow {
  window: Window;
  reasons: readonly Reason[];
  /** Whether the cut may come in flower, before seed, and not only before bloom. */
  inFlower: boolean;
  odds?: Odds;
  next?: CropSpan;
}

/** Whether some part of a stand would grow again after its cut. */
export function growsAgain(parts: readonly CoverPart[]): boolean {
  return parts.some(({ cover }) => cover.regrows === 'yes' && !endedByOneCut(cover));
}

/** Days between cutting a stand and sowing or setting out a crop in its place. */
export function settleDays(parts: readonly CoverPart[], next: CropSpan | undefined): number {
  const wait = waitDaysOf(parts);
  const waitDays = next !== undefined && !waitsAsSeed(next) ? wait.transplant : wait.smallSeed;
  return Math.max(waitDays, growsAgain(parts) ? FINISH_DAYS : 0);
}

/** Seed sown in place that is small, or that seedcorn maggot eats; sets, cloves, tubers and plants wait less. */
function waitsAsSeed({ planting, crop }: CropSpan): boolean {
  return planting.start.how === 'sow' && (crop.smallSeed || crop.seedcornMaggot === true);
}

/**
 * The cut window of a stand sown on a day.
 *
 * @returns nothing where nothing asks for a cut: frost or winter ends the stand, or no crop waits and no flower is known
 */
export function cutWindow(
  input: PracticeInput,
  bedId: string,
  parts: readonly CoverPart[],
  sown: Day,
): CutWindow | undefined {
  const bloom = bloomClose(parts, sown, input);
  const next = nextCrop(input.garden, bedId, input.climate, sown);
  const living = parts.filter(({ cover }) => next !== undefined && standsAt(cover, sown, next.from, input));
  const byNext = next && living.length > 0 ? beforeNext(living, next) : undefined;
  const limit = soonest(bloom?.close, byNext?.day);
  if (limit === undefined) return undefined;
  const grown = worthCuttingFrom(input, parts, sown, limit);
  const late = next !== undefined && byNext?.day === limit && limit < grown ? keptShort(grown, next, bloom) : undefined;
  const latest = latestOf(late ?? limit, addDays(sown, 1));
  const opens = earliestOf(latestOf(addDays(latest, -OPEN_DAYS), grown), addDays(latest, -LEAST_WINDOW_DAYS));
  const earliest = latestOf(opens, addDays(sown, 1));
  return {
    window: { earliest, preferred: latestOf(earliest, addDays(latest, -PREFERRED_DAYS_BEFORE_CLOSE)), latest },
    reasons: [
      ...(bloom?.reasons ?? []),
      ...(byNext ? [byNext.reason] : []),
      ...whichDecides(bloom, byNext?.day),
      ...shortReasons(late, byNext?.day),
      ...littleGrowth(input, parts, sown, latest),
    ],
    inFlower: bloom?.inFlower === true,
    ...(bloom?.odds ? { odds: bloom.odds } : {}),
    ...(next ? { next } : {}),
  };
}

/** Whether a kind is still alive on a later day, so that somebody has to cut it first. */
export function standsAt(cover: CoverPart['cover'], sown: Day, day: Day, input: PracticeInput): boolean {
  if (situationOf(cover, sown, input) !== 'summer-sown') return true;
  return day <= killedOn(cover, sown, input);
}

/** The day frost or winter has ended a kind that is expected to die: the median first freeze, or midwinter. */
export function killedOn(cover: CoverPart['cover'], sown: Day, { climate }: PracticeInput): Day {
  const midwinter = midwinterAfter(climate, sown);
  if (!cover.frostTender) return midwinter;
  const season = seasonOf(climate.seasonTurn, sown);
  const freeze = freezeDay(climate, { event: 'first-autumn', limitF: 32, season, chancePercent: 50 });
  return freeze === undefined || freeze <= sown ? midwinter : freeze;
}

/**
 * The first day a stand to be cut by a limit has grown enough: a month after sowing, or, over winter, when the soil
 * wakes.
 */
function worthCuttingFrom(input: PracticeInput, parts: readonly CoverPart[], sown: Day, limit: Day): Day {
  const winters = parts.some(({ cover }) => situationOf(cover, sown, input) === 'overwintered');
  const wintering = winters && limit > midwinterAfter(input.climate, sown);
  const season = seasonOf(input.climate.seasonTurn, sown) + 1;
  const awake = wintering ? soilAwake(input.climate, season) : undefined;
  return awake ?? addDays(sown, LEAST_GROWTH_DAYS);
}

/** Where the full wait would ask for a cut before there is growth: cut as soon as there is, before the crop goes in. */
function keptShort(grown: Day, next: CropSpan, bloom: BloomClose | undefined): Day {
  const latest = earliestOf(addDays(grown, LEAST_WINDOW_DAYS), addDays(next.from, -1));
  return bloom === undefined ? latest : earliestOf(latest, bloom.close);
}

function shortReasons(late: Day | undefined, asked: Day | undefined): Reason[] {
  if (late === undefined || asked === undefined) return [];
  return [{ rule: 'cover-cut.short', saw: { asked }, limit: late, source: 'house default' }];
}

function beforeNext(parts: readonly CoverPart[], next: CropSpan): { day: Day; reason: Reason } {
  const days = settleDays(parts, next);
  const day = addDays(next.from, -days);
  const wait = waitDaysOf(parts);
  const waitDays = waitsAsSeed(next) ? wait.smallSeed : wait.transplant;
  const sheeted = days > waitDays;
  return {
    day,
    reason: {
      rule: sheeted ? 'cover-cut.next-sheet' : 'cover-cut.next-wait',
      saw: {
        next: next.crop.name.toLowerCase(),
        how: next.planting.start.how === 'sow' ? 'sown' : 'set out',
        day: next.from,
        waitDays,
        regrowthDays: REGROWTH_DAYS.low,
        sheetDays: SHEET_DAYS.low,
      },
      limit: day,
      source: sheeted ? 'cover:S39' : waitOrigin(parts),
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
  if (!parts.some(({ cover }) => winterFate(cover, input) !== 'dies')) return [];
  const season = seasonOf(climate.seasonTurn, sown) + 1;
  const freeze = freezeDay(climate, { event: 'last-spring', limitF: 28, season, chancePercent: 50 });
  const early = freeze !== undefined && latest > midwinterAfter(climate, sown);
  if (!early || latest > addDays(freeze, LITTLE_GROWTH_DAYS)) return [];
  return [{ rule: 'cover-cut.little-growth', saw: { freeze }, limit: latest, source: 'house default' }];
}

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
