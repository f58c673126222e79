/**
 * A plan that is tried and changed cell by cell, with what it costs kept up to date.
 *
 * What a bed costs is asked of the rules themselves, once for every sequence of crops in it, and remembered.
 */
import { brokenIn, unknownIn } from './broken.ts';
import { unmetCost } from './cost.ts';
import { isHard } from './looked-at.ts';
import type { Placement, PlanBed, PlanWish, RotationProblem } from './problem.ts';
import { UNKNOWN_PAST, WEIGHTS } from './rules.ts';
import { enoughOf, familyNeeds, type Need, openWishes, wishNeeds } from './wishes.ts';

/** A crop in a cell: its place in the list of open wishes, and its square metres. */
export interface Piece {
  wish: number;
  areaM2: number;
}

/** What a bed holds in a season, in the order in which its pieces take their room. */
export interface Cell {
  pieces: readonly Piece[];
  /** The same for cells with the same crops. */
  key: string;
}

/** A cell of pieces. */
export function cellOf(pieces: readonly Piece[]): Cell {
  const key = pieces
    .map(({ wish }) => wish)
    .sort((a, b) => a - b)
    .join(' ');
  return { pieces, key };
}

const EMPTY = cellOf([]);

/** A wish as the plan sees it. */
export interface Wanted {
  wish: PlanWish;
  /** The place of its season, and of its family in that season. */
  season: number;
  family: number;
  /** What is enough of it, in square metres or whole beds, and what nothing of it costs. */
  enough: number;
  unmet: number;
  /** Beds that would hold it. */
  beds: number;
}

/** What a bed breaks: by weight, and how many hard rules besides those broken anyway. */
interface BedCost {
  soft: number;
  hard: number;
}

/** A plan being tried. */
export class TriedPlan {
  readonly problem: RotationProblem;
  readonly wanted: readonly Wanted[];
  /** What a hard rule counts for now that is broken on the way to a plan. */
  hardCost = 0;
  private readonly families: readonly Need[];
  private readonly bySeason: readonly (readonly number[])[];
  private readonly cells: Cell[][];
  private readonly remembered: readonly Map<string, BedCost>[];
  private readonly brokenAnyway: readonly number[];
  private readonly given: number[];
  private readonly bedsOfCrop: number[];
  private readonly bedsOfFamily: number[];

  constructor(problem: RotationProblem) {
    this.problem = problem;
    this.families = familyNeeds(problem);
    this.wanted = wantedIn(problem, this.families);
    this.bySeason = problem.seasons.map((_, season) =>
      [...this.wanted.entries()].filter(([, wanted]) => wanted.season === season).map(([at]) => at),
    );
    this.cells = problem.beds.map(() => problem.seasons.map(() => EMPTY));
    this.remembered = problem.beds.map(() => new Map());
    this.brokenAnyway = problem.beds.map((bed) => brokenIn(problem, bed, []).filter(isHard).length);
    this.given = this.wanted.map(() => 0);
    this.bedsOfCrop = this.wanted.map(() => 0);
    this.bedsOfFamily = this.families.map(() => 0);
  }

  /** What a bed, by its place in the list, holds in a season, by its place. */
  cell(bed: number, season: number): Cell {
    return this.cells[bed]?.[season] ?? EMPTY;
  }

  /** Puts other pieces into a cell. */
  put(bed: number, season: number, cell: Cell): void {
    const row = this.cells[bed];
    if (row === undefined) return;
    this.count(this.cell(bed, season), -1);
    this.count(cell, 1);
    row[season] = cell;
  }

  /** What is given of a wish: square metres, or whole beds. */
  givenOf(wish: number): number {
    return this.given[wish] ?? 0;
  }

  /** The wishes of a season, by their places. */
  wishesOf(season: number): readonly number[] {
    return this.bySeason[season] ?? [];
  }

  /** The beds in which the family of a wish lies in its season. */
  kinBeds(wish: number): number[] {
    const { season = 0, family } = this.wanted[wish] ?? {};
    return this.cells.flatMap((row, bed) =>
      row[season]?.pieces.some((piece) => this.wanted[piece.wish]?.family === family) ? [bed] : [],
    );
  }

  /** What the rules say of all a bed holds. */
  bedCost(bed: number): number {
    const { soft, hard } = this.inBed(bed);
    return soft + this.hardCost * hard;
  }

  /** Whether it breaks no hard rule but those that are broken without it. */
  isAllowed(): boolean {
    return this.problem.beds.every((_, bed) => this.inBed(bed).hard === 0);
  }

  private inBed(bed: number): BedCost {
    const known = this.remembered[bed];
    const key = (this.cells[bed] ?? []).map((cell) => cell.key).join('|');
    const held = known?.get(key);
    if (held !== undefined) return held;
    const cost = this.askedOf(bed);
    known?.set(key, cost);
    return cost;
  }

  /** What a season costs whichever beds it lies in: wishes not met, crops and families in more beds than they need. */
  seasonCost(season: number): number {
    let cost = 0;
    for (const at of this.wishesOf(season)) {
      const wanted = this.wanted[at];
      if (wanted === undefined) continue;
      cost += wanted.unmet * Math.max(0, 1 - (this.given[at] ?? 0) / wanted.enough);
      cost += WEIGHTS['rotation-plan.split'] * Math.max(0, (this.bedsOfCrop[at] ?? 0) - wanted.beds);
    }
    for (const [at, family] of this.families.entries()) {
      if (family.season !== this.problem.seasons[season]) continue;
      cost += WEIGHTS['rotation-plan.family-apart'] * Math.max(0, (this.bedsOfFamily[at] ?? 0) - family.beds);
    }
    return cost;
  }

  /** Everything the plan costs. */
  cost(): number {
    const beds = this.problem.beds.reduce((sum, _, bed) => sum + this.bedCost(bed), 0);
    return beds + this.problem.seasons.reduce<number>((sum, _, season) => sum + this.seasonCost(season), 0);
  }

  /** The plan as placements. */
  placements(): Placement[] {
    return this.problem.beds.flatMap((bed, at) => this.placementsIn(bed, at));
  }

  private placementsIn(bed: PlanBed, at: number): Placement[] {
    return (this.cells[at] ?? []).flatMap(({ pieces }) =>
      pieces.flatMap(({ wish, areaM2 }) => {
        const wanted = this.wanted[wish];
        if (wanted === undefined) return [];
        return [{ bedId: bed.id, season: wanted.wish.season, cropId: wanted.wish.cropId, areaM2 }];
      }),
    );
  }

  private askedOf(at: number): BedCost {
    const bed = this.problem.beds[at];
    if (bed === undefined) return { soft: 0, hard: 0 };
    const placements = this.placementsIn(bed, at);
    const broken = brokenIn(this.problem, bed, placements);
    const unknown = UNKNOWN_PAST * unknownIn(this.problem, bed, placements).length;
    return {
      soft: broken.reduce((sum, { weight = 0 }) => sum + weight, unknown),
      hard: broken.filter(isHard).length - (this.brokenAnyway[at] ?? 0),
    };
  }

  private count({ pieces }: Cell, sign: 1 | -1): void {
    const families: number[] = [];
    for (const { wish, areaM2 } of pieces) {
      const wanted = this.wanted[wish];
      if (wanted === undefined) continue;
      raise(this.given, wish, sign * ('beds' in wanted.wish.amount ? 1 : areaM2));
      raise(this.bedsOfCrop, wish, sign);
      if (families.includes(wanted.family)) continue;
      families.push(wanted.family);
      raise(this.bedsOfFamily, wanted.family, sign);
    }
  }
}

function raise(figures: number[], at: number, by: number): void {
  figures[at] = (figures[at] ?? 0) + by;
}

function wantedIn(problem: RotationProblem, families: readonly Need[]): Wanted[] {
  const needs = wishNeeds(problem);
  return openWishes(problem).map((wish, at) => ({
    wish,
    season: problem.seasons.indexOf(wish.season),
    family: families.findIndex(({ season, cropIds }) => season === wish.season && cropIds.includes(wish.cropId)),
    enough: enoughOf(wish),
    unmet: unmetCost(problem, wish),
    beds: needs[at]?.beds ?? 0,
  }));
}
