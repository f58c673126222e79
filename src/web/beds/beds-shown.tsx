/**
 * The page of the beds as it is answered, with a proposal in front where one is asked for.
 */
import type { Context } from 'hono';
import { memory } from '../../climate/remembered.ts';
import { InputRefused, type Problem } from '../../garden/problem.ts';
import { MOST_SEASONS } from '../../practices/rotation-plan/garden-problem.ts';
import type { RotationProblem } from '../../practices/rotation-plan/problem.ts';
import { plannedProblem, seasonTable } from '../../steward/bed-plan/season-table.ts';
import { takenPlan } from '../../steward/bed-plan/taken-plan.ts';
import type { GardenView, ReportPreview, Steward } from '../../steward/doings/steward.ts';
import type { Say } from '../../steward/long-work/say.ts';
import { planningInput } from '../../steward/planning/planner.ts';
import type { RotationProposal } from '../../steward/rotation-plan/propose.ts';
import type { ProposalAsked } from '../addresses/addresses.ts';
import { type Form, SHOWN_CHARACTERS } from '../requests/form.ts';
import { wholeNumber } from '../requests/garden-view.ts';
import type { UnderWayPages } from '../under-way/under-way.tsx';
import { bedsPage, type ShownProposal } from './beds.tsx';
import { heldProposals } from './held-proposals.ts';
import type { SentWish } from './wishes.tsx';

/** What is done while a proposal is made, as a heading. */
export const PROPOSING = 'Proposing a plan';

/** What is held between requests. */
export interface BedsRoom {
  steward: Steward;
  underWay: UnderWayPages;
  problemOf: (view: GardenView) => RotationProblem;
  proposalFor: (view: GardenView, asked: ProposalAsked, say?: Say) => Promise<ShownProposal>;
  /** What taking a proposal would do. */
  previewFor: (view: GardenView, shown: ShownProposal) => Promise<ReportPreview>;
}

/** Nothing held yet. */
export function bedsRoom(steward: Steward, underWay: UnderWayPages): BedsRoom {
  // A view is the same object until a fact or the day changes.
  const problems = memory<GardenView, string, RotationProblem>();
  const proposals = heldProposals();
  const previews = new WeakMap<RotationProposal, Promise<ReportPreview>>();
  return {
    steward,
    underWay,
    problemOf: (view) => problems(view, 'planned', () => plannedProblem(planningInput(view), MOST_SEASONS)),
    proposalFor: async (view, asked, say) => {
      const proposal = await proposals(view, asked, say);
      return { asked, proposal, taken: takenPlan(planningInput(view), proposal, asked.anew) };
    },
    previewFor: ({ garden }, { proposal, taken }) => {
      const known = previews.get(proposal);
      if (known !== undefined) return known;
      const preview = steward.previewReport(garden.id, taken.fact);
      previews.set(proposal, preview);
      // A refusal stands: asked for anew it would be worked out again for every look at the page that tells it.
      preview.catch((error) => error instanceof InputRefused || previews.delete(proposal));
      return preview;
    },
  };
}

/** What is asked for, where anything is. */
export function askedIn(form: Form): ProposalAsked | undefined {
  const text = form.text('years');
  if (text === '') return undefined;
  const years = wholeNumber(text);
  if (years !== undefined && years <= MOST_SEASONS) return { years, anew: form.text('anew') === 'yes' };
  const what = `"${text.slice(0, SHOWN_CHARACTERS)}" is not a number of seasons that can be planned.`;
  form.refuse({ where: 'For how many seasons', what, mend: `Choose 1 to ${MOST_SEASONS}.` });
  return undefined;
}

/** What the page is to show. */
interface Shown {
  view: GardenView;
  asked?: ProposalAsked | undefined;
  problems?: readonly Problem[];
  sent?: SentWish;
}

/** The page; refused where anything asked for cannot be. */
export async function show(c: Context, room: BedsRoom, { view, asked, problems = [], sent }: Shown) {
  const noWish: Problem = {
    where: 'What you want to grow',
    what: 'Nothing is wished for.',
    mend: 'Say it in the form below; then a plan can be proposed.',
  };
  const none = asked !== undefined && view.garden.wishes.length === 0;
  const shown = asked === undefined || none ? undefined : await room.proposalFor(view, asked);
  const held = shown === undefined ? { problem: room.problemOf(view) } : shown.proposal;
  const table = seasonTable(
    planningInput(view),
    shown === undefined ? held : { problem: shown.proposal.problem, proposal: shown.proposal },
  );
  const all = none ? [noWish, ...problems] : problems;
  const fed = await room.steward.fertility(view);
  return c.html(bedsPage({ view, table, fed, shown, problems: all, sent }), all.length > 0 ? 422 : 200);
}
