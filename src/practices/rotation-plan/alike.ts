/**
 * Beds that are alike, so that the solver need not try the same plan in each of their orders.
 */
import type { Grid } from './grid.ts';
import type { ModelSheet } from './model.ts';
import type { PlanBed } from './problem.ts';
import { kindOf } from './set-order.ts';

/** Beds that differ in nothing but their names, each kind in the order of the garden; kinds of one are left out. */
export function alikeBeds(beds: readonly PlanBed[]): PlanBed[][] {
  const kinds = new Map<string, PlanBed[]>();
  for (const bed of beds) {
    const kind = kindOf(bed);
    kinds.set(kind, [...(kinds.get(kind) ?? []), bed]);
  }
  return [...kinds.values()].filter((kind) => kind.length > 1);
}

/**
 * Puts alike beds in order: what the first season brings to a bed, counted by the crops' places in the list of wishes, is
 * no less than what it brings to the next. Any plan can be turned into such a one by giving alike beds each other's crops.
 */
export function alikeRows(sheet: ModelSheet, grid: Grid): void {
  const [first] = grid.problem.seasons;
  const termsOf = (bed: PlanBed, sign: 1 | -1) =>
    grid.placesIn(bed, first).map(({ column }, rank) => [column, sign * (rank + 1)] as const);
  for (const kind of alikeBeds(grid.problem.beds)) {
    for (const [at, bed] of kind.slice(1).entries()) {
      const before = kind[at];
      const terms = before === undefined ? [] : [...termsOf(before, 1), ...termsOf(bed, -1)];
      if (terms.length > 0) sheet.row(terms, { least: 0 });
    }
  }
}
