/**
 * The beds by seasons, wishes, and taking a proposal.
 */
import { createHash } from 'node:crypto';
import { type Context, Hono } from 'hono';
import { memory } from '../climate/remembered.ts';
import type { Fact } from '../garden/facts.ts';
import type { CropWish } from '../garden/garden.ts';
import { suggestion } from '../garden/nearest-name.ts';
import type { Problem } from '../garden/problem.ts';
import { vegetableById, vegetables } from '../handbook/vegetables.ts';
import { MOST_SEASONS } from '../practices/rotation-plan/garden-problem.ts';
import type { RotationProblem } from '../practices/rotation-plan/problem.ts';
import { brokenBy } from '../steward/bed-plan/broken-by.ts';
import { emptiedTexts } from '../steward/bed-plan/proposal-words.ts';
import { plannedProblem, seasonTable } from '../steward/bed-plan/season-table.ts';
import { LEFT_OUT, takenPlan } from '../steward/bed-plan/taken-plan.ts';
import { planningInput } from '../steward/planner.ts';
import type { GardenView, ReportPreview, Steward } from '../steward/steward.ts';
import { bedsPath, type ProposalAsked, takePlanPath } from './addresses.ts';
import { areaIn } from './areas.ts';
import { Form, readForm, SHOWN_CHARACTERS } from './form.ts';
import { BY, gardenView, wholeNumber } from './garden-view.ts';
import { heldFertility } from './held-fertility.ts';
import { heldProposals } from './held-proposals.ts';
import { bedsPage, type ShownProposal } from './pages/beds.tsx';
import { cropPlanPage } from './pages/crop-plan.tsx';
import { type SentWish, wishSeasons, wishWord } from './pages/wishes.tsx';
import { refusalsOf } from './task-route.tsx';

/** What is held between requests. */
interface Room {
  steward: Steward;
  problemOf: (view: GardenView) => RotationProblem;
  proposalFor: (view: GardenView, asked: ProposalAsked) => Promise<ShownProposal>;
}

/** The page, its wishes, and a proposal taken. */
export function bedsRoutes(steward: Steward): Hono {
  // A view is the same object until a fact or the day changes.
  const problems = memory<GardenView, string, RotationProblem>();
  const proposals = heldProposals();
  const room: Room = {
    steward,
    problemOf: (view) => problems(view, 'planned', () => plannedProblem(planningInput(view), MOST_SEASONS)),
    proposalFor: async (view, asked) => {
      const proposal = await proposals(view, asked);
      return { asked, proposal, taken: takenPlan(planningInput(view), proposal, asked.anew) };
    },
  };
  return new Hono()
    .get('/gardens/:gardenId/beds', async (c) => {
      const view = await gardenView(steward, c);
      const query = new Form(new Map(Object.entries(c.req.queries())));
      const asked = askedIn(query);
      return show(c, room, { view, asked, problems: query.problems });
    })
    .post('/gardens/:gardenId/wishes', async (c) => wish(c, room, await readForm(c)))
    .get('/gardens/:gardenId/take-plan', async (c) => {
      const view = await gardenView(steward, c);
      const query = new Form(new Map(Object.entries(c.req.queries())));
      const asked = askedIn(query) ?? { years: 1, anew: false };
      if (query.problems.length > 0) return show(c, room, { view, asked: undefined, problems: query.problems });
      return preview(c, room, view, asked);
    })
    .post('/gardens/:gardenId/take-plan', async (c) => take(c, room, await readForm(c)));
}

/** What is asked for, where anything is. */
function askedIn(form: Form): ProposalAsked | undefined {
  const text = form.text('years');
  if (text === '') return undefined;
  const years = wholeNumber(text);
  if (years !== undefined && years <= MOST_SEASONS) return { years, anew: form.text('anew') === 'yes' };
  const what = `"${text.slice(0, SHOWN_CHARACTERS)}" is not a number of seasons that can be planned.`;
  form.refuse({ where: 'For how many seasons', what, mend: `Choose 1 to ${MOST_SEASONS}.` });
  return undefined;
}

interface Shown {
  view: GardenView;
  asked?: ProposalAsked | undefined;
  problems?: readonly Problem[];
  sent?: SentWish;
}

async function show(c: Context, room: Room, { view, asked, problems = [], sent }: Shown) {
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
  return c.html(
    bedsPage({ view, table, fed: heldFertility(view), shown, problems: all, sent }),
    all.length > 0 ? 422 : 200,
  );
}

async function wish(c: Context, room: Room, form: Form) {
  const view = await gardenView(room.steward, c);
  const { garden } = view;
  const dropped = form.text('do') === 'drop';
  const said = dropped ? wishDropped(form, garden.wishes) : wishMade(form, view);
  const problems =
    said === undefined ? form.problems : await refusalsOf(() => room.steward.report(garden.id, said, BY));
  if (problems.length === 0) return c.redirect(bedsPath(garden.id), 303);
  const sent = dropped
    ? {}
    : {
        sent: {
          crop: form.text('crop'),
          amount: form.text('amount'),
          in: form.text('in'),
          season: form.text('season'),
        },
      };
  return show(c, room, { view, problems, ...sent });
}

type Said<Kind extends Fact['kind']> = Extract<Fact, { kind: Kind }> | undefined;

function wishDropped(form: Form, wishes: readonly CropWish[]): Said<'wish-dropped'> {
  const wish = wishes.find((each) => wishWord(each) === form.text('wish'));
  if (wish === undefined) {
    form.refuse({ where: 'The wish', what: 'It is not wished for any more.', mend: 'Look at the list once more.' });
    return undefined;
  }
  const { cropId, season } = wish;
  return { kind: 'wish-dropped', cropId, ...(season === undefined ? {} : { season }) };
}

/** The wish a form asks for; it takes the place of that of the same crop and season. */
function wishMade(form: Form, view: GardenView): Said<'crop-wished'> {
  const word = form.text('crop');
  const ids = vegetables.map(({ id }) => id);
  if (!ids.includes(word)) {
    const what = word === '' ? 'None is chosen.' : `"${word.slice(0, SHOWN_CHARACTERS)}" is not a known crop.`;
    form.refuse({ where: 'The crop', what, mend: word === '' ? 'Choose one from the list.' : suggestion(word, ids) });
  }
  const season = form.text('season');
  const asked = wholeNumber(season);
  if (season !== '' && (asked === undefined || !wishSeasons(view).includes(asked)))
    form.refuse({ where: 'For', what: 'That season cannot be planned.', mend: 'Choose one from the list.' });
  const amount = amountIn(form, view);
  if (amount === undefined || form.problems.length > 0) return undefined;
  return { kind: 'crop-wished', cropId: word, amount, ...(asked === undefined ? {} : { season: asked }) };
}

/** Most whole beds a wish may name: as in a garden file. */
const MOST_BEDS = 200;

function amountIn(form: Form, view: GardenView): CropWish['amount'] | undefined {
  const where = 'How much';
  const text = form.text('amount');
  if (text === '') {
    form.refuse({ where, what: 'It is empty.', mend: 'Give a number, such as 3.' });
    return undefined;
  }
  const unit = form.text('in');
  if (unit !== 'beds' && unit !== 'area') {
    const what =
      unit === '' ? 'It is not told in what.' : `"${unit.slice(0, SHOWN_CHARACTERS)}" is not counted in here.`;
    form.refuse({ where, what, mend: 'Count in whole beds or in area.' });
    return undefined;
  }
  if (unit === 'area') {
    const areaM2 = areaIn(form, 'amount', where, view.garden.place.units);
    return areaM2 === undefined ? undefined : { areaM2 };
  }
  const beds = wholeNumber(text);
  if (beds !== undefined && beds <= MOST_BEDS) return { beds };
  const what = `"${text.slice(0, SHOWN_CHARACTERS)}" is no count of whole beds.`;
  form.refuse({ where, what, mend: 'Give a whole number, such as 1, or count in area.' });
  return undefined;
}

/** Tells one plan from another, so that the one that was looked at is the one that is taken. */
function markOf(shown: ShownProposal): string {
  return createHash('sha256').update(JSON.stringify(shown.taken.fact)).digest('hex').slice(0, 16);
}

async function preview(c: Context, room: Room, view: GardenView, asked: ProposalAsked) {
  const { garden } = view;
  if (garden.wishes.length === 0) return show(c, room, { view, asked });
  const shown = await room.proposalFor(view, asked);
  const { fact, left } = shown.taken;
  const nothing = fact.plantings.length + fact.dropped.length === 0;
  let found: ReportPreview | undefined;
  const problems = nothing
    ? [nothingToTake(left.length)]
    : await refusalsOf(async () => {
        found = await room.steward.previewReport(garden.id, fact);
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

async function take(c: Context, room: Room, form: Form) {
  const view = await gardenView(room.steward, c);
  const asked = askedIn(form);
  if (asked === undefined && form.problems.length === 0)
    form.refuse({ where: 'For how many seasons', what: 'It is empty.', mend: `Choose 1 to ${MOST_SEASONS}.` });
  if (asked === undefined || view.garden.wishes.length === 0)
    return show(c, room, { view, problems: form.problems, asked });
  const shown = await room.proposalFor(view, asked);
  if (markOf(shown) !== form.text('plan')) {
    const moved = {
      where: 'the plan',
      what: 'The garden has changed since it was shown.',
      mend: 'Look at it once more.',
    };
    return show(c, room, { view, asked, problems: [moved] });
  }
  const problems = await refusalsOf(() => room.steward.report(view.garden.id, shown.taken.fact, BY));
  if (problems.length > 0) return show(c, room, { view, asked, problems });
  return c.redirect(bedsPath(view.garden.id), 303);
}
