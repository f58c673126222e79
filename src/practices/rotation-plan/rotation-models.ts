/**
 * The models of a rotation: the best plan, and whether a set of named rules can be kept together at all.
 */
import { alikeRows } from './alike.ts';
import { unmetCost } from './cost.ts';
import { filled } from './filled.ts';
import { type Grid, gridOf, type Place } from './grid.ts';
import { hardRows } from './hard-rows.ts';
import { columnName } from './lp-text.ts';
import { type Model, ModelSheet, type Row } from './model.ts';
import { GIVING_WAY, keyOf, type NamedRule } from './named-rules.ts';
import type { Part } from './parts.ts';
import { type Placement, type PlanWish, type RotationProblem, shutFor } from './problem.ts';
import { reduced } from './reduced.ts';
import { softRows } from './soft-rows.ts';
import { enoughOf } from './wishes.ts';

/** What a place costs so that of plans equally good always the same is taken: all together less than the least weight. */
const TIE_COST = 0.01;

/** The model of the best plan, and how its answer is read. */
export interface BestPlanModel {
  model: Model;
  /** How many crops may stand or not stand in some bed and season: what the solver's work grows with. */
  choices: number;
  /** The plan that the values of the columns, by name, stand for. */
  read(values: Values): Placement[];
  /** The same with a part to be placed anew, the others as a plan has them. */
  around(plan: readonly Placement[], part: Part): PartModel;
}

/** A part of the model, and how its answer is read: as a whole plan. */
export type PartModel = Pick<BestPlanModel, 'model' | 'read'>;

type Values = Readonly<Record<string, number>>;

/** The best plan: no hard rule broken, the least weight of soft rules and of wishes not met. */
export function bestPlanModel(problem: RotationProblem): BestPlanModel {
  const sheet = new ModelSheet();
  const grid = gridOf(sheet, problem);
  hardRows(sheet, grid);
  softRows(sheet, grid);
  for (const wish of grid.wishes) {
    const unmet = sheet.column({ cost: unmetCost(problem, wish), follows: true });
    const { terms, whole } = amountOf(grid, wish);
    const need = enoughOf(wish);
    sheet.row([...terms, [unmet, need]], { least: need });
    sheet.row(terms, { most: whole });
  }
  tieCosts(sheet, grid);
  // A plan that was searched for keeps no order of alike beds: parts of it held would leave the others no way.
  const unordered: Model = { columns: sheet.columns, rows: [...sheet.rows] };
  alikeRows(sheet, grid);
  return {
    model: sheet,
    choices: grid.places.filter(({ bed, wish }) => shutFor(bed, wish) === undefined).length,
    read: (values) => filled(problem, readPlan(grid, values)),
    around: (plan, part) => around(unordered, grid, plan, part),
  };
}

function around(sheet: Model, grid: Grid, plan: readonly Placement[], part: Part): PartModel {
  const held = new Map<number, number>();
  for (const { bed, wish, column, areaColumn } of grid.places) {
    if (part(bed, wish)) continue;
    const place = plan.find(
      ({ bedId, cropId, season }) => bedId === bed.id && cropId === wish.cropId && season === wish.season,
    );
    held.set(column, place === undefined ? 0 : 1);
    if (areaColumn !== undefined) held.set(areaColumn, place?.areaM2 ?? 0);
  }
  for (const { column, members } of grid.families) {
    const values = members.flatMap((member) => held.get(member) ?? []);
    if (values.length === members.length) held.set(column, Math.max(...values));
  }
  const { model, columns } = reduced(sheet, held);
  const heldValues = Object.fromEntries([...held].map(([column, value]) => [columnName(column), value]));
  const read = (values: Values): Placement[] => {
    const found = columns.map((column, at) => [columnName(column), values[columnName(at)] ?? 0] as const);
    return filled(grid.problem, readPlan(grid, { ...heldValues, ...Object.fromEntries(found) }));
  };
  return { model, read };
}

/** What is given of a wish as terms, and the whole of it. */
function amountOf({ places }: Grid, wish: PlanWish): { terms: (readonly [number, number])[]; whole: number } {
  const own = places.filter((place) => place.wish === wish);
  const terms = own.map(({ column, areaColumn }) => [areaColumn ?? column, 1] as const);
  return { terms, whole: 'beds' in wish.amount ? wish.amount.beds : wish.amount.areaM2 };
}

/** The first crops of the list to the first beds: a product of the two ranks has one least order. */
function tieCosts(sheet: ModelSheet, { problem, wishes, places }: Grid): void {
  const scale = TIE_COST / (problem.beds.length * wishes.length);
  for (const { bed, wish, column, areaColumn } of places) {
    const rank = (problem.beds.indexOf(bed) + 1) * (wishes.length - wishes.indexOf(wish));
    sheet.charge(column, scale * rank);
    if (areaColumn !== undefined) sheet.charge(areaColumn, (scale * rank) / TIE_AREA);
  }
}

/** By how much less a square metre counts than a place where plans are equally good. */
const TIE_AREA = 10;

function readPlan({ places }: Grid, values: Readonly<Record<string, number>>): Placement[] {
  return places.flatMap(({ bed, wish, column, areaColumn }: Place) => {
    const stands = (values[columnName(column)] ?? 0) > 0.5;
    const areaM2 = areaColumn === undefined ? bed.areaM2 : hundredths(values[columnName(areaColumn)] ?? 0);
    return stands ? [{ bedId: bed.id, season: wish.season, cropId: wish.cropId, areaM2 }] : [];
  });
}

function hundredths(areaM2: number): number {
  return Math.round(areaM2 * 100) / 100;
}

/** Named rules with the rows that hold them, from which any set of them can be tried. */
export interface RuleRows {
  rules: readonly NamedRule[];
  /** Whether a set of rules can be kept: a model that has a solution only then. */
  together(rules: readonly NamedRule[]): Model;
  /** The same with every rule able to give way, the least costly way the best. */
  givingWay(rules: readonly NamedRule[]): GivingWay;
}

/** A model whose answer says which rules give way. */
export interface GivingWay {
  model: Model;
  /** What each rule gave way by: of a wish the share not met, else how often or by how many square metres. */
  read(values: Readonly<Record<string, number>>): { rule: NamedRule; by: number }[];
}

/** Every wish in full and every rule that may not break, each by its name. */
export function ruleRows(problem: RotationProblem): RuleRows {
  const sheet = new ModelSheet();
  const grid = gridOf(sheet, problem);
  const named = hardRows(sheet, grid);
  const wishes = grid.wishes.map((wish): NamedRule => {
    const rule: NamedRule = { kind: 'wish', wish };
    const { terms, whole } = amountOf(grid, wish);
    sheet.row(
      terms.map(([column, times]) => [column, times / whole] as const),
      { least: enoughOf(wish) / whole, of: keyOf(rule) },
    );
    return rule;
  });
  const rules = [...new Map([...named, ...wishes].map((rule) => [keyOf(rule), rule])).values()];
  return {
    rules,
    together: (kept) => ({ columns: sheet.columns, rows: rowsOf(sheet, kept) }),
    givingWay: (kept) => givingWay(sheet, kept),
  };
}

function rowsOf({ rows }: Model, kept: readonly NamedRule[]): Row[] {
  const keys = new Set(kept.map(keyOf));
  return rows.filter(({ of }) => of === undefined || keys.has(of));
}

function givingWay(from: Model, kept: readonly NamedRule[]): GivingWay {
  const sheet = new ModelSheet();
  for (const column of from.columns) sheet.column(column);
  const ways: { rule: NamedRule; column: number }[] = [];
  const byKey = new Map(kept.map((rule) => [keyOf(rule), rule]));
  for (const { terms, of, ...ends } of rowsOf(from, kept)) {
    const rule = of === undefined ? undefined : byKey.get(of);
    const pairs = terms.map(({ column, times }) => [column, times] as const);
    if (rule === undefined) {
      sheet.row(pairs, ends);
      continue;
    }
    const column = sheet.column({ upper: MOST_GIVEN, cost: GIVING_WAY[rule.kind] });
    ways.push({ rule, column });
    sheet.row([...pairs, [column, ends.least === undefined ? -1 : 1]], ends);
  }
  const read: GivingWay['read'] = (values) =>
    kept.flatMap((rule) => {
      const own = ways.filter((way) => way.rule === rule);
      const by = own.reduce((sum, { column }) => sum + (values[columnName(column)] ?? 0), 0);
      return by > LEAST_GIVEN ? [{ rule, by }] : [];
    });
  return { model: sheet, read };
}

/** No rule gives way by more: a garden has fewer square metres. */
const MOST_GIVEN = 1e6;
/** What the solver's rounding may leave. */
const LEAST_GIVEN = 1e-5;
