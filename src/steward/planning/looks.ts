/**
 * Looks at a garden that take as long as a plan: the crew's work, done once for what is shown, the same object until a fact
 * or the day changes.
 */
import type { LedgerTold } from '../../digest/fertility-sheet.ts';
import type { BedGaps } from '../../practices/cover-cropping/fit/bed-gaps.ts';
import type { CropChoice } from '../bed-plan/crop-choices.ts';
import type { SeasonEnd } from '../crew/look.ts';
import type { LookDoings, Shown } from '../doings/look-doings.ts';
import { heldWork } from '../long-work/held-work.ts';
import type { Planner } from './planner.ts';

export function looksIn(planner: Planner): LookDoings {
  const seasonEnds = heldWork<Shown, SeasonEnd>();
  const gaps = heldWork<Shown, BedGaps>();
  const ledgers = heldWork<Shown, LedgerTold[]>();
  const crops = heldWork<Shown, CropChoice[]>();
  return {
    seasonEnd: (shown) => seasonEnds(shown, 'all', () => planner.look(shown, { at: 'season end' })),
    bedGaps: (shown, bedId) => gaps(shown, bedId, () => planner.look(shown, { at: 'gaps', bedId })),
    fertility: (shown) => ledgers(shown, 'all', () => planner.look(shown, { at: 'fertility' })),
    cropChoices: (shown, { bedId, season }) =>
      crops(shown, JSON.stringify([bedId, season]), () => planner.look(shown, { at: 'crops', bedId, season })),
  };
}
