/**
 * Proposals held for as long as the garden they were made for stands as it is: solving takes seconds, and is done once.
 */
import { planningInput } from '../steward/planner.ts';
import { proposeRotation, type RotationProposal } from '../steward/rotation-plan/propose.ts';
import type { Say } from '../steward/say.ts';
import type { GardenView } from '../steward/steward.ts';
import type { ProposalAsked } from './addresses.ts';

/** Hands out a proposal, and makes it the first time. Those that wait for the same one wait for one solve. */
export type HeldProposals = (view: GardenView, asked: ProposalAsked, say?: Say) => Promise<RotationProposal>;

/** Nothing held yet. A view is the same object until a fact or the day changes; what failed is tried again. */
export function heldProposals(): HeldProposals {
  const held = new WeakMap<GardenView, Map<string, Promise<RotationProposal>>>();
  return (view, asked, say) => {
    const ofView = held.get(view) ?? new Map<string, Promise<RotationProposal>>();
    held.set(view, ofView);
    const name = JSON.stringify([asked.years, asked.anew]);
    const known = ofView.get(name);
    if (known !== undefined) return known;
    const proposal = proposeRotation(planningInput(view), asked, say);
    ofView.set(name, proposal);
    proposal.catch(() => ofView.delete(name));
    return proposal;
  };
}
