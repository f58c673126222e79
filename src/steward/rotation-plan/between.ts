/**
 * What the time between two crops allows: a small table, worked out before a rotation is planned.
 */

import type { Climate } from '../../climate/climate.ts';
import type { Bed } from '../../garden/garden.ts';
import type { Vegetable } from '../../handbook/shapes/vegetable.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { addDays, type Day, daysBetween } from '../../measures/days.ts';
import type { CropSpan } from '../../practices/bed-timeline.ts';
import { bestCover } from '../../practices/cover-cropping/fit/gap-fits.ts';
import { coverParts } from '../../practices/covers.ts';
import type { PracticeInput } from '../../practices/practice.ts';
import { type Between, betweenKey, type RotationProblem } from '../../practices/rotation-plan/problem.ts';
import { Recent } from '../long-work/recent.ts';
import { CLEAR_DAYS, growing, grownFrom } from './growing.ts';

/** A crop as it is usually grown in a season: in on the first good day, out when its harvest is over. */
interface Grown {
  span: CropSpan & { to: Day };
  /** The last day it may go in. */
  latest: Day;
}

/**
 * The table for every crop that may stand ahead of a wished one. It goes by the garden's climate as it usually is and by
 * a bed of ordinary soil; where no dates are known a pair is left out.
 *
 * @param pairs all, or only those with a crop that a bed holds already: wished crops are then held against no other wish
 */
export function betweenTable(
  input: PracticeInput,
  { seasons: [first], beds, wishes }: Omit<RotationProblem, 'between'>,
  pairs: 'all' | 'with what is there' = 'all',
): Record<string, Between> {
  const garden = { ...input.garden, plantings: [], stands: [], diseases: [], mulches: [] };
  const [bed] = input.garden.beds;
  if (bed === undefined) return {};
  const bare = { ...input, garden };
  const carried = beds.flatMap((each) => each.carried.filter(({ season }) => season >= first - 1));
  const ahead = idsOf([...carried, ...wishes]).map((id) => grown(bare, bed, vegetableById(id), first - 1));
  const next = idsOf([...wishes, ...carried]).map((id) => grown(bare, bed, vegetableById(id), first));
  const ends = new Map(next.map((each) => [each?.span.crop.id, each?.span.to]));
  const legumeOf = legumesBetween(bare, bed);
  const there = new Set(carried.map(({ cropId }) => cropId));
  const isThere = (each: Grown | undefined): boolean => each !== undefined && there.has(each.span.crop.id);
  const asked = ahead
    .flatMap((before) => next.map((after) => [before, after] as const))
    .filter(([before, after]) => pairs === 'all' || isThere(before) || isThere(after));
  return Object.fromEntries(
    asked.flatMap(([before, after]) => {
      if (before === undefined || after === undefined) return [];
      const stillStands = before.span.to > after.latest;
      const legume = legumeOf([before.span, after.span]);
      const follows = daysToSpare(ends.get(before.span.crop.id), after);
      const row = { legume, stillStands, ...(follows === undefined ? {} : { follows }) };
      return [[betweenKey(before.span.crop.id, after.span.crop.id), row]];
    }),
  );
}

/** Days left for a crop to go in once one of the same season is out, if any; what goes in in autumn belongs to the next. */
function daysToSpare(out: Day | undefined, { span, latest }: Grown): number | undefined {
  if (out === undefined || span.crop.maturityFrom === 'fall-set') return undefined;
  const days = daysBetween(addDays(out, CLEAR_DAYS), latest);
  return days < 0 ? undefined : days;
}

function idsOf(rows: readonly { cropId: string }[]): string[] {
  return [...new Set(rows.map(({ cropId }) => cropId))].sort();
}

function grown(input: PracticeInput, bed: Bed, crop: Vegetable, season: number): Grown | undefined {
  const growth = growing(input, crop, season);
  if (growth === undefined) return undefined;
  const { to, ...span } = grownFrom(input, growth, { bedId: bed.id, day: growth.earliest });
  return to === undefined ? undefined : { span: { ...span, to }, latest: growth.latest };
}

type Legume = Between['legume'];
type Pair = readonly [CropSpan & { to: Day }, CropSpan];

/** Gardens, but for what grows in them, that legumes are remembered of under one climate. House default. */
const GARDENS_HELD = 4;

const remembered = new WeakMap<Climate, Recent<string, Map<string, Legume>>>();

/** What was found before, by the two plantings: a look at what another planting would break asks for the same pairs. */
function legumesFound({ garden, climate, today, until }: PracticeInput): Map<string, Legume> {
  const gardens = remembered.get(climate) ?? new Recent<string, Map<string, Legume>>(GARDENS_HELD);
  remembered.set(climate, gardens);
  const facts = JSON.stringify([today, until, garden]);
  const found = gardens.get(facts) ?? new Map<string, Legume>();
  gardens.set(facts, found);
  return found;
}

/** Only a hungry crop asks for a legume ahead of it. Gaps of the same days between the same families are alike. */
function legumesBetween(input: PracticeInput, bed: Bed): (pair: Pair) => Legume {
  const found = legumesFound(input);
  const known = new Map<string, Legume>();
  return (pair) => {
    const [before, next] = pair;
    if (next.crop.nitrogen !== 'high') return 'unknown';
    const groups = pair.map(({ crop }) => crop.rotationGroup);
    const alike = [addDays(before.to, 1), next.from, ...groups].join(' ');
    const held = known.get(alike);
    if (held !== undefined) return held;
    const plantings = pair.map(({ planting }) => planting.id).join(' ');
    const legume = found.get(plantings) ?? legumeBetween(input, bed, pair);
    found.set(plantings, legume);
    known.set(alike, legume);
    return legume;
  };
}

function legumeBetween(input: PracticeInput, bed: Bed, [before, next]: Pair): Legume {
  const from = addDays(before.to, 1);
  if (from >= next.from) return 'none';
  const span = { bedId: bed.id, from, before, to: next.from, next };
  const there = { ...input, garden: { ...input.garden, plantings: [before.planting, next.planting] } };
  const best = bestCover(there, bed, span, { from, isTaken: (coverId) => !hasLegume(coverId) });
  return best === undefined ? 'none' : { coverId: best.coverId };
}

function hasLegume(coverId: string): boolean {
  return coverParts(coverId).some(({ cover }) => cover.form === 'legume');
}
