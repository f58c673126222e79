/**
 * What is wished, what of it is still to be placed, and what of that a plan gives.
 */
import type { RotationGroup } from '../../handbook/shapes/plant.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import type { Amount, Placement, PlanBed, PlanWish, RotationProblem } from './problem.ts';
import { MET_SHARE } from './rules.ts';

/** A wish still to be placed, and how much of it a plan gives. */
export interface WishMet {
  wish: PlanWish;
  given: Amount;
}

/** Beds that a wish, or the wishes of one family in a season, can do with. */
export interface Need {
  /** The crop, or the family, in words. */
  name: string;
  season: number;
  cropIds: readonly string[];
  beds: number;
}

/** A sum of areas may come out a hair below itself. */
const ROUNDING_M2 = 1e-6;
/** A share made of areas read to the hundredth may come out so much short. */
const ROUNDING_SHARE = 0.02;
/** Areas of a plan are given to the hundredth of a square metre. */
const HUNDREDTH_M2 = 0.006;

/** Wishes less what the gardener has planned of them already; those that are met by it are left out. */
export function openWishes({ wishes, beds }: RotationProblem): PlanWish[] {
  return wishes.flatMap((wish) => {
    const amount = less(
      wish.amount,
      beds.flatMap((bed) => settledShare(bed, wish)),
    );
    return amount === undefined ? [] : [{ ...wish, amount }];
  });
}

/** What the gardener has planned of a wish in a bed: several sowings of it lie in the same place, unless they have shares. */
function settledShare(
  { areaM2: bedM2, carried }: PlanBed,
  { cropId, season }: PlanWish,
): { areaM2: number; bedM2: number }[] {
  const here = carried.filter((row) => row.season === season && row.cropId === cropId);
  if (here.length === 0) return [];
  const areaM2 = here.reduce((sum, { areaM2: share = bedM2 }) => sum + share, 0);
  return [{ areaM2: Math.min(bedM2, areaM2), bedM2 }];
}

function less(amount: Amount, settled: readonly { areaM2: number; bedM2: number }[]): Amount | undefined {
  if ('beds' in amount) {
    const whole = settled.filter(({ areaM2, bedM2 }) => areaM2 >= bedM2 - HUNDREDTH_M2).length;
    return amount.beds > whole ? { beds: amount.beds - whole } : undefined;
  }
  const areaM2 = amount.areaM2 - settled.reduce((sum, share) => sum + share.areaM2, 0);
  return areaM2 > (1 - MET_SHARE) * amount.areaM2 + ROUNDING_M2 ? { areaM2 } : undefined;
}

/** What a plan gives of each wish still to be placed; of whole beds only whole ones count. */
export function wishesMet(problem: RotationProblem, placements: readonly Placement[]): WishMet[] {
  return openWishes(problem).map((wish) => {
    const here = placements.filter(({ cropId, season }) => cropId === wish.cropId && season === wish.season);
    if ('beds' in wish.amount) {
      const whole = here.filter(({ bedId, areaM2 }) =>
        problem.beds.some((bed) => bed.id === bedId && areaM2 >= bed.areaM2 - HUNDREDTH_M2),
      );
      return { wish, given: { beds: whole.length } };
    }
    const areaM2 = here.reduce((sum, place) => sum + place.areaM2, 0);
    return { wish, given: { areaM2 } };
  });
}

/** So much of a wish that it counts as met, in its own unit: all its beds, or nearly all its square metres. */
export function enoughOf({ amount }: PlanWish): number {
  return 'beds' in amount ? amount.beds : MET_SHARE * amount.areaM2;
}

/** The share that is lacking for a wish to count as met, 0–1. */
export function lacking({ wish, given }: WishMet): number {
  const amount = 'beds' in given ? given.beds : given.areaM2;
  return Math.max(0, 1 - amount / enoughOf(wish));
}

/** Whether so much of a wish is given that it counts as met; areas are read to the hundredth. */
export function isMet(met: WishMet): boolean {
  return lacking(met) <= ROUNDING_SHARE;
}

/** The beds each wish can do with. */
export function wishNeeds(problem: RotationProblem): Need[] {
  return openWishes(problem).map(({ cropId, season, amount }) => ({
    name: vegetableById(cropId).name.toLowerCase(),
    season,
    cropIds: [cropId],
    beds: bedsFor(problem, [amount]),
  }));
}

/** The beds each family can do with in each season, all its wishes together. */
export function familyNeeds(problem: RotationProblem): Need[] {
  const families = new Map<string, { group: RotationGroup; season: number; wishes: PlanWish[] }>();
  for (const wish of openWishes(problem)) {
    const group = vegetableById(wish.cropId).rotationGroup;
    const key = `${wish.season} ${group}`;
    const wishes = [...(families.get(key)?.wishes ?? []), wish];
    families.set(key, { group, season: wish.season, wishes });
  }
  return [...families.values()].map(({ group, season, wishes }) => ({
    name: group,
    season,
    cropIds: wishes.map(({ cropId }) => cropId),
    beds: bedsFor(
      problem,
      wishes.map(({ amount }) => amount),
    ),
  }));
}

/** The fewest beds that amounts could lie in together: whole beds, and one heap of square metres in the largest. */
export function bedsFor({ beds }: RotationProblem, amounts: readonly Amount[]): number {
  const whole = amounts.reduce((sum, amount) => sum + ('beds' in amount ? amount.beds : 0), 0);
  const areaM2 = amounts.reduce((sum, amount) => sum + ('beds' in amount ? 0 : amount.areaM2), 0);
  return (
    whole +
    fewestBeds(
      beds.filter(({ lasting }) => lasting === undefined),
      areaM2,
    )
  );
}

/** The fewest beds that hold an area nearly whole; all of them where even they do not. */
function fewestBeds(beds: readonly PlanBed[], areaM2: number): number {
  const sizes = beds.map((bed) => bed.areaM2).sort((a, b) => b - a);
  let [held, count] = [0, 0];
  for (const size of sizes) {
    if (held >= MET_SHARE * areaM2 - ROUNDING_M2) break;
    held += size;
    count += 1;
  }
  return count;
}
