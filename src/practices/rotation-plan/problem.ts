/**
 * What a rotation is planned from: beds with all they have carried, the crops wanted, and what may lie between two crops.
 */
import type { Vegetable } from '../../handbook/shapes/vegetable.ts';
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

/** A crop that a bed has no day for in a season, and why: it is too late for it, or other crops stand in its way. */
export interface Shut {
  cropId: string;
  season: number;
  why: Reason & { rule: 'rotation-plan.too-late' | 'rotation-plan.still-stands' };
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
  /** Wishes that it has no day for; absent where it has one for all. */
  shut?: readonly Shut[];
  covers: readonly CoverAhead[];
  /** Square metres that what is planned for a season holds at the most at a time; absent where the shares tell it. */
  held?: Readonly<Record<number, number>>;
  /** The oldest season a crop is known of. */
  knownSince?: number;
  /** The first season most of whose crops it can hold; absent for a bed that always was there. */
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
  /** Days to spare where the second may still go in after the first in one season; absent where not, or no dates are known. */
  follows?: number;
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
  /** The crop whose ground it takes in the same season, once that is out. */
  after?: string;
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
  /** Its share of the bed; absent where it holds the whole. */
  areaM2?: number;
  /** The crop it follows in the same season. */
  after?: string;
}

/** Everything in a bed, oldest first: what it carried, then what is proposed, in the order of their names. */
export function entriesOf(
  { seasons: [first] }: RotationProblem,
  bed: PlanBed,
  placements: readonly Placement[],
): Entry[] {
  const carried = bed.carried.map(
    ({ season, cropId, areaM2 }): Entry => ({
      season,
      crop: vegetableById(cropId),
      how: season < first ? 'past' : 'settled',
      ...(areaM2 === undefined ? {} : { areaM2 }),
    }),
  );
  const proposed = placements
    .filter(({ bedId }) => bedId === bed.id)
    .sort((a, b) => (a.cropId < b.cropId ? -1 : 1))
    .sort((a, b) => Number(a.after !== undefined) - Number(b.after !== undefined))
    .map(({ bedId: _, cropId, ...rest }): Entry => ({ crop: vegetableById(cropId), how: 'proposed', ...rest }));
  return [...carried, ...proposed].sort((a, b) => a.season - b.season);
}

/**
 * What stood in a bed ahead of a season's crops: of what the gardener planned or grew the last to hold the whole bed and the
 * shares that went in after it, and all that is proposed and not followed by another in its season, side by side.
 */
export function aheadOf(entries: readonly Entry[], season: number): Entry[] {
  const before = entries.filter((entry) => entry.season === season - 1);
  const carried = before.filter(({ how }) => how !== 'proposed');
  const proposed = before.filter(({ how }) => how === 'proposed');
  const isLast = ({ crop }: Entry) => proposed.every(({ after }) => after !== crop.id);
  return [...lastStanding(carried), ...proposed.filter(isLast)];
}

/** Of the gardener's own crops of a season, in the order they went in, those that stood in the bed at its end. */
export function lastStanding(carried: readonly Entry[]): Entry[] {
  return carried.slice(Math.max(0, carried.findLastIndex(isWhole)));
}

/** Of the same those that went in first, straight after the season before. */
export function firstStanding(carried: readonly Entry[]): Entry[] {
  const second = carried.findIndex((entry, at) => at > 0 && (isWhole(entry) || isWhole(carried[at - 1])));
  return second < 0 ? [...carried] : carried.slice(0, second);
}

function isWhole(entry: Entry | undefined): boolean {
  return entry !== undefined && entry.areaM2 === undefined;
}

/** Square metres of a bed that are left in a season beside what the gardener has planned. */
export function roomIn({ areaM2, carried, held }: PlanBed, season: number): number {
  const shares = carried.filter((row) => row.season === season).map((row) => row.areaM2 ?? areaM2);
  const taken = held?.[season] ?? shares.reduce((sum, share) => sum + share, 0);
  return Math.max(0, areaM2 - taken);
}

/** Why a bed has no day for a crop of a season, where it has none. */
export function shutFor({ shut = [] }: PlanBed, crop: Pick<Placement, 'cropId' | 'season'>): Shut['why'] | undefined {
  return shut.find(({ cropId, season }) => cropId === crop.cropId && season === crop.season)?.why;
}
