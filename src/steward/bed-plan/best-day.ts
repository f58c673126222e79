/**
 * The best day for a crop in a bed among those its window lets it in, and the covers it costs there.
 */
import { seasonOf } from '../../climate/season.ts';
import type { Bed, Garden } from '../../garden/garden.ts';
import type { Vegetable } from '../../handbook/shapes/vegetable.ts';
import { addDays, type Day, daysBetween, earliestOf, latestOf } from '../../measures/days.ts';
import { standSpans } from '../../practices/cover-cropping/fit/stand-spans.ts';
import { coverName } from '../../practices/covers.ts';
import type { How } from '../../practices/planting/first-day.ts';
import type { PracticeInput } from '../../practices/practice.ts';
import { readyOdds, textureOf } from '../../practices/soil-class.ts';
import type { Growing } from '../rotation-plan/growing.ts';

/** Days after the best of spring that a cool-season kind still goes in as a spring crop. House default. */
const STILL_SPRING_DAYS = 21;
/** Days before its usual cut from which a cover that is cut has lost most of its growth. House default. */
const CUT_SHORT_DAYS = 28;

/**
 * A cool-season kind whose best days of spring are past goes in with its last sowings, towards autumn: sown into summer it
 * bolts or turns coarse. Other kinds go in as soon as the bed is free for them. A kind of spring that cannot wait for the
 * cover that stands there leaves it as long as its best days last; without one the soil of the bed is fit to work first.
 */
export function bestDay(input: PracticeInput, bed: Bed, window: Growing, free: Day): Day {
  const { crop, earliest, latest, bestUntil, lateFrom } = window;
  const isCool = crop.frostClass === 'hardy' || crop.frostClass === 'half-hardy';
  if (free > bestUntil) {
    const last = lateFrom === undefined ? undefined : addDays(lateFrom, -1);
    const isSummer = daysBetween(bestUntil, free) > STILL_SPRING_DAYS;
    return isCool && isSummer && last !== undefined && last > free ? last : free;
  }
  if (!isCool) return free;
  const stands = standSpans(input, bed.id).some(
    ({ from, ends }) => from < free && (ends === undefined || ends >= free),
  );
  const wanted = stands ? bestUntil : latestOf(free, fitFrom(input, bed, free) ?? free);
  return latestOf(earliest, earliestOf(wanted, latestOf(bestUntil, free), latest));
}

/** The day of a season's spring from which the soil of a bed is usually fit to work. */
function fitFrom({ garden, climate }: PracticeInput, bed: Bed, day: Day): Day | undefined {
  return readyOdds({ garden, climate }, textureOf(garden, bed), seasonOf(climate.seasonTurn, day)).median;
}

/** A cover that a crop costs. */
export interface CoverCost {
  /** The cover's name in the middle of a sentence. */
  cover: string;
  /** The day by which it is over where it is cut sooner than it would be; absent where it is not sown at all. */
  cutBy?: Day;
}

/** A crop that goes in on a day. */
interface GoingIn {
  crop: Vegetable;
  how: How;
  day: Day;
}

/** The covers of a bed that a crop would leave no room for, or end before their time. */
export function coverCosts(input: PracticeInput, bed: Bed, going: GoingIn): CoverCost[] {
  const before = standSpans(input, bed.id);
  if (before.length === 0) return [];
  const after = standSpans({ ...input, garden: withCrop(input.garden, bed, going) }, bed.id);
  return before.flatMap((span): CoverCost[] => {
    const then = after.find(({ stand }) => stand.id === span.stand.id);
    const cover = coverName(span.stand.coverId);
    const isSown = span.sow === undefined || then?.sow !== undefined;
    if (then === undefined || !isSown) return [{ cover }];
    const { ends } = then;
    return ends !== undefined && isShort(ends, span.ends) ? [{ cover, cutBy: ends }] : [];
  });
}

function isShort(ends: Day, usual: Day | undefined): boolean {
  return usual === undefined || daysBetween(ends, usual) > CUT_SHORT_DAYS;
}

function withCrop(garden: Garden, bed: Bed, { crop, how, day }: GoingIn): Garden {
  const planting = { id: `${crop.id} ${day}`, bedId: bed.id, cropId: crop.id, start: { how, day, happened: false } };
  return { ...garden, plantings: [...garden.plantings, planting] };
}
