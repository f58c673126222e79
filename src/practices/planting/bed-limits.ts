/**
 * What a planting's bed asks: the crop and cover before it must be out, and it must ripen before what follows.
 */
import type { Stand } from '../../garden/garden.ts';
import { originOf } from '../../handbook/shapes.ts';
import { addDays, type Day, daysBetween, earliestOf, latestOf } from '../../measures/days.ts';
import { type CropSpan, isPermanent } from '../bed-timeline.ts';
import { coverName, coverParts, waitDaysOf } from '../covers.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import { autumnTopdressKey, clearKey, cutKey, sowKey, springTopdressKey } from '../keys.ts';
import { standLockOut } from '../lock-out.ts';
import type { PracticeInput } from '../practice.ts';
import { isAfterMidsummer, seasonAfter } from '../seasons.ts';
import { awaitedSqueezeKey, textureOf } from '../soil-class.ts';
import { isSeed, type PlantingInBed } from './planting-in-bed.ts';

/** Days between two crops of a bed within which the one before is worth naming. House default. */
const WORTH_SAYING_DAYS = 28;

/** A day the bed sets, with the reason for it. */
export interface BedLimit {
  day: Day;
  reasons: readonly Reason[];
}

/** The first day the bed is free for a planting; nothing where nothing stands in its way. */
export function bedFreeFrom(input: PracticeInput, at: PlantingInBed): BedLimit | undefined {
  const limits = [...cropBefore(at), ...coversBefore(input, at)];
  const [first, ...others] = limits.map(({ day }) => day);
  if (first === undefined) return undefined;
  return { day: latestOf(first, ...others), reasons: limits.flatMap(({ reasons }) => reasons) };
}

/** The crop that leaves the bed last before a planting; one that overlaps it shares the bed and counts not. */
function spanBefore({ planting, spans }: PlantingInBed): (CropSpan & { to: Day }) | undefined {
  return spans
    .flatMap((span) => (span.to !== undefined && span.to <= planting.start.day ? [{ ...span, to: span.to }] : []))
    .filter((span) => span.planting.id !== planting.id)
    .sort((a, b) => (a.to === b.to ? (a.planting.id < b.planting.id ? -1 : 1) : a.to < b.to ? -1 : 1))
    .at(-1);
}

function cropBefore(at: PlantingInBed): BedLimit[] {
  const before = spanBefore(at);
  if (before === undefined) return [];
  const saw = { before: before.crop.name.toLowerCase(), day: before.to };
  const near = daysBetween(before.to, at.planting.start.day) <= WORTH_SAYING_DAYS;
  const reasons: Reason[] = near ? [{ rule: 'plant.bed-free', saw, source: "the garden's own plan" }] : [];
  return [{ day: before.to, reasons }];
}

/** Covers that stand in the bed when a planting is to go in: sown before it, with no crop between the two. */
function standsBefore({ garden }: PracticeInput, { planting, spans }: PlantingInBed): Stand[] {
  const wanted = planting.start.day;
  return garden.stands
    .filter((stand) => {
      const { id, bedId, sow, deadOn } = stand;
      if (bedId !== planting.bedId || sow.day >= wanted || deadOn !== undefined) return false;
      if (garden.skipped[sowKey(id)] !== undefined || standLockOut(garden, stand) !== undefined) return false;
      return !spans.some(({ from }) => from > sow.day && from < wanted);
    })
    .sort((a, b) => (a.id < b.id ? -1 : 1));
}

/**
 * A cover's cut is timed for the planned day, so a planting does not go in ahead of it; a cut that came later than
 * that has its residue's wait still to run.
 */
function coversBefore(input: PracticeInput, at: PlantingInBed): BedLimit[] {
  const wanted = at.planting.start.day;
  return standsBefore(input, at).map(({ coverId, cutOn }) => {
    const parts = coverParts(coverId);
    const wait = waitDaysOf(parts);
    const days = isSeed(at) && (at.crop.smallSeed || at.crop.seedcornMaggot) ? wait.smallSeed : wait.transplant;
    const settled = cutOn === undefined ? wanted : addDays(cutOn, days);
    if (settled <= wanted || cutOn === undefined) return { day: wanted, reasons: [] };
    const saw = { cover: coverName(coverId), cut: cutOn, days };
    const source = parts[0] === undefined ? 'house default' : originOf(parts[0].cover, 'waitDays');
    return { day: settled, reasons: [{ rule: 'plant.after-cut', saw, limit: settled, source }] };
  });
}

/** Whether a cover's residue may lie on the bed when a planting goes in. */
export function hasResidue(input: PracticeInput, at: PlantingInBed): boolean {
  return standsBefore(input, at).length > 0;
}

/** The last day that leaves a planting its shortest time to ripen before what follows it in the bed. */
export function mustBeInBy(at: PlantingInBed): BedLimit | undefined {
  const { planting, crop, spans, name } = at;
  if (isPermanent(crop) || crop.maturityFrom === 'fall-set') return undefined;
  const next = spans.find((span) => span.planting.id !== planting.id && span.from > planting.start.day);
  const shares =
    next !== undefined && spans.some(({ planting: { id }, to }) => id === planting.id && (to ?? '') > next.from);
  const ends = [planting.lastHarvest?.day, shares ? undefined : next?.from].filter((day) => day !== undefined);
  const [first, ...others] = ends;
  if (first === undefined) return undefined;
  const end = earliestOf(first, ...others);
  const day = addDays(end, -crop.maturityDays.low);
  const saw = { crop: name, days: crop.maturityDays.low, end };
  return { day, reasons: [{ rule: 'plant.must-ripen', saw, limit: day, source: originOf(crop, 'maturityDays') }] };
}

/**
 * The work a planting waits for in its bed: clearing, cutting, the compost that goes on before it, and in spring the
 * handful of soil that says whether it is fit.
 */
export function waitsFor(input: PracticeInput, at: PlantingInBed): TaskDraft['after'] {
  const { planting, bed, crop } = at;
  const { climate, garden } = input;
  const before = spanBefore(at);
  const season = seasonAfter(climate, planting.start.day);
  const soil = isAfterMidsummer(climate, planting.start.day)
    ? crop.maturityFrom === 'fall-set'
      ? [autumnTopdressKey(bed.id, season)]
      : []
    : [springTopdressKey(bed.id, season), awaitedSqueezeKey(input, textureOf(garden, bed), season)];
  const cuts = standsBefore(input, at).flatMap(({ id, cutOn }) => (cutOn === undefined ? [cutKey(id)] : []));
  const clear = before === undefined || before.end === 'happened' ? [] : [clearKey(before.planting.id)];
  return [...clear, ...cuts, ...soil].map((key) => ({ key, minDays: 0 }));
}
