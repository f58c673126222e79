/**
 * Rotations small enough to work out by hand.
 */
import type {
  Amount,
  Between,
  Carried,
  Placement,
  PlanBed,
  PlanWish,
  RotationProblem,
} from '../../../src/practices/rotation-plan/problem.ts';

/** A bed of 3 m² whose past is known since 2020, unless said otherwise. */
export function planBed(id: string, parts: Partial<PlanBed> = {}): PlanBed {
  return {
    id,
    name: `Bed ${id.toUpperCase()}`,
    areaM2: 3,
    carried: [],
    closed: [],
    covers: [],
    knownSince: 2020,
    ...parts,
  };
}

/** A crop wanted in 2027, unless said otherwise. */
export function wish(cropId: string, amount: Amount, season = 2027): PlanWish {
  return { cropId, season, amount };
}

/** Crops of a bed by season. */
export function carried(crops: Readonly<Record<number, string>>): Carried[] {
  return Object.entries(crops).map(([season, cropId]) => ({ season: Number(season), cropId }));
}

/** A crop in a bed of 3 m² in 2027, unless said otherwise. */
export function placed(bedId: string, cropId: string, season = 2027, areaM2 = 3): Placement {
  return { bedId, season, cropId, areaM2 };
}

/** A problem of 2027 alone, unless given more seasons. */
export function rotationProblem(parts: {
  beds: readonly PlanBed[];
  wishes?: readonly PlanWish[];
  seasons?: readonly [number, ...number[]];
  between?: Readonly<Record<string, Between>>;
}): RotationProblem {
  const { seasons = [2027] } = parts;
  const named = Array.from({ length: 40 }, (_, at) => 2000 + at);
  return {
    wishes: [],
    between: {},
    seasonNames: Object.fromEntries(named.map((season) => [season, String(season)])),
    ...parts,
    seasons,
  };
}
