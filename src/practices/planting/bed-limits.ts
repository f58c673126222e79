/**
 * What a planting's bed asks: the crop and cover before it must be out, and it must ripen before what follows.
 */

import type { Stand } from '../../garden/garden.ts';
import { inBed } from '../../garden/in-bed.ts';
import { originOf } from '../../handbook/shapes/row.ts';
import { addDays, type Day, daysBetween, earliestOf, latestOf } from '../../measures/days.ts';
import { type AfterCut, afterCut, endingTask, freeFrom, SHEET_DAYS } from '../after-cut.ts';
import { isInAfterAutumnWork } from '../autumn-work.ts';
import { type CropSpan, firstRipe, gapsOf, isPermanent } from '../bed-timeline.ts';
import { clearingsOf } from '../clearing.ts';
import { waitDaysOf } from '../covers.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import { autumnTopdressKey, cutKey, sowKey, springTopdressKey } from '../keys.ts';
import { standLockOut } from '../lock-out.ts';
import type { PracticeInput } from '../practice.ts';
import { isAfterMidsummer, seasonAfter } from '../seasons.ts';
import { awaitedSqueezeKey, textureOf } from '../soil-class.ts';
import { growingParts, standName } from '../stand-cover.ts';
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
  return inBed(garden.stands, planting.bedId)
    .filter((stand) => {
      const { id, sow, deadOn } = stand;
      if (sow.day >= wanted || deadOn !== undefined) return false;
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
  return standsBefore(input, at).map((stand) => {
    const state = afterCut(input.garden, stand);
    const free = state === undefined ? wanted : freeFrom(state, residueDays(stand, at));
    if (state === undefined || free <= wanted) return { day: wanted, reasons: [] };
    return { day: free, reasons: [residueReason(stand, state, at, free)] };
  });
}

/** Days that a cover's fresh residue settles before a planting. */
function residueDays(stand: Stand, at: PlantingInBed): number {
  const wait = waitDaysOf(growingParts(stand));
  return isSeed(at) && (at.crop.smallSeed || at.crop.seedcornMaggot) ? wait.smallSeed : wait.transplant;
}

/** Why a planting waits for a cover that was cut: its residue, or what has grown again from it. */
function residueReason(stand: Stand, state: AfterCut, at: PlantingInBed, free: Day): Reason {
  const { is, on, lastCut } = state;
  const [cover, days] = [standName(stand), residueDays(stand, at)];
  const [part] = growingParts(stand);
  const source = part === undefined ? 'house default' : originOf(part.cover, 'waitDays');
  if (addDays(lastCut, days) === free)
    return { rule: 'plant.after-cut', saw: { cover, cut: lastCut, days }, limit: free, source };
  if (is === 'green') return { rule: 'plant.after-regrowth', saw: { cover, seen: on, days }, limit: free, source };
  const saw = { cover, [is === 'under-sheet' ? 'laid' : 'seen']: on, days: SHEET_DAYS.low };
  return { rule: 'plant.after-sheet', saw, limit: free, source: 'cover:S39' };
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
  const days = daysBetween(planting.start.day, firstRipe({ planting, crop, from: planting.start.day }));
  const day = addDays(end, -days);
  const saw = { crop: name, days, end };
  return { day, reasons: [{ rule: 'plant.must-ripen', saw, limit: day, source: originOf(crop, 'maturityDays') }] };
}

/**
 * The work a planting waits for in its bed: clearing, cutting, the compost that goes on before it, and in spring the
 * handful of soil that says whether it is fit.
 */
export function waitsFor(input: PracticeInput, at: PlantingInBed): TaskDraft['after'] {
  const { planting, bed } = at;
  const { climate, garden } = input;
  const before = spanBefore(at);
  const season = seasonAfter(climate, planting.start.day);
  const soil = isAfterMidsummer(climate, planting.start.day)
    ? composted(input, at)
      ? [autumnTopdressKey(bed.id, season)]
      : []
    : [springTopdressKey(bed.id, season), awaitedSqueezeKey(input, textureOf(garden, bed), season)];
  const covers = standsBefore(input, at).flatMap((stand) => coverWaits(input, at, stand));
  const clear = before === undefined ? [] : clearingsOf(at.spans, before);
  return [...covers, ...[...clear, ...soil].map((key) => ({ key, minDays: 0 }))];
}

/** Whether the autumn's compost goes on before a planting that goes in after midsummer. */
function composted({ garden, climate }: PracticeInput, { planting, bed, crop }: PlantingInBed): boolean {
  const gaps = gapsOf(garden, bed.id, climate, garden.startedOn);
  const gap = gaps.find(({ next }) => next?.planting.id === planting.id);
  return crop.maturityFrom === 'fall-set' || isInAfterAutumnWork(climate, gap);
}

/** A planting waits for a cover to be cut and its residue to settle; for one that has grown again, until that is ended. */
function coverWaits({ garden }: PracticeInput, at: PlantingInBed, stand: Stand): TaskDraft['after'] {
  const state = afterCut(garden, stand);
  if (state === undefined) return [{ key: cutKey(stand.id), minDays: residueDays(stand, at) }];
  const key = endingTask(stand.id, state);
  return key === undefined ? [] : [{ key, minDays: state.is === 'green' ? residueDays(stand, at) : 0 }];
}
