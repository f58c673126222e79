/**
 * Season end, the pages of the beds, and choosing what lies in a gap.
 */
import { type Context, Hono } from 'hono';
import { choiceNotes } from '../../digest/choice-words.ts';
import { plannedFill } from '../../digest/fill-sheet.ts';
import { soilCase } from '../../digest/soil-case.ts';
import type { Bed } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import { isDay } from '../../measures/days.ts';
import { type BedGaps, choiceOf, type GapOfBed, gapOn } from '../../practices/cover-cropping/fit/bed-gaps.ts';
import { choiceName } from '../../practices/cover-cropping/fit/fit.ts';
import type { CoverChoice, GardenView, ReportPreview, Steward } from '../../steward/doings/steward.ts';
import { planningInput } from '../../steward/planning/planner.ts';
import { bedPath, gapWord } from '../addresses/addresses.ts';
import { keptChange } from '../changes/kept-change.ts';
import { Form, readForm, SHOWN_CHARACTERS } from '../requests/form.ts';
import { BY, gardenView } from '../requests/garden-view.ts';
import { refusalsOf } from '../requests/refusals.ts';
import { notFound } from '../requests/trouble.ts';
import { bedPage } from './bed.tsx';
import { choicePreviewPage } from './choice-preview.tsx';
import { seasonEndPage } from './season-end.tsx';

const BED = '/gardens/:gardenId/beds/:bedId';

/** The pages, the preview of a choice, and what takes it in. */
export function seasonEndRoutes(steward: Steward): Hono {
  return new Hono()
    .get('/gardens/:gardenId/season-end', async (c) => {
      const view = await gardenView(steward, c);
      return c.html(seasonEndPage({ view, ...(await steward.seasonEnd(view)) }));
    })
    .get(BED, async (c) => {
      const { view, bed } = await bedOf(steward, c);
      return c.html(await pageOf(steward, view, bed));
    })
    .get(`${BED}/choose`, (c) => preview(c, steward, chosen, new Form(new Map(Object.entries(c.req.queries())))))
    .post(`${BED}/choose`, async (c) => take(c, steward, chosen, await readForm(c)))
    .get(`${BED}/drop`, (c) => preview(c, steward, dropped, new Form(new Map(Object.entries(c.req.queries())))))
    .post(`${BED}/drop`, async (c) => take(c, steward, dropped, await readForm(c)));
}

/** Reads a choice off a form; nothing when the form cannot mean one, which it then says. */
type Reading = (form: Form, view: GardenView, gaps: BedGaps) => CoverChoice | undefined;

async function bedOf(steward: Steward, c: Context) {
  const view = await gardenView(steward, c);
  const bed = view.garden.beds.find(({ id }) => id === c.req.param('bedId'));
  if (bed === undefined) throw notFound('No bed of this garden has this address.');
  return { view, bed };
}

async function pageOf(steward: Steward, view: GardenView, bed: Bed, problems: readonly Problem[] = []) {
  const input = planningInput(view);
  const [gaps, told] = await Promise.all([steward.bedGaps(view, bed.id), steward.fertility(view)]);
  return bedPage({
    view,
    gaps,
    planned: plannedFill(input, bed),
    soil: soilCase(view.garden, bed),
    told,
    problems,
  });
}

async function preview(c: Context, steward: Steward, reading: Reading, form: Form) {
  const { view, bed } = await bedOf(steward, c);
  const gaps = await steward.bedGaps(view, bed.id);
  const choice = reading(form, view, gaps);
  let shown: ReportPreview | undefined;
  const problems =
    choice === undefined
      ? form.problems
      : await refusalsOf(async () => {
          shown = await steward.previewReport(view.garden.id, choice);
        });
  if (choice === undefined || shown === undefined) return c.html(await pageOf(steward, view, bed, problems), 422);
  const fields = Object.fromEntries(['gap', 'choice', 'on', 'stand'].map((name) => [name, form.text(name)]));
  const sent = Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== ''));
  const action = new URL(c.req.url).pathname;
  const notes = choiceNotes(planningInput(view), { choice, gaps }, shown.garden);
  return c.html(choicePreviewPage({ view, bedId: bed.id, choice, preview: shown, notes, action, fields: sent }));
}

async function take(c: Context, steward: Steward, reading: Reading, form: Form) {
  const { view, bed } = await bedOf(steward, c);
  const gaps = await steward.bedGaps(view, bed.id);
  const choice = reading(form, view, gaps);
  let kept = bedPath(view.garden.id, bed.id);
  const problems =
    choice === undefined
      ? form.problems
      : await refusalsOf(async () => {
          kept = await keptChange(steward, view.garden.id, kept, () => steward.report(view.garden.id, choice, BY));
        });
  if (problems.length > 0) return c.html(await pageOf(steward, view, bed, problems), 422);
  return c.redirect(kept, 303);
}

const chosen: Reading = (form, view, gaps) => {
  const input = planningInput(view);
  const asked = gaps.gaps.find(({ span }) => gapWord(span) === form.text('gap'));
  if (asked === undefined) {
    form.refuse({ where: 'The gap', what: 'It is no longer there.', mend: 'Choose from what the bed has now.' });
    return undefined;
  }
  const on = form.text('on');
  if (on === '') return choiceIn(form, asked, (fit) => choiceOf(input, asked, fit));
  const day = form.day('on', 'The day', view.plan.today);
  if (day === undefined || !isDay(day)) return undefined;
  const gap = gapOn(gaps, day) ?? asked;
  return choiceIn(form, gap, (fit) => choiceOf(input, gap, fit, day));
};

function choiceIn(form: Form, gap: GapOfBed, make: (fit: GapOfBed['fits'][number]) => CoverChoice | undefined) {
  const word = form.text('choice');
  const fit = gap.fits.find(({ choice }) => choiceName(choice) === word);
  const choice = fit && make(fit);
  if (choice === undefined) {
    const what =
      fit === undefined
        ? `"${word.slice(0, SHOWN_CHARACTERS)}" is none.`
        : `No time to sow ${fit.name} lies in this gap.`;
    form.refuse({ where: 'The choice', what, mend: 'Choose one of those listed for the gap.' });
  }
  return choice;
}

const dropped: Reading = (form, { garden }, { bed }) => {
  const stand = garden.stands.find(({ id }) => id === form.text('stand'));
  if (stand !== undefined && stand.bedId === bed.id)
    return { kind: 'stand-dropped', standId: stand.id, bedId: bed.id, coverId: stand.coverId };
  form.refuse({ where: 'The cover', what: 'It is not in the plan of this bed.', mend: 'Look at the bed once more.' });
  return undefined;
};
