/**
 * What a rotation is planned from: beds with all they have carried, the crops wanted, and what may lie between two crops.
 */
import type { Vegetable } from '../../handbook/shapes.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import type { Reason } from '../draft.ts';

/** A crop of a bed that is not for the planner to move: it stood there, or the gardener has planned it. */
export interface Carried {
  season: number;
  cropId: string;
  /** The share of the bed it has, m²; absent for the whole. */
  areaM2?: number;
}

/** A crop that a disease keeps out of a bed in a season, and why. */
export interface ClosedTo {
  cropId: string;
  season: number;
  disease: string;
  why: Reason;
}

/** A cover that stands, or is meant to stand, in a bed ahead of a season's crops: one entry a kind in it. */
export interface CoverAhead {
  /** The season of the crops that follow it. */
  season: number;
  coverId: string;
}

/** A bed to be planned. */
export interface PlanBed {
  id: string;
  name: string;
  areaM2: number;
  /** The lasting crop that holds it, where one does. */
  lasting?: string;
  /** Past seasons and those the gardener has planned, in the order the crops went in. */
  carried: readonly Carried[];
  closed: readonly ClosedTo[];
  covers: readonly CoverAhead[];
  /** The oldest season a crop is known of. */
  knownSince?: number;
  /** The first season whose crops it can hold; absent for a bed that always was there. */
  thereFrom?: number;
}

/** So many whole beds, or so many square metres. */
export type Amount = { beds: number } | { areaM2: number };

/** A crop wanted in a season. At most one wish for each crop of a season. */
export interface PlanWish {
  cropId: string;
  season: number;
  amount: Amount;
}

/** What the time between two crops of a bed allows. */
export interface Between {
  /** A cover with a legume in it that could stand there; 'none', or 'unknown' where no dates are known. */
  legume: { coverId: string } | 'none' | 'unknown';
  /** Whether the first still stands when the second has to go in. */
  stillStands: boolean;
}

/** A rotation to be planned: all plain data, beds and wishes in a fixed order. */
export interface RotationProblem {
  /** The seasons to plan, in order without a gap. */
  seasons: readonly [number, ...number[]];
  /** Each season as a gardener calls it. */
  seasonNames: Readonly<Record<number, string>>;
  beds: readonly PlanBed[];
  wishes: readonly PlanWish[];
  /** By {@link betweenKey}; what is not in it is not known. */
  between: Readonly<Record<string, Between>>;
}

/** A crop in a bed in a season: a part of the plan. */
export interface Placement {
  bedId: string;
  season: number;
  cropId: string;
  areaM2: number;
}

/** Under what a pair of crops stands in the table of what lies between. */
export function betweenKey(before: string, next: string): string {
  return `${before}>${next}`;
}

const UNKNOWN: Between = { legume: 'unknown', stillStands: false };

/** What lies between two crops. */
export function betweenOf({ between }: RotationProblem, before: string, next: string): Between {
  return between[betweenKey(before, next)] ?? UNKNOWN;
}

/** A crop in a bed as the rules see it. */
export interface Entry {
  season: number;
  crop: Vegetable;
  /** Past, planned by the gardener, or proposed. */
  how: 'past' | 'settled' | 'proposed';
  /** Absent for what the gardener planned or grew: it holds the whole bed. */
  areaM2?: number;
}

/** Everything in a bed, oldest first: what it carried, then what is proposed, in the order of their names. */
export function entriesOf(
  { seasons: [first] }: RotationProblem,
  bed: PlanBed,
  placements: readonly Placement[],
): Entry[] {
  const carried = bed.carried.map(
    ({ season, cropId }): Entry => ({
      season,
      crop: vegetableById(cropId),
      how: season < first ? 'past' : 'settled',
    }),
  );
  const proposed = placements
    .filter(({ bedId }) => bedId === bed.id)
    .sort((a, b) => (a.cropId < b.cropId ? -1 : 1))
    .map(({ season, cropId, areaM2 }): Entry => ({ season, crop: vegetableById(cropId), how: 'proposed', areaM2 }));
  return [...carried, ...proposed].sort((a, b) => a.season - b.season);
}

/**
 * What stood in a bed ahead of a season's crops: of what the gardener planned or grew the last to go in, else all that is
 * proposed, since those share the bed side by side.
 */
export function aheadOf(entries: readonly Entry[], season: number): Entry[] {
  const before = entries.filter((entry) => entry.season === season - 1);
  const carried = before.filter(({ how }) => how !== 'proposed');
  return carried.length > 0 ? carried.slice(-1) : before;
}
