/**
 * Taking entries of the ledger back: shown first, and refused where the garden would not hold together without them.
 */

import type { Steward } from '../doings/steward.ts';
import { movesBetween } from '../ledger/moves-between.ts';
import { entryToUndo, leaningOn, withUndone } from '../ledger/undo.ts';
import type { Planner } from '../planning/planner.ts';
import type { Accept } from './accept.ts';
import { refusal } from './marking.ts';
import { refuseContradiction, refuseCrowding } from './undo-check.ts';

/** How a steward takes back what it was told. */
export function takingBackIn(planner: Planner, accept: Accept): Pick<Steward, 'previewUndo' | 'undo'> {
  return {
    async previewUndo(gardenId, wanted) {
      const view = await planner.view(gardenId);
      const entry = entryToUndo(view.ledger, wanted);
      if (entry === undefined) return undefined;
      const undone = withUndone(view.ledger, entry, view.plan.today);
      refuseContradiction(view.garden, undone);
      const after = await planner.wouldBe(undone, view);
      refuseCrowding(view.garden, after);
      return { entry, leaning: leaningOn(view.ledger, entry), moves: movesBetween(view.plan, after.plan) };
    },
    undo: (gardenId, wanted, by) =>
      accept(gardenId, by, async (view) => {
        const entry = entryToUndo(view.ledger, wanted);
        if (entry === undefined) throw refusal('undo', 'Nothing can be undone.', 'Mark or change something first.');
        refuseContradiction(view.garden, withUndone(view.ledger, entry, view.plan.today));
        const facts = [{ kind: 'entry-undone' as const, entry: entry.entry }];
        return { facts, refuse: (made) => refuseCrowding(view.garden, made) };
      }),
  };
}
