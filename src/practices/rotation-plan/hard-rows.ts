/**
 * The rules that may not break, as rows of the model. Each row carries the key of its named rule.
 */
import type { RotationGroup } from '../../handbook/shapes/plant.ts';
import { isPermanent } from '../bed-timeline.ts';
import type { Grid, Place } from './grid.ts';
import type { ModelSheet } from './model.ts';
import { keyOf, type NamedRule } from './named-rules.ts';
import { betweenOf, lastStanding, type PlanBed, roomIn, shutFor } from './problem.ts';
import { LEAST_PIECE_M2 } from './rules.ts';

/** Writes every row of a rule that may not break, amounts aside, and names the rules. */
export function hardRows(sheet: ModelSheet, grid: Grid): NamedRule[] {
  return [
    ...areaRows(sheet, grid),
    ...grid.places.flatMap((place) => shutOut(sheet, grid, place)),
    ...returnRows(sheet, grid),
    ...overlapRows(sheet, grid),
  ];
}

function areaRows(sheet: ModelSheet, { problem, placesIn }: Grid): NamedRule[] {
  const rule: NamedRule = { kind: 'area' };
  for (const bed of problem.beds) {
    for (const season of problem.seasons) {
      const terms = placesIn(bed, season).map(
        ({ column, areaColumn }) => [areaColumn ?? column, areaColumn === undefined ? bed.areaM2 : 1] as const,
      );
      if (terms.length > 1) sheet.row(terms, { most: bed.areaM2, of: keyOf(rule) });
      wholeBedRows(sheet, placesIn(bed, season), keyOf(rule));
      besideRow(sheet, bed, season, placesIn(bed, season));
    }
  }
  return [rule];
}

/** A bed given to one crop whole has no room for a piece of another: said outright, the solver finds its way sooner. */
function wholeBedRows(sheet: ModelSheet, places: readonly Place[], of: string): void {
  const whole = places.filter(({ areaColumn }) => areaColumn === undefined).map(({ column }) => [column, 1] as const);
  const pieces = places.filter(({ areaColumn }) => areaColumn !== undefined);
  if (whole.length > 1) sheet.row(whole, { most: 1, of });
  if (whole.length === 0) return;
  for (const { column } of pieces) sheet.row([...whole, [column, 1]], { most: 1, of });
}

/** Beside what the gardener planned for shares of a bed there is only the rest of it. */
function besideRow(sheet: ModelSheet, bed: PlanBed, season: number, places: readonly Place[]): void {
  const room = roomIn(bed, season);
  const areas = places.flatMap(({ areaColumn }) => (areaColumn === undefined ? [] : [[areaColumn, 1] as const]));
  if (room < LEAST_PIECE_M2 || room >= bed.areaM2 || areas.length === 0) return;
  sheet.row(areas, { most: room, of: keyOf({ kind: 'settled', bedId: bed.id, season }) });
}

/** A place that a disease, a lasting crop, the days or the gardener's own plan keeps a crop out of. */
function shutOut(sheet: ModelSheet, { certainIn }: Grid, { bed, wish, column, areaColumn }: Place): NamedRule[] {
  const { cropId, season } = wish;
  const rules: NamedRule[] = bed.closed
    .filter((closed) => closed.cropId === cropId && closed.season === season)
    .map(({ disease }) => ({ kind: 'disease', bedId: bed.id, disease }));
  if (bed.lasting !== undefined) rules.push({ kind: 'lasting', bedId: bed.id, cropId: bed.lasting });
  const shut = shutFor(bed, wish);
  if (shut !== undefined)
    rules.push(
      shut.rule === 'rotation-plan.too-late' ? { kind: 'too-late', cropId, season } : { kind: 'still-stands' },
    );
  for (const rule of rules) sheet.row([[column, 1]], { most: 0, of: keyOf(rule) });
  if (!certainIn(bed, season).some(({ crop }) => !isPermanent(crop))) return rules;
  const settled: NamedRule = { kind: 'settled', bedId: bed.id, season };
  const fits = areaColumn !== undefined && roomIn(bed, season) >= LEAST_PIECE_M2;
  if (!fits) sheet.row([[column, 1]], { most: 0, of: keyOf(settled) });
  return [...rules, settled];
}

function returnRows(sheet: ModelSheet, grid: Grid): NamedRule[] {
  const waits = new Map<RotationGroup, number>();
  for (const { crop } of grid.places.map(({ entry }) => entry)) {
    waits.set(crop.rotationGroup, Math.max(waits.get(crop.rotationGroup) ?? 0, crop.rotationYears));
  }
  return [...waits].map(([group, years]) => {
    const rule = { kind: 'returns', group, years } as const;
    for (const bed of grid.problem.beds) familyRows(sheet, grid, bed, rule);
    return rule;
  });
}

function familyRows(sheet: ModelSheet, grid: Grid, bed: PlanBed, rule: Extract<NamedRule, { kind: 'returns' }>): void {
  const { group, years } = rule;
  const { seasons } = grid.problem;
  const of = keyOf(rule);
  const certain = bed.carried
    .map(({ season }) => season)
    .filter((season) => grid.familyIn(bed, season, group) === 'certain');
  const columns = seasons.flatMap((season) => {
    const stands = grid.familyIn(bed, season, group);
    return stands === undefined || stands === 'certain' ? [] : [{ season, column: stands.column }];
  });
  const beside = certain.flatMap((season) =>
    grid
      .placesIn(bed, season)
      .filter(({ entry }) => entry.crop.rotationGroup === group)
      .map(({ column }) => ({ season, column })),
  );
  for (const { season, column } of [...columns, ...beside]) {
    const near = certain.some((other) => other !== season && Math.abs(other - season) < years);
    if (near) sheet.row([[column, 1]], { most: 0, of });
  }
  for (const from of seasons) {
    const within = columns.filter(({ season }) => season >= from && season < from + years);
    const isWhole = within.some(({ season }) => season === from);
    if (isWhole && within.length > 1)
      sheet.row(
        within.map(({ column }) => [column, 1] as const),
        { most: 1, of },
      );
  }
}

function overlapRows(sheet: ModelSheet, grid: Grid): NamedRule[] {
  const { problem, places, certainIn, placesIn } = grid;
  const rule: NamedRule = { kind: 'still-stands' };
  const of = keyOf(rule);
  const stillStands = (before: string, next: string) => betweenOf(problem, before, next).stillStands;
  for (const { bed, wish, column } of places) {
    const certain = lastStanding(certainIn(bed, wish.season - 1));
    if (certain.some(({ crop }) => stillStands(crop.id, wish.cropId))) sheet.row([[column, 1]], { most: 0, of });
    if (certain.some(({ areaM2 }) => areaM2 === undefined)) continue;
    for (const before of placesIn(bed, wish.season - 1)) {
      if (stillStands(before.wish.cropId, wish.cropId))
        sheet.row(
          [
            [before.column, 1],
            [column, 1],
          ],
          { most: 1, of },
        );
    }
  }
  return [rule];
}
