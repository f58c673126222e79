/**
 * Seed in time: old packets tested, one order a season, garlic in late summer.
 */
import type { TaskDraft } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import { garlicOrderDrafts } from './seed-garlic-draft.ts';
import { seedNeeds } from './seed-needs.ts';
import { orderWindow, seedOrderDraft } from './seed-order-draft.ts';
import { seedTestDraft } from './seed-test-draft.ts';

/** Every test and order of seed for the plantings still to come. */
export function seedDrafts(input: PracticeInput): TaskDraft[] {
  const all = seedNeeds(input);
  const seasons = [...new Set(all.map(({ season }) => season))];
  const bySeason = seasons.flatMap((season) => {
    const needs = all.filter((need) => need.season === season);
    const window = orderWindow(input, needs);
    const test = seedTestDraft(input, season, needs, window);
    const order = window && seedOrderDraft(input, season, needs, { window, tested: test !== undefined });
    return [test, order].filter((draft) => draft !== undefined);
  });
  return [...bySeason, ...garlicOrderDrafts(input)];
}
