/**
 * The parts of a plan that are placed anew one after another, all else held, where it is too large to be sought whole.
 */
import { vegetableById } from '../../handbook/vegetables.ts';
import type { PlanBed, PlanWish, RotationProblem } from './problem.ts';
import { openWishes } from './wishes.ts';

/** Whether a wish may be placed anew in a bed. */
export type Part = (bed: PlanBed, wish: PlanWish) => boolean;

/**
 * Families of one season in all beds, in turn with those next to them in the list; then a few beds through all seasons.
 *
 * @param most choices of a crop for a bed and season that a part may have; it has two families, or two beds, in any case
 */
export function partsOf(problem: RotationProblem, most: number): Part[] {
  const wishes = openWishes(problem);
  const ofSeasons = problem.seasons.flatMap((season) =>
    familiesOf(wishes.filter((wish) => wish.season === season)).map((_family, at, all): Part => {
      const open = new Set(taken(turned(all, at), most / problem.beds.length).flatMap((family) => family.map(keyOf)));
      return (_bed, wish) => open.has(keyOf(wish));
    }),
  );
  const together = Math.max(LEAST_TOGETHER, Math.floor(most / wishes.length));
  const ofBeds = problem.beds.flatMap((_, at): Part[] => {
    const open = new Set(problem.beds.slice(at, at + together).map(({ id }) => id));
    return at % together === 0 ? [(bed) => open.has(bed.id)] : [];
  });
  return [...ofSeasons, ...ofBeds];
}

function keyOf({ season, cropId }: PlanWish): string {
  return `${season} ${cropId}`;
}

const LEAST_TOGETHER = 2;

function familiesOf(wishes: readonly PlanWish[]): PlanWish[][] {
  const groups = new Map<string, PlanWish[]>();
  for (const wish of wishes) {
    const group = vegetableById(wish.cropId).rotationGroup;
    groups.set(group, [...(groups.get(group) ?? []), wish]);
  }
  return [...groups.values()];
}

/** As many families, from the first on, as have no more wishes than that. */
function taken(families: readonly PlanWish[][], most: number): PlanWish[][] {
  let count = 0;
  return families.filter((family, at) => {
    count += family.length;
    return at < LEAST_TOGETHER || count <= most;
  });
}

function turned<Item>(items: readonly Item[], by: number): Item[] {
  return [...items.slice(by), ...items.slice(0, by)];
}
