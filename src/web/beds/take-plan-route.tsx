/**
 * Taking a proposed plan: shown with all it would do, then taken in as one.
 */
import { createHash } from 'node:crypto';
import { type Context, Hono } from 'hono';
import { InputRefused, type Problem } from '../../garden/problem.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { MOST_SEASONS } from '../../practices/rotation-plan/garden-problem.ts';
import { brokenBy } from '../../steward/bed-plan/broken-by.ts';
import { emptiedTexts } from '../../steward/bed-plan/proposal-words.ts';
import { LEFT_OUT } from '../../steward/bed-plan/taken-plan.ts';
import type { GardenView, ReportPreview } from '../../steward/doings/steward.ts';
import { planningInput } from '../../steward/planning/planner.ts';
import { bedsPath, type ProposalAsked, takePlanPath } from '../addresses/addresses.ts';
import { keptChange } from '../changes/kept-change.ts';
import { Form, readForm } from '../requests/form.ts';
import { BY, gardenView } from '../requests/garden-view.ts';
import { refusalsOf } from '../requests/refusals.ts';
import type { ShownProposal } from './beds.tsx';
import { askedIn, type BedsRoom, PROPOSING, show } from './beds-shown.tsx';
import { cropPlanPage } from './crop-plan.tsx';

const PATH = '/gardens/:gardenId/take-plan';

/** The preview of a proposal that would be taken, and what takes it. */
export function takePlanRoutes(room: BedsRoom): Hono {
  return new Hono()
    .get(PATH, async (c) => {
      const view = await gardenView(room.steward, c);
      const query = new Form(new Map(Object.entries(c.req.queries())));
      const asked = askedIn(query) ?? { years: 1, anew: false };
      if (query.problems.length > 0) return show(c, room, { view, asked: undefined, problems: query.problems });
      if (view.garden.wishes.length === 0) return show(c, room, { view, asked });
      return room.underWay.start(c, {
        garden: view.garden,
        title: PROPOSING,
        work: async (say) => {
          const shown = await room.proposalFor(view, asked, say);
          await say('Trying out what taking it would do', 0.97);
          // What is refused here is told with the preview.
          if (!isNothing(shown)) await refusalsOf(() => room.previewFor(view, shown));
          return takePlanPath(view.garden.id, asked);
        },
        failed: bedsPath(view.garden.id),
        atOnce: () => preview(c, room, view, asked),
      });
    })
    .post(PATH, async (c) => take(c, room, await readForm(c)));
}

/** Tells one plan from another, so that the one that was looked at is the one that is taken. */
function markOf(shown: ShownProposal): string {
  return createHash('sha256').update(JSON.stringify(shown.taken.fact)).digest('hex').slice(0, 16);
}

function isNothing({ taken: { fact } }: ShownProposal): boolean {
  return fact.plantings.length + fact.dropped.length === 0;
}

async function preview(c: Context, room: BedsRoom, view: GardenView, asked: ProposalAsked) {
  const { garden } = view;
  const shown = await room.proposalFor(view, asked);
  const { fact, left } = shown.taken;
  let found: ReportPreview | undefined;
  const problems = isNothing(shown)
    ? [nothingToTake(left.length)]
    : await refusalsOf(async () => {
        found = await room.previewFor(view, shown);
      });
  const leftOut = left.map(({ cropId, bedId }) => {
    const bed = garden.beds.find(({ id }) => id === bedId)?.name ?? bedId;
    return `${vegetableById(cropId).name} in ${bed} is left out: ${LEFT_OUT}.`;
  });
  const notes = [...emptiedTexts(shown.proposal, shown.taken), ...leftOut];
  const page = cropPlanPage({
    view,
    plan: found && { fact, preview: found },
    problems,
    action: takePlanPath(garden.id),
    fields: { years: String(asked.years), anew: asked.anew ? 'yes' : '', plan: markOf(shown) },
    button: 'Take this plan',
    notes,
    changed: found && brokenBy(planningInput(view), found.garden),
  });
  return c.html(page, problems.length > 0 ? 422 : 200);
}

function nothingToTake(left: number): Problem {
  const mend =
    left === 0
      ? 'Wish for more, or for other seasons.'
      : 'Choose a bed and a day for it yourself, under "change" in the table.';
  return { where: 'the proposal', what: 'It would plan nothing.', mend };
}

async function take(c: Context, room: BedsRoom, form: Form) {
  const view = await gardenView(room.steward, c);
  const { garden } = view;
  const asked = askedIn(form);
  if (asked === undefined && form.problems.length === 0)
    form.refuse({ where: 'For how many seasons', what: 'It is empty.', mend: `Choose 1 to ${MOST_SEASONS}.` });
  if (asked === undefined || garden.wishes.length === 0) return show(c, room, { view, problems: form.problems, asked });
  return room.underWay.start(c, {
    garden,
    title: 'Taking the plan in',
    work: async (say) => {
      const shown = await room.proposalFor(view, asked, say);
      if (markOf(shown) !== form.text('plan')) throw new InputRefused('The plan was not taken.', [MOVED]);
      await say('Taking the plan in', 0.97);
      const { fact } = shown.taken;
      return keptChange(room.steward, garden.id, bedsPath(garden.id), () => room.steward.report(garden.id, fact, BY));
    },
    failed: bedsPath(garden.id, asked),
    refused: (problems) => show(c, room, { view, asked, problems }),
  });
}

const MOVED: Problem = {
  where: 'the plan',
  what: 'The garden has changed since it was shown.',
  mend: 'Look at it once more.',
};
