/**
 * When a stand is cut: before it flowers, and early enough that what follows can be planted.
 */
import type { Climate } from '../../climate/climate.ts';
import { freezeDay } from '../../climate/freeze.ts';
import type { Odds } from '../../climate/odds.ts';
import { seasonOf } from '../../climate/season.ts';
import type { StageSeen } from '../../garden/garden.ts';
import { addDays, type Day, daysBetween, earliestOf, latestOf } from '../../measures/days.ts';
import { soonest } from '../bed-timeline.ts';
import type { CoverPart } from '../covers.ts';
import type { Reason, Window } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import { midwinterAfter, soilAwake } from '../seasons.ts';
import { bloomClose, graceDaysOf } from './bloom.ts';
import { type BloomClose, bloomModelOf } from './bloom-figure.ts';
import { type Follower, firstFollower } from './followers.ts';
import { situationOf, winterFate } from './winter.ts';

/** Days before its close that a cut window opens: earlier cutting loses growth for nothing (phenology, section 3). */
export const OPEN_DAYS = 14;
/** Days before the close that a cut is best: young enough to rot fast, a weekend left in hand. House default. */
const PREFERRED_DAYS_BEFORE_CLOSE = 5;
/** Days after sowing before a stand is worth cutting for what follows. House default. */
export const LEAST_GROWTH_DAYS = 30;
/** Days within which a stand seen in bloom, or in bud, is cut. House defaults: seed follows; heads flower a week after they show. */
const SEEN_DAYS = { 'in-bloom': 4, 'first-buds': 7 } as const;
/** Days a cut window stays open at the least, so that a weekend lies in it. House default. */
const LEAST_WINDOW_DAYS = 6;
/** Days after the median last killing freeze (28 °F) by which a living cover has little spring growth. House default. */
const LITTLE_GROWTH_DAYS = 14;

const LITTLE_GROWTH = 'cover-cut.little-growth';

/** A window to cut in, with its reasons. */
export interface CutWindow {
  window: Window;
  reasons: readonly Reason[];
  /** Whether the cut may come in flower, before seed, and not only before bloom. */
  inFlower: boolean;
  odds?: Odds;
  /** What waits for the bed. */
  next?: Follower;
  /** What the figures have for its flowers, and the first day it has grown enough; absent where a stage was seen. */
  bloom?: BloomClose;
  grown?: Day;
}

/**
 * The cut window of a stand sown on a day.
 *
 * @returns nothing where nothing asks for a cut: frost or winter ends the stand, or nothing waits and no flower is known
 */
export function cutWindow(
  input: PracticeInput,
  bedId: string,
  parts: readonly CoverPart[],
  sown: Day,
  seen: StageSeen | undefined = undefined,
): CutWindow | undefined {
  if (seen !== undefined) return seenWindow(input, bedId, parts, sown, seen);
  const bloom = bloomClose(parts, sown, input);
  const next = firstFollower(input, bedId, parts, sown);
  const limit = soonest(bloom?.close, next?.cutBy);
  if (limit === undefined) return undefined;
  const grown = worthCuttingFrom(input, parts, sown, limit);
  const late = next?.cutBy === limit && limit < grown ? keptShort(grown, next, bloom) : undefined;
  const latest = latestOf(late ?? limit, addDays(sown, 1));
  const opens = earliestOf(latestOf(addDays(latest, -OPEN_DAYS), grown), addDays(latest, -LEAST_WINDOW_DAYS));
  const earliest = latestOf(opens, addDays(sown, 1));
  return {
    window: { earliest, preferred: latestOf(earliest, addDays(latest, -PREFERRED_DAYS_BEFORE_CLOSE)), latest },
    reasons: [
      ...(bloom?.reasons ?? []),
      ...(next ? [next.reason] : []),
      ...whichDecides(bloom, next),
      ...shortReasons(late, next),
      ...littleGrowth(input, parts, sown, latest),
    ],
    inFlower: bloom?.inFlower === true,
    ...(bloom?.odds ? { odds: bloom.odds } : {}),
    ...(next ? { next } : {}),
    ...(bloom ? { bloom } : {}),
    grown,
  };
}

/** The cut of a stand that was seen to bud or to flower: at once, whatever the figures have. */
function seenWindow(
  input: PracticeInput,
  bedId: string,
  parts: readonly CoverPart[],
  sown: Day,
  { coverId, on, stage, modelled }: StageSeen,
): CutWindow {
  const next = firstFollower(input, bedId, parts, sown);
  const part = parts.find(({ cover }) => cover.id === coverId);
  const model = part && bloomModelOf(part.cover, sown, input);
  const grace = stage === 'in-bloom' && part !== undefined ? graceDaysOf(part.cover) : 0;
  const last = addDays(on, Math.max(grace, SEEN_DAYS[stage]));
  const latest = next === undefined || next.cutBy < on ? last : earliestOf(last, next.cutBy);
  const offDays = modelled === undefined ? undefined : daysBetween(modelled, on);
  return {
    window: { earliest: on, preferred: on, latest },
    reasons: [
      {
        rule: 'cover-cut.seen',
        saw: {
          cover: part?.cover.name.toLowerCase() ?? coverId,
          stage,
          on,
          ...(modelled === undefined ? {} : { modelled, event: model?.closingEvent ?? 'first flowers' }),
          ...(offDays === undefined ? {} : { offDays }),
        },
        limit: latest,
        source: "the garden's own plan",
      },
      ...(next ? [next.reason] : []),
    ],
    inFlower: stage === 'in-bloom',
    ...(next ? { next } : {}),
  };
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

/** Where the full wait would ask for a cut before there is growth: cut as soon as there is, before what follows. */
function keptShort(grown: Day, next: Follower, bloom: BloomClose | undefined): Day {
  const latest = earliestOf(addDays(grown, LEAST_WINDOW_DAYS), addDays(next.from, -1));
  return bloom === undefined ? latest : earliestOf(latest, bloom.close);
}

function shortReasons(late: Day | undefined, next: Follower | undefined): Reason[] {
  if (late === undefined || next === undefined) return [];
  return [{ rule: 'cover-cut.short', saw: { asked: next.cutBy }, limit: late, source: 'house default' }];
}

/** A living cover that has to go before spring growth has begun has gained little: said, so that it can be replanned. */
function littleGrowth(input: PracticeInput, parts: readonly CoverPart[], sown: Day, latest: Day): Reason[] {
  const { climate } = input;
  if (!parts.some(({ cover }) => winterFate(cover, input) !== 'dies')) return [];
  const grown = springGrowthFrom(climate, seasonOf(climate.seasonTurn, sown) + 1);
  const early = grown !== undefined && latest > midwinterAfter(climate, sown) && latest <= grown;
  if (!early) return [];
  const freeze = addDays(grown, -LITTLE_GROWTH_DAYS);
  return [{ rule: LITTLE_GROWTH, saw: { freeze }, limit: latest, source: 'house default' }];
}

/** The reasons that speak against a stand before its seed is bought. */
export function doubtsOf(cut: CutWindow | undefined): Reason[] {
  return cut?.reasons.filter(({ rule }) => rule === LITTLE_GROWTH) ?? [];
}

/** The day up to which a living cover has little spring growth; nothing where no freeze date is known. */
export function springGrowthFrom(climate: Climate, season: number): Day | undefined {
  const freeze = freezeDay(climate, { event: 'last-spring', limitF: 28, season, chancePercent: 50 });
  return freeze === undefined ? undefined : addDays(freeze, LITTLE_GROWTH_DAYS);
}

function whichDecides(bloom: BloomClose | undefined, next: Follower | undefined): Reason[] {
  if (bloom === undefined || next === undefined) return [];
  const decides = bloom.close <= next.cutBy ? 'the plant' : 'what follows';
  return [
    {
      rule: 'cover-cut.decides',
      saw: { decides, bloom: bloom.close, next: next.cutBy },
      limit: earliestOf(bloom.close, next.cutBy),
      source: 'common practice',
    },
  ];
}
