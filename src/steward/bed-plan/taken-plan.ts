/**
 * A proposal as a fact: what is planned anew, and what it takes the place of.
 */
import type { Fact } from '../../garden/facts.ts';
import type { Planting } from '../../garden/garden.ts';
import { slug } from '../../garden/ids.ts';
import { planCropsIn } from '../../garden/plan-crops.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { cropYear } from '../../practices/bed-timeline.ts';
import { coversRefused } from '../../practices/catalogue.ts';
import type { PracticeInput } from '../../practices/practice.ts';
import { plannedFor } from '../../practices/rotation-plan/garden-problem.ts';
import type { Placement } from '../../practices/rotation-plan/problem.ts';
import { crowdsIn } from '../../practices/side-by-side.ts';
import type { DatedPlacement } from '../rotation-plan/placement-dates.ts';
import type { RotationProposal } from '../rotation-plan/propose.ts';

/** Crops planned and taken out of the plan, as one entry of History. */
export type CropPlan = Extract<Fact, { kind: 'plantings-planned' }>;

/** A proposal to be taken, and what of it cannot be. */
export interface TakenPlan {
  fact: CropPlan;
  /** Crops left out: the climate tells no day for them, or no more this season, or their bed is not free in time. */
  left: readonly Placement[];
  /** Seasons that something was planned for, and for which nothing would be. */
  emptied: readonly number[];
}

/** What a share of a bed may be short of the whole where it was read to the hundredth. */
const HUNDREDTH_M2 = 0.006;

/** Why crops of a proposal are left out, in words. */
export const LEFT_OUT = 'no day is known for it here, none is left this season, or its bed is not free in time';

/** The fact that takes a proposal in. Where it was made anew it takes the place of all that was planned for its seasons. */
export function takenPlan(input: PracticeInput, proposal: RotationProposal, anew: boolean): TakenPlan {
  const { garden, climate } = input;
  const planned = anew ? plannedFor(garden, climate, proposal.problem.seasons) : [];
  const same = (planting: Planting, place: DatedPlacement): boolean => isSame(input, proposal, planting, place);
  const fresh = proposal.placements.filter((place) => !planned.some((planting) => same(planting, place)));
  const dropped = planned
    .filter((planting) => !proposal.placements.some((place) => same(planting, place)))
    .map(({ id, bedId, cropId }) => ({ id, bedId, cropId }));
  const kept = garden.plantings.filter(({ id }) => !dropped.some((row) => row.id === id));
  const taken = new Set(kept.map(({ id }) => id));
  const plantings = fresh.flatMap((place) => {
    const { bedId, cropId, areaM2, start } = place;
    if (start === undefined) return [];
    const id = plantingId({ bedId, cropId, day: start.day }, taken);
    taken.add(id);
    return [{ id, bedId, cropId, start, ...(isAll(areaM2, bedArea(proposal, bedId)) ? {} : { areaM2 }) }];
  });
  const fact = withCovers(input, withoutCrowded(input, { kind: 'plantings-planned', plantings, dropped }));
  const isTaken = ({ bedId, cropId, start }: DatedPlacement): boolean =>
    fact.plantings.some((row) => row.bedId === bedId && row.cropId === cropId && row.start.day === start?.day);
  const left = fresh.filter((place) => !isTaken(place));
  const after = planCropsIn(garden, fact);
  const emptied = proposal.problem.seasons.filter(
    (season) => plannedFor(garden, climate, [season]).length > 0 && plannedFor(after, climate, [season]).length === 0,
  );
  return { fact, left, emptied };
}

/**
 * Whether a crop is planned already as it is proposed: there, in that season, with that share of the bed. One of two that
 * follow each other has to keep its day as well, or it would be in the way of the other.
 */
function isSame(
  { climate }: PracticeInput,
  proposal: RotationProposal,
  { bedId, cropId, start, areaM2 }: Planting,
  place: DatedPlacement,
): boolean {
  const bedM2 = bedArea(proposal, bedId);
  const isThere =
    bedId === place.bedId &&
    cropId === place.cropId &&
    cropYear({ crop: vegetableById(cropId), from: start.day }, climate) === place.season &&
    Math.abs(Math.min(areaM2 ?? bedM2, bedM2) - place.areaM2) <= HUNDREDTH_M2;
  const isOneOfTwo = proposal.placements.some(
    (each) => each.bedId === bedId && each.season === place.season && each.after !== undefined,
  );
  return isThere && (!isOneOfTwo || start.day === place.start?.day);
}

function bedArea({ problem }: RotationProposal, bedId: string): number {
  return problem.beds.find(({ id }) => id === bedId)?.areaM2 ?? 0;
}

function isAll(areaM2: number, bedM2: number): boolean {
  return areaM2 >= bedM2 - HUNDREDTH_M2;
}

/** The plan without crops that would have to go in while others hold their bed. */
function withoutCrowded({ garden, climate }: PracticeInput, fact: CropPlan): CropPlan {
  const after = planCropsIn(garden, fact);
  const isNew = (id: string): boolean => fact.plantings.some((row) => row.id === id);
  const crowded = after.beds.flatMap((bed) =>
    crowdsIn(after, bed, climate).flatMap(({ next, standing }) => {
      const ids = standing.map(({ planting }) => planting.id).filter(isNew);
      return isNew(next.planting.id) ? [next.planting.id] : ids;
    }),
  );
  return { ...fact, plantings: fact.plantings.filter(({ id }) => !crowded.includes(id)) };
}

/** The plan with the planned covers that could be sown before it and not after it, taken out. */
function withCovers(input: PracticeInput, fact: CropPlan): CropPlan {
  const before = new Set(coversRefused(input));
  const refused = coversRefused({ ...input, garden: planCropsIn(input.garden, fact) });
  const coversDropped = input.garden.stands
    .filter(({ id }) => refused.includes(id) && !before.has(id))
    .map(({ id, bedId, coverId }) => ({ standId: id, bedId, coverId }));
  return coversDropped.length === 0 ? fact : { ...fact, coversDropped };
}

/** The id a planting of the garden file would be given, or the next that is free. */
export function plantingId(
  { bedId, cropId, day }: { bedId: string; cropId: string; day: string },
  taken: ReadonlySet<string>,
): string {
  const plain = slug(`${bedId} ${cropId} ${day}`);
  let id = plain;
  for (let count = 2; taken.has(id); count += 1) id = `${plain}-${count}`;
  return id;
}
