/**
 * The rules that may not break as a gardener could give way on them: one crop's amount, one family's wait, one bed's
 * disease. They are what an impossible wish is explained by.
 */
import type { RotationGroup } from '../../handbook/shapes/plant.ts';
import type { PlanWish } from './problem.ts';
import { UNMET } from './rules.ts';

/** A rule that can be named by itself. */
export type NamedRule =
  | { kind: 'wish'; wish: PlanWish }
  | { kind: 'returns'; group: RotationGroup; years: number }
  | { kind: 'disease'; bedId: string; disease: string }
  | { kind: 'lasting'; bedId: string; cropId: string }
  | { kind: 'settled'; bedId: string; season: number }
  | { kind: 'still-stands' }
  | { kind: 'too-late'; cropId: string; season: number }
  | { kind: 'area' };

/** The key that rows of the model carry for it. */
export function keyOf(rule: NamedRule): string {
  switch (rule.kind) {
    case 'wish':
      return `wish ${rule.wish.season} ${rule.wish.cropId}`;
    case 'returns':
      return `returns ${rule.group}`;
    case 'disease':
      return `disease ${rule.bedId} ${rule.disease}`;
    case 'lasting':
      return `lasting ${rule.bedId}`;
    case 'settled':
      return `settled ${rule.bedId} ${rule.season}`;
    case 'too-late':
      return `too-late ${rule.season} ${rule.cropId}`;
    case 'still-stands':
    case 'area':
      return rule.kind;
    default:
      return rule satisfies never;
  }
}

/**
 * What it would cost the household to give way on a rule, by which the cheapest is chosen: a planned crop moved, less of a
 * crop, one more bed, a crop cleared early, a family back too soon, a lasting crop taken out, sick ground planted; a day
 * that is past does not come back. House defaults.
 */
export const GIVING_WAY: Readonly<Record<NamedRule['kind'], number>> = {
  settled: 40,
  wish: UNMET.wish + UNMET.bed,
  area: 150,
  'still-stands': 200,
  returns: 400,
  lasting: 1000,
  disease: 2000,
  'too-late': 10_000,
};
