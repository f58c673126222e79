/**
 * The rules that may break, as columns that cost what a break counts.
 */

import type { RotationGroup } from '../../handbook/shapes/plant.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { coverParts } from '../covers.ts';
import type { Grid, Stands } from './grid.ts';
import type { ModelSheet } from './model.ts';
import { betweenOf, type Entry, entriesOf, firstStanding, lastStanding, type PlanBed } from './problem.ts';
import { UNKNOWN_PAST, WEIGHTS } from './rules.ts';
import { isPastUnknown, legumesWait, longestWait, wiltNeighbour } from './waits.ts';
import { familyNeeds, wishNeeds } from './wishes.ts';

/** Writes every rule that may break, amounts aside. */
export function softRows(sheet: ModelSheet, grid: Grid): void {
  placeCosts(sheet, grid);
  for (const bed of grid.problem.beds) {
    for (const season of grid.problem.seasons) {
      legumeFirst(sheet, grid, bed, season);
      familyPairs(sheet, grid, bed, season);
    }
  }
  bedsBeyondNeed(sheet, grid);
}

/** What a place costs whatever stands around it: a kindred cover ahead, a past nobody knows. */
function placeCosts(sheet: ModelSheet, { problem, places }: Grid): void {
  const [first] = problem.seasons;
  for (const { bed, entry, column } of places) {
    const { crop, season } = entry;
    const kin = partsAhead(bed, season).some(({ cover }) => cover.rotationGroup === crop.rotationGroup);
    if (kin && (crop.rotationGroup === 'cabbage' || crop.rotationGroup === 'legume'))
      sheet.charge(column, WEIGHTS['rotation-plan.cover-kin']);
    if (isPastUnknown(bed, first, crop, season)) sheet.charge(column, UNKNOWN_PAST);
  }
}

function partsAhead({ covers }: PlanBed, season: number) {
  return covers.filter((cover) => cover.season === season).flatMap(({ coverId }) => coverParts(coverId));
}

/** A crop in a bed and whether it stands there. */
interface Crop {
  entry: Entry;
  stands: Stands;
}

function cropsIn({ certainIn, placesIn }: Grid, bed: PlanBed, season: number): { certain: Crop[]; open: Crop[] } {
  return {
    certain: certainIn(bed, season).map((entry) => ({ entry, stands: 'certain' })),
    open: placesIn(bed, season).map(({ entry, column }) => ({ entry, stands: { column } })),
  };
}

function legumeFirst(sheet: ModelSheet, grid: Grid, bed: PlanBed, season: number): void {
  if (partsAhead(bed, season).some(({ cover }) => cover.form === 'legume')) return;
  const [before, here] = [cropsIn(grid, bed, season - 1), cropsIn(grid, bed, season)];
  const standing = lastStanding(before.certain.map(({ entry }) => entry));
  const first = firstStanding(here.certain.map(({ entry }) => entry));
  const waits = legumesWait(entriesOf(grid.problem, bed, []), season);
  const ahead = [...before.certain.filter(({ entry }) => standing.includes(entry)), ...before.open];
  for (const hungry of [...here.certain.filter(({ entry }) => first.includes(entry)), ...here.open]) {
    const { crop } = hungry.entry;
    if (crop.nitrogen !== 'high') continue;
    const bare = ahead.filter(({ entry }) => {
      const { legume } = betweenOf(grid.problem, entry.crop.id, crop.id);
      const none = legume === 'none' || (typeof legume === 'object' && waits);
      return entry.crop.nitrogen !== 'legume-fixer' && none;
    });
    const pairs = bare.map(({ stands }) => [hungry.stands, stands] as const);
    chargeAnyPair(sheet, pairs, WEIGHTS['rotation-plan.legume-first']);
  }
}

/** Families that come back before the long end of their interval, and okra beside the nightshades. */
function familyPairs(sheet: ModelSheet, grid: Grid, bed: PlanBed, season: number): void {
  const here = [...cropsIn(grid, bed, season).certain, ...cropsIn(grid, bed, season).open];
  const firsts = new Map(here.map(({ entry }) => [entry.crop.rotationGroup, entry.crop]));
  for (const [group, crop] of firsts) {
    const stands = grid.familyIn(bed, season, group);
    if (stands === undefined) continue;
    const earlier = (years: number, other: RotationGroup) =>
      Array.from({ length: years }, (_, back) => grid.familyIn(bed, season - 1 - back, other)).flatMap((before) =>
        before === undefined ? [] : [[stands, before] as const],
      );
    const wait = longestWait(crop);
    if (wait) chargeAnyPair(sheet, earlier(wait.years - 1, group), WEIGHTS['rotation-plan.longest-wait']);
    const other = wiltNeighbour(group);
    if (other) chargeAnyPair(sheet, earlier(1, other), WEIGHTS['rotation-plan.wilt-neighbours']);
  }
}

/** Charges once where of any of some pairs both stand. */
function chargeAnyPair(sheet: ModelSheet, pairs: readonly (readonly [Stands, Stands])[], weight: number): void {
  const open = pairs.map((pair) => pair.flatMap((stands) => (stands === 'certain' ? [] : [stands.column])));
  if (pairs.length === 0 || open.some((columns) => columns.length === 0)) return;
  const alone = new Set(open.flatMap((columns) => (columns.length === 1 ? columns : [])));
  const [only] = alone;
  if (only !== undefined && alone.size === 1 && open.every((columns) => columns.includes(only))) {
    sheet.charge(only, weight);
    return;
  }
  const broken = sheet.column({ cost: weight, follows: true });
  for (const columns of open) {
    sheet.row([...columns.map((column) => [column, 1] as const), [broken, -1]], { most: columns.length - 1 });
  }
}

/** Crops, and families, in more beds than they need. */
function bedsBeyondNeed(sheet: ModelSheet, grid: Grid): void {
  const beyond = (columns: readonly number[], beds: number, cost: number) => {
    if (columns.length <= beds) return;
    const over = sheet.column({ upper: columns.length, cost, follows: true });
    sheet.row([...columns.map((column) => [column, 1] as const), [over, -1]], { most: beds });
  };
  for (const { cropIds, season, beds } of wishNeeds(grid.problem)) {
    const places = grid.places.filter(({ wish }) => wish.season === season && cropIds.includes(wish.cropId));
    beyond(
      places.map(({ column }) => column),
      beds,
      WEIGHTS['rotation-plan.split'],
    );
  }
  for (const { cropIds, season, beds } of familyNeeds(grid.problem)) {
    const [cropId = ''] = cropIds;
    const group = vegetableById(cropId).rotationGroup;
    const columns = grid.problem.beds.flatMap((bed) => {
      const stands = grid.familyIn(bed, season, group);
      return stands === undefined || stands === 'certain' ? [] : [stands.column];
    });
    beyond(columns, beds, WEIGHTS['rotation-plan.family-apart']);
  }
}
