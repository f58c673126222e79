/**
 * Proposals held for as long as the garden they were made for stands as it is: solving takes seconds, and is done once.
 */

import type { GardenView } from '../../steward/doings/steward.ts';
import { heldWork } from '../../steward/long-work/held-work.ts';
import type { Say } from '../../steward/long-work/say.ts';
import { planningInput } from '../../steward/planning/planner.ts';
import { proposeRotation, type RotationProposal } from '../../steward/rotation-plan/propose.ts';
import type { ProposalAsked } from '../addresses/addresses.ts';

/** Hands out a proposal, and makes it the first time. Those that wait for the same one wait for one solve. */
export type HeldProposals = (view: GardenView, asked: ProposalAsked, say?: Say) => Promise<RotationProposal>;

/** Nothing held yet. A view is the same object until a fact or the day changes; what failed is tried again. */
export function heldProposals(): HeldProposals {
  const held = heldWork<GardenView, RotationProposal>();
  return (view, asked, say) =>
    held(view, JSON.stringify([asked.years, asked.anew]), () => proposeRotation(planningInput(view), asked, say));
}
