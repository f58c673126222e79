/**
 * A proposal as a fact: what is planned anew, and what it takes the place of.
 */
import type { Fact } from '../../garden/facts.ts';
import type { Planting } from '../../garden/garden.ts';
import { slug } from '../../garden/ids.ts';
import { planCropsIn } from '../../garden/plan-crops.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { cropYear, isPermanent } from '../../practices/bed-timeline.ts';
import type { PracticeInput } from '../../practices/practice.ts';
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
}

/** What a share of a bed may be short of the whole where it was read to the hundredth. */
const HUNDREDTH_M2 = 0.006;

/** Why crops of a proposal are left out, in words. */
export const LEFT_OUT = 'no day is known for it here, none is left this season, or its bed is not free in time';

/** The fact that takes a proposal in. Where it was made anew it takes the place of all that was planned for its seasons. */
export function takenPlan(input: PracticeInput, proposal: RotationProposal, anew: boolean): TakenPlan {
  const planned = anew ? plannedFor(input, proposal) : [];
  const same = (planting: Planting, { bedId, cropId }: Placement): boolean =>
    planting.bedId === bedId && planting.cropId === cropId;
  const fresh = proposal.placements.filter((place) => !planned.some((planting) => same(planting, place)));
  const dropped = planned
    .filter((planting) => !proposal.placements.some((place) => same(planting, place)))
    .map(({ id, bedId, cropId }) => ({ id, bedId, cropId }));
  const left = input.garden.plantings.filter(({ id }) => !dropped.some((row) => row.id === id));
  const taken = new Set(left.map(({ id }) => id));
  const plantings = fresh.flatMap(({ bedId, cropId, areaM2, start }) => {
    if (start === undefined) return [];
    const id = plantingId({ bedId, cropId, day: start.day }, taken);
    taken.add(id);
    const bed = proposal.problem.beds.find((each) => each.id === bedId);
    const isWhole = bed === undefined || areaM2 >= bed.areaM2 - HUNDREDTH_M2;
    return [{ id, bedId, cropId, start, ...(isWhole ? {} : { areaM2 }) }];
  });
  const fact = withoutCrowded(input, { kind: 'plantings-planned', plantings, dropped });
  const isTaken = ({ bedId, cropId, start }: DatedPlacement): boolean =>
    fact.plantings.some((row) => row.bedId === bedId && row.cropId === cropId && row.start.day === start?.day);
  return { fact, left: fresh.filter((place) => !isTaken(place)) };
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

/** What the gardener has only planned for the seasons of a proposal. */
function plannedFor({ garden, climate }: PracticeInput, { problem }: RotationProposal): Planting[] {
  return garden.plantings.filter(({ cropId, start }) => {
    const crop = vegetableById(cropId);
    const season = cropYear({ crop, from: start.day }, climate);
    return !start.happened && !isPermanent(crop) && problem.seasons.includes(season);
  });
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
