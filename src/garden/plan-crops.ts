/**
 * Crops meant for beds: what is planned anew, and what is taken out of the plan, covers included. What is in the ground stays as it is.
 */
import type { Fact } from './facts.ts';
import type { Garden, Planting } from './garden.ts';
import { hasBed, withoutPlanned } from './plan-covers.ts';
import { asUnsaid } from './unsaid.ts';
import { withoutAbsent } from './without-absent.ts';

type PlantingsPlanned = Extract<Fact, { kind: 'plantings-planned' }>;

/**
 * The garden with a plan of crops. What was skipped, pinned or put off of a planting of the same id, as it was planned before, was
 * said of that one. A planting the garden has already, from its file, stays as it is told there.
 */
export function planCropsIn(garden: Garden, { plantings, dropped, coversDropped = [] }: PlantingsPlanned): Garden {
  const cleared = withoutPlanned(
    withoutPlantings(
      garden,
      dropped.map(({ id }) => id),
    ),
    coversDropped.map(({ standId }) => standId),
  );
  const known = new Set(cleared.plantings.map(({ id }) => id));
  const meant = plantings.filter(({ id, bedId }) => !known.has(id) && hasBed(cleared, bedId)).map(meantPlanting);
  if (meant.length === 0) return cleared;
  return asAllUnsaid({ ...cleared, plantings: [...cleared.plantings, ...meant] }, meant);
}

function meantPlanting({ start, lastHarvest, ...row }: PlantingsPlanned['plantings'][number]): Planting {
  return withoutAbsent({
    ...row,
    start: { ...start, happened: false },
    lastHarvest: lastHarvest === undefined ? undefined : { day: lastHarvest, happened: false },
  });
}

/** The garden without those plantings among some that never went in, nor what was skipped, pinned or put off of them. */
function withoutPlantings(garden: Garden, ids: readonly string[]): Garden {
  const leaving = garden.plantings.filter(({ id, start }) => !start.happened && ids.includes(id));
  if (leaving.length === 0) return garden;
  const left = garden.plantings.filter((planting) => !leaving.includes(planting));
  return asAllUnsaid({ ...garden, plantings: left }, leaving);
}

function asAllUnsaid(garden: Garden, plantings: readonly Planting[]): Garden {
  return plantings.reduce<Garden>((state, { id }) => asUnsaid(state, [`planting:${id}`]), garden);
}
