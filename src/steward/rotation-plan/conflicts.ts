/**
 * Why wishes cannot be met: a smallest set of rules that cannot all be kept, and the one that is cheapest to give way on.
 *
 * A set is found by leaving rules out one after another as long as the rest still cannot be kept (a deletion filter). The
 * solver's own account of a conflict is not used: it is empty where only whole numbers stand in the way.
 */
import { lpText } from '../../practices/rotation-plan/lp-text.ts';
import type { NamedRule } from '../../practices/rotation-plan/named-rules.ts';
import type { PlanWish, RotationProblem } from '../../practices/rotation-plan/problem.ts';
import { type RuleRows, ruleRows } from '../../practices/rotation-plan/rotation-models.ts';
import type { Solver } from '../solver/solver.ts';

/** Rules that cannot all be kept; with any one of them left out the others can. */
export interface Conflict {
  rules: readonly NamedRule[];
  /** What it takes at the least: of a wish the share to do without, else how often a rule would break or by how much. */
  cheapest: readonly { rule: NamedRule; by: number }[];
}

/** Conflicts told at the most. House default. */
const MOST_CONFLICTS = 3;

/**
 * What stands in the way of wishes, one conflict after another: each is looked for as if the last had been given way on.
 * None where all could be kept.
 *
 * @param unmet the wishes not met, the one that lacks most first
 */
export async function conflictsOf(
  problem: RotationProblem,
  unmet: readonly PlanWish[],
  solver: Solver,
): Promise<Conflict[]> {
  const rows = ruleRows(problem);
  const conflicts: Conflict[] = [];
  let given: NamedRule[] = [];
  for (const wish of unmet) {
    while (conflicts.length < MOST_CONFLICTS && !given.some((rule) => isWish(rule, wish))) {
      const within = await impossibleWithin(rows, wish, given, solver);
      if (within === undefined) break;
      const rules = await smallest(rows, within, solver);
      const cheapest = await cheapestOf(rows, rules, solver);
      conflicts.push({ rules, cheapest });
      if (cheapest.length === 0) break;
      given = [...given, ...cheapest.map(({ rule }) => rule)];
    }
  }
  return conflicts;
}

function isWish(rule: NamedRule, { cropId, season }: PlanWish): boolean {
  return rule.kind === 'wish' && rule.wish.cropId === cropId && rule.wish.season === season;
}

/** The rules with the wish alone, with its season's, or with all: the first of these that cannot be kept. */
async function impossibleWithin(
  rows: RuleRows,
  wish: PlanWish,
  given: readonly NamedRule[],
  solver: Solver,
): Promise<NamedRule[] | undefined> {
  const standing = rows.rules.filter((rule) => !given.includes(rule));
  const rules = standing.filter((rule) => rule.kind !== 'wish');
  const wishes = standing.filter((rule) => rule.kind === 'wish');
  const widening = [
    wishes.filter((rule) => isWish(rule, wish)),
    wishes.filter((rule) => rule.wish.season === wish.season),
    wishes,
  ];
  for (const some of widening) {
    // Wishes stand last, so that the filter leaves out what it can of the others' amounts before this one's.
    const ordered = [
      ...some.filter((rule) => !isWish(rule, wish)),
      ...rules,
      ...some.filter((rule) => isWish(rule, wish)),
    ];
    if (await isImpossible(rows, ordered, solver)) return ordered;
  }
  return undefined;
}

async function isImpossible(rows: RuleRows, rules: readonly NamedRule[], solver: Solver): Promise<boolean> {
  return (await solver.solve(lpText(rows.together(rules)))).found === 'impossible';
}

/** Leaves rules out, many at once and then fewer, as long as the rest still cannot be kept. */
async function smallest(rows: RuleRows, from: readonly NamedRule[], solver: Solver): Promise<NamedRule[]> {
  let kept = [...from];
  for (let size = Math.ceil(kept.length / 2); size >= 1; size = size === 1 ? 0 : Math.ceil(size / 2)) {
    for (let at = 0; at < kept.length; ) {
      const without = [...kept.slice(0, at), ...kept.slice(at + size)];
      if (await isImpossible(rows, without, solver)) kept = without;
      else at += size;
    }
  }
  return kept;
}

async function cheapestOf(rows: RuleRows, rules: readonly NamedRule[], solver: Solver): Promise<Conflict['cheapest']> {
  const { model, read } = rows.givingWay(rules);
  const solved = await solver.solve(lpText(model));
  return 'values' in solved ? read(solved.values) : [];
}
