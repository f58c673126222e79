/**
 * The rules that may not break, as rows of the model. Each row carries the key of its named rule.
 */
import type { RotationGroup } from '../../handbook/shapes.ts';
import { isPermanent } from '../bed-timeline.ts';
import type { Grid, Place } from './grid.ts';
import type { ModelSheet } from './model.ts';
import { keyOf, type NamedRule } from './named-rules.ts';
import { betweenOf, type PlanBed } from './problem.ts';

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

/** A place that a disease, a lasting crop or the gardener's own plan keeps a crop out of. */
function shutOut(sheet: ModelSheet, { certainIn }: Grid, { bed, wish, column }: Place): NamedRule[] {
  const { cropId, season } = wish;
  const rules: NamedRule[] = bed.closed
    .filter((closed) => closed.cropId === cropId && closed.season === season)
    .map(({ disease }) => ({ kind: 'disease', bedId: bed.id, disease }));
  if (bed.lasting !== undefined) rules.push({ kind: 'lasting', bedId: bed.id, cropId: bed.lasting });
  if (certainIn(bed, season).some(({ crop }) => !isPermanent(crop)))
    rules.push({ kind: 'settled', bedId: bed.id, season });
  for (const rule of rules) sheet.row([[column, 1]], { most: 0, of: keyOf(rule) });
  return rules;
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
  for (const { season, column } of columns) {
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
    const certain = certainIn(bed, wish.season - 1).at(-1);
    if (certain !== undefined) {
      if (stillStands(certain.crop.id, wish.cropId)) sheet.row([[column, 1]], { most: 0, of });
      continue;
    }
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
