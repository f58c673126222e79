/**
 * A plan looked for by changing it in small ways, for rotations too large to be sought whole: crops of two beds change
 * places, a crop moves, comes in or goes out. A change for the worse is taken now and then, ever more seldom (annealing);
 * a hard rule may break on the way, and only plans that break none count.
 *
 * The changes come in a fixed sequence of its own, the same on every machine: nothing in it is left to chance or to time.
 */
import { type Placement, type RotationProblem, roomIn, shutFor } from './problem.ts';
import { LEAST_PIECE_M2 } from './rules.ts';
import { cellOf, type Piece, TriedPlan } from './tried-plan.ts';

/**
 * Changes tried in a run for each cell of the plan, a bed in a season, and at the least; and all together in the runs of
 * a small garden, of which the best counts.
 */
export type Tries = Readonly<Record<'perCell' | 'least' | 'together', number>>;

/** House defaults; `npm run bench` prints what they take. */
const TRIES: Tries = { perCell: 2000, least: 100_000, together: 400_000 };
/** What a change may make worse at first and at last, about the weight of a rule and less than the least. House default. */
const WARMTH = { first: 10, last: 0.3 } as const;
/** What a hard rule counts at first and at last that is broken on the way: two of the others, then more than most wishes. House default. */
const HARD = { first: 12, last: 100 } as const;
/** Changes between two breaths. */
const TRIES_AT_A_TIME = 200;

/** A cell that is to hold other pieces. */
interface Put {
  bed: number;
  season: number;
  pieces: readonly Piece[];
}

/** Looks for a plan; yields often, so that whoever asks can see to other work between. */
export function* searchPlan(problem: RotationProblem, most = TRIES): Generator<void, Placement[]> {
  const tries = Math.max(most.least, most.perCell * problem.beds.length * problem.seasons.length);
  const runs = Math.max(1, Math.floor(most.together / tries));
  let best: Tried | undefined;
  for (let run = 1; run <= runs; run += 1) {
    const tried = yield* searchOnce(new TriedPlan(problem), sequence(run), tries);
    if (best === undefined || tried.cost < best.cost - SMALLEST) best = tried;
  }
  return best?.placements ?? [];
}

/** A plan that was come by, and what it costs. */
interface Tried {
  cost: number;
  placements: Placement[];
}

function* searchOnce(plan: TriedPlan, draw: Draw, tries: number): Generator<void, Tried> {
  let cost = plan.cost();
  let best: Tried = { cost, placements: plan.placements() };
  for (let at = 0; at < tries; at += 1) {
    if (at % TRIES_AT_A_TIME === 0) {
      yield;
      plan.hardCost = between(HARD, at / tries);
      cost = plan.cost();
    }
    const warmth = between(WARMTH, at / tries);
    cost += tryChange(plan, change(plan, draw), (by) => by <= 0 || draw(1) < Math.exp(-by / warmth));
    if (cost < best.cost - SMALLEST && plan.isAllowed()) best = { cost, placements: plan.placements() };
  }
  return best;
}

/** From the first figure to the last by even steps of size. */
function between({ first, last }: { first: number; last: number }, share: number): number {
  return first * (last / first) ** share;
}

/** Sums of weights may differ by so much and be the same. */
const SMALLEST = 1e-6;

/** Numbers from 0 to below a limit, evenly spread, always the same ones in a row (a linear congruential sequence). */
type Draw = (limit: number) => number;

function sequence(seed: number): Draw {
  let state = seed;
  return (limit) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state / 2 ** 32) * limit;
  };
}

/** Makes a change, and takes it back unless it is liked; returns by how much the plan got worse. */
function tryChange(plan: TriedPlan, puts: readonly Put[], isLiked: (by: number) => boolean): number {
  const [first] = puts;
  if (first === undefined) return 0;
  const costNow = () => puts.reduce((sum, { bed }) => sum + plan.bedCost(bed), plan.seasonCost(first.season));
  const before = costNow();
  const held = puts.map(({ bed, season }) => ({ bed, season, cell: plan.cell(bed, season) }));
  for (const { bed, season } of puts) plan.put(bed, season, cellOf([]));
  for (const put of puts) plan.put(put.bed, put.season, cellOf(fitted(plan, put)));
  const by = costNow() - before;
  if (isLiked(by)) return by;
  for (const { bed, season, cell } of held) plan.put(bed, season, cell);
  return 0;
}

/** One small change. */
function change(plan: TriedPlan, draw: Draw): Put[] {
  const { beds, seasons } = plan.problem;
  const season = whole(draw, seasons.length);
  const bed = whole(draw, beds.length);
  const { pieces } = plan.cell(bed, season);
  const piece = pieces[whole(draw, pieces.length)];
  const spot: Spot = { bed, season, pieces, piece };
  const kind = draw(1);
  if (kind < OFTEN.bedsSwap) return bedsSwap(plan, draw, spot);
  if (kind < OFTEN.cropMoves) return cropMoves(plan, draw, spot);
  if (kind < OFTEN.cropComes) return cropComes(plan, draw, spot);
  return [{ bed, season, pieces: kind < OFTEN.cropGoes ? without(pieces, piece) : [...pieces].reverse() }];
}

/** How often each kind of change is tried, as shares of 1 added up; the last gives the other crop of a bed its room first. */
const OFTEN = { bedsSwap: 0.25, cropMoves: 0.75, cropComes: 0.88, cropGoes: 0.95 } as const;
/** How often a crop that moves goes to its kin, makes room by turning another out, and sends that to a third bed. */
const MOVES = { toKin: 0.4, turnsOut: 0.6, toThird: 0.4 } as const;
/** How often a crop that comes in turns another out. */
const COMES_INSTEAD = 0.5;

/** A cell and one of its pieces, where it has any. */
interface Spot extends Put {
  piece: Piece | undefined;
}

function whole(draw: Draw, limit: number): number {
  return Math.floor(draw(limit));
}

function bedsSwap(plan: TriedPlan, draw: Draw, { bed, season, pieces }: Spot): Put[] {
  const other = whole(draw, plan.problem.beds.length);
  if (other === bed) return [];
  return [
    { bed, season, pieces: plan.cell(other, season).pieces },
    { bed: other, season, pieces },
  ];
}

function cropMoves(plan: TriedPlan, draw: Draw, { bed, season, pieces, piece }: Spot): Put[] {
  if (piece === undefined) return [];
  const kin = draw(1) < MOVES.toKin ? plan.kinBeds(piece.wish).filter((each) => each !== bed) : [];
  const other = kin[whole(draw, kin.length)] ?? whole(draw, plan.problem.beds.length);
  if (other === bed) return [];
  const there = plan.cell(other, season).pieces;
  const out = draw(1) < MOVES.turnsOut ? there[whole(draw, there.length)] : undefined;
  const rest = without(pieces, piece);
  const moved: Put = { bed: other, season, pieces: [...without(there, out), piece] };
  if (out === undefined) return [{ bed, season, pieces: rest }, moved];
  const third = draw(1) < MOVES.toThird ? whole(draw, plan.problem.beds.length) : bed;
  if (third === bed || third === other) return [{ bed, season, pieces: [...rest, out] }, moved];
  return [
    { bed, season, pieces: rest },
    moved,
    { bed: third, season, pieces: [...plan.cell(third, season).pieces, out] },
  ];
}

function cropComes(plan: TriedPlan, draw: Draw, { bed, season, pieces, piece }: Spot): Put[] {
  const wishes = plan.wishesOf(season);
  const wish = wishes[whole(draw, wishes.length)];
  if (wish === undefined || pieces.some((each) => each.wish === wish)) return [];
  const rest = draw(1) < COMES_INSTEAD ? without(pieces, piece) : pieces;
  return [{ bed, season, pieces: [{ wish, areaM2: 0 }, ...rest] }];
}

function without(pieces: readonly Piece[], piece: Piece | undefined): Piece[] {
  return pieces.filter((each) => each !== piece);
}

/** The pieces with the room they get: each first the least, then in turn what is wanted of it; what finds none goes out. */
function fitted(plan: TriedPlan, { bed: at, season, pieces: wished }: Put): Piece[] {
  const bed = plan.problem.beds[at];
  if (bed === undefined) return [];
  let room = roomIn(bed, plan.problem.seasons[season] ?? 0);
  const pieces: (Piece & { more: number })[] = [];
  for (const { wish } of wished) {
    const wanted = plan.wanted[wish]?.wish;
    if (wanted === undefined || shutFor(bed, wanted) || pieces.some((piece) => piece.wish === wish)) continue;
    const { amount } = wanted;
    const lacks = ('beds' in amount ? amount.beds : amount.areaM2) - plan.givenOf(wish);
    const most = 'beds' in amount ? bed.areaM2 : Math.min(bed.areaM2, amount.areaM2);
    const wants = 'beds' in amount ? (lacks >= 1 ? most : 0) : Math.min(most, lacks);
    const least = 'beds' in amount ? most : Math.min(LEAST_PIECE_M2, most);
    if (wants < least || room < least) continue;
    pieces.push({ wish, areaM2: least, more: wants - least });
    room -= least;
  }
  return pieces.map(({ wish, areaM2, more }) => {
    const taken = Math.min(room, more);
    room -= taken;
    return { wish, areaM2: areaM2 + taken };
  });
}
