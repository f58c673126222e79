/**
 * What a bed has carried and what that means for the season to be planned.
 */

import type { Climate } from '../../climate/climate.ts';
import { dayOfIndex, seasonOf } from '../../climate/season.ts';
import type { Bed, Garden } from '../../garden/garden.ts';
import { inBed } from '../../garden/in-bed.ts';
import { thereFrom } from '../../garden/planned-beds.ts';
import type { RotationGroup } from '../../handbook/shapes/plant.ts';
import { type CropSpan, cropSpans, cropYear, isPermanent, seasonsBetween } from '../bed-timeline.ts';
import { coverParts } from '../covers.ts';
import { sowKey } from '../keys.ts';
import { type LockOut, standingLockOuts } from '../lock-out.ts';
import type { PracticeInput } from '../practice.ts';
import { firstSeasonOf, NOTHING_BEFORE } from '../seasons.ts';

/** A group a bed is closed to, and the season from which it is open again. */
export interface ClosedGroup {
  group: RotationGroup;
  opens: number;
}

/** A crop planned too soon after another of its group. */
export interface Return {
  next: CropSpan;
  before: CropSpan;
  years: number;
}

/** One bed looked at for a season to come. */
export interface BedReview {
  bed: Bed;
  /** The lasting crop that holds the bed, where one does. */
  lasting?: CropSpan;
  carried: readonly CropSpan[];
  planned: readonly CropSpan[];
  closed: readonly ClosedGroup[];
  returns: readonly Return[];
  /** What diseases found in it keep out of it in the season to be planned. */
  lockOuts: readonly LockOut[];
  /** The oldest season the garden file tells a crop of. */
  knownSince?: number;
  /** A planned hungry crop that stands behind no legume. */
  hungry?: CropSpan;
  /** Whether a legume stood in the bed last, so that a hungry crop fits after it. */
  afterLegume: boolean;
}

/** Every bed that is there for the season to be planned, in the order of their names. */
export function bedReviews(input: PracticeInput, season: number): BedReview[] {
  const there = input.garden.beds.filter((bed) => (firstSeasonOf(input.climate, bed) ?? season) <= season);
  const beds = there.sort((a, b) => order(a.name, b.name) || order(a.id, b.id));
  return beds.map((bed) => bedReview(input, bed, season));
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function bedReview({ garden, climate }: PracticeInput, bed: Bed, season: number): BedReview {
  const spans = cropSpans(garden, bed.id, climate);
  const yearly = spans.filter(({ crop }) => !isPermanent(crop));
  const past = yearly.filter((span) => cropYear(span, climate) < season);
  const planned = yearly.filter((span) => cropYear(span, climate) === season);
  const lasting = spans.find(
    ({ crop, from, to }) => isPermanent(crop) && to === undefined && seasonOf(climate.seasonTurn, from) < season,
  );
  const closed = closedGroups(past, climate, season);
  const hungry = planned[0]?.crop.nitrogen === 'high' ? planned[0] : undefined;
  const afterLegume = past.at(-1)?.crop.nitrogen === 'legume-fixer' || legumeCover(garden, climate, bed, season);
  const known = thereFrom(bed) === undefined ? past.map((span) => cropYear(span, climate)) : [NOTHING_BEFORE];
  return {
    bed,
    ...(lasting ? { lasting } : {}),
    carried: past.filter((span) => cropYear(span, climate) === season - 1),
    planned,
    closed,
    returns: planned.flatMap((next) => returnOf(next, past, climate) ?? []),
    lockOuts: standingLockOuts(garden, bed.id, dayOfIndex(climate.seasonTurn, season, 1)),
    ...(known.length > 0 ? { knownSince: Math.min(...known) } : {}),
    ...(hungry && !afterLegume ? { hungry } : {}),
    afterLegume,
  };
}

function closedGroups(past: readonly CropSpan[], climate: Climate, season: number): ClosedGroup[] {
  const last = new Map(past.map((span) => [span.crop.rotationGroup, span]));
  return [...last]
    .map(([group, span]) => ({ group, opens: cropYear(span, climate) + span.crop.rotationYears }))
    .filter(({ opens }) => opens > season)
    .sort((a, b) => a.opens - b.opens || order(a.group, b.group));
}

/** The planned crop set against the last of its group before the season; nothing where its own interval is kept. */
function returnOf(next: CropSpan, past: readonly CropSpan[], climate: Climate): Return | undefined {
  const before = past.findLast(({ crop }) => crop.rotationGroup === next.crop.rotationGroup);
  if (before === undefined) return undefined;
  const years = seasonsBetween(before, next, climate);
  return years < next.crop.rotationYears ? { next, before, years } : undefined;
}

/** Whether a cover with a legume in it is sown in the bed in the season before, to stand ahead of the next crop. */
function legumeCover(garden: Garden, climate: Climate, bed: Bed, season: number): boolean {
  return inBed(garden.stands, bed.id).some(
    ({ id, coverId, sow }) =>
      garden.skipped[sowKey(id)] === undefined &&
      seasonOf(climate.seasonTurn, sow.day) === season - 1 &&
      coverParts(coverId).some(({ cover }) => cover.form === 'legume'),
  );
}
