/**
 * Whether a crop still has a day to go in: between today and its last good one, in a bed that is there, and between the
 * crops that the gardener has grown or planned in the seasons around it.
 */
import type { Bed } from '../../garden/garden.ts';
import { thereFrom } from '../../garden/planned-beds.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { type Day, latestOf } from '../../measures/days.ts';
import { areaOf, type CropSpan, cropSpans, cropYear, isPermanent } from '../../practices/bed-timeline.ts';
import type { Reason } from '../../practices/draft.ts';
import type { PracticeInput } from '../../practices/practice.ts';
import { type RotationAsk, withoutPlans } from '../../practices/rotation-plan/garden-problem.ts';
import type { PlanWish, RotationProblem, Shut } from '../../practices/rotation-plan/problem.ts';
import { LEAST_PIECE_M2 } from '../../practices/rotation-plan/rules.ts';
import { firstSeasonOf } from '../../practices/seasons.ts';
import { stands, standsUntil, wantedBy } from '../../practices/side-by-side.ts';
import { type Growing, growing, grownFrom } from './growing.ts';

/** A problem with what each bed has no day for. */
export function withOpenDays<Problem extends Pick<RotationProblem, 'seasons' | 'beds' | 'wishes'>>(
  input: PracticeInput,
  { anew }: Pick<RotationAsk, 'anew'>,
  problem: Problem,
): Problem {
  const { climate } = input;
  const garden = anew ? withoutPlans(input.garden, climate, problem.seasons) : input.garden;
  const beds = problem.beds.map((planned) => {
    const bed = garden.beds.find(({ id }) => id === planned.id);
    const spans = cropSpans(garden, planned.id, climate);
    const shut = bed === undefined ? [] : shutIn(input, bed, spans, problem.wishes);
    return shut.length > 0 ? { ...planned, shut } : planned;
  });
  return { ...problem, beds };
}

/** The wishes that a bed has no day for, each with why. Where no dates are known only beds not there yet are shut. */
function shutIn(input: PracticeInput, bed: Bed, spans: readonly CropSpan[], wishes: readonly PlanWish[]): Shut[] {
  return wishes.flatMap((wish) => {
    const why = shutTo(input, bed, spans, wish);
    return why === undefined ? [] : [{ cropId: wish.cropId, season: wish.season, why }];
  });
}

function shutTo(input: PracticeInput, bed: Bed, spans: readonly CropSpan[], wish: PlanWish): Shut['why'] | undefined {
  const crop = vegetableById(wish.cropId);
  const name = crop.name.toLowerCase();
  const growth = growing(input, crop, wish.season);
  const there = thereFrom(bed);
  if (growth === undefined) {
    const first = (firstSeasonOf(input.climate, bed) ?? wish.season) + (crop.maturityFrom === 'fall-set' ? 1 : 0);
    return there !== undefined && wish.season < first ? tooLate({ crop: name, there }) : undefined;
  }
  const soonest = latestOf(input.today, there ?? input.today);
  if (growth.latest < soonest) {
    const isBedLate = there !== undefined && growth.latest >= input.today;
    return tooLate({ crop: name, last: growth.latest, ...(isBedLate ? { there } : {}) });
  }
  const others = spans.filter((span) => isOfAnotherSeason(input, span, wish.season));
  const first = latestOf(growth.earliest, soonest);
  if (isFreeBetween(input, bed, others, { wish, growth, first })) return undefined;
  const before = others.find((span) => span.from <= growth.latest && stands(span, growth.latest));
  const next = others.find(({ from }) => from > first);
  const [earlier, later] =
    before === undefined ? [name, next?.crop.name.toLowerCase() ?? name] : [nameOf(before), name];
  return { rule: 'rotation-plan.still-stands', saw: { before: earlier, crop: later }, source: "the garden's climate" };
}

function nameOf({ crop }: CropSpan): string {
  return crop.name.toLowerCase();
}

function tooLate(saw: Reason['saw']): Shut['why'] {
  return { rule: 'rotation-plan.too-late', saw, source: "the garden's climate" };
}

/** Crops of the season itself, and lasting ones that are in by then, are a matter of room and not of days. */
function isOfAnotherSeason({ climate }: PracticeInput, span: CropSpan, season: number): boolean {
  const own = cropYear(span, climate);
  return isPermanent(span.crop) && span.to === undefined ? own > season : own !== season;
}

/** Whether on any day there is room for the least of it until its quickest kinds may be out. */
function isFreeBetween(
  input: PracticeInput,
  bed: Bed,
  others: readonly CropSpan[],
  { wish, growth, first }: { wish: PlanWish; growth: Growing; first: Day },
): boolean {
  if (others.length === 0) return true;
  const ends = others.flatMap((span) => standsUntil(span) ?? []);
  const days = [first, ...ends.filter((day) => day > first && day <= growth.latest)];
  return days.some((day) => {
    const grown = grownFrom(input, growth, { bedId: bed.id, day });
    const until = standsUntil(grown);
    const here = withLeastShare(grown, wish);
    const entries = others
      .map(({ from }) => from)
      .filter((from) => from > day && (until === undefined || from < until));
    return [day, ...entries].every((on) => {
      const standing = others.filter((span) => stands(span, on));
      return wantedBy([...standing, here], areaOf(bed)) <= areaOf(bed) + ROUNDING_M2 * (standing.length + 1);
    });
  });
}

/** What each share may be out by where it was written to the hundredth of a square metre. */
const ROUNDING_M2 = 0.01;

function withLeastShare(span: CropSpan, { amount }: PlanWish): CropSpan {
  if ('beds' in amount) return span;
  return { ...span, planting: { ...span.planting, areaM2: Math.min(LEAST_PIECE_M2, amount.areaM2) } };
}
