/**
 * Times away: told with a look at what they would do first; and the sheet for whoever minds the garden.
 */
import { type Context, Hono } from 'hono';
import { awaySheet, comingAway } from '../../digest/away-sheet.ts';
import type { Away } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import { isDay } from '../../measures/days.ts';
import type { GardenView, ReportPreview, Steward } from '../../steward/doings/steward.ts';
import { reportPath } from '../addresses/addresses.ts';
import { keptReport } from '../changes/kept-report.ts';
import { Form, readForm } from '../requests/form.ts';
import { gardenView } from '../requests/garden-view.ts';
import { refusalsOf } from '../requests/refusals.ts';
import { type AwayEntered, awayPage } from './away.tsx';
import { awaySheetPage } from './away-sheet.tsx';

const PATH = '/gardens/:gardenId/report/away';

/** The page of times away and its sheet. */
export function awayRoutes(steward: Steward): Hono {
  return new Hono()
    .get(PATH, async (c) => {
      const view = await gardenView(steward, c);
      const [from, to] = [c.req.query('from'), c.req.query('to')];
      if (from === undefined && to === undefined) return c.html(awayPage({ view }));
      const form = new Form(new Map(Object.entries({ from: [from ?? ''], to: [to ?? ''] })));
      return answer(steward, c, view, form);
    })
    .post(PATH, async (c) => {
      const form = await readForm(c);
      const view = await gardenView(steward, c);
      const away = awayIn(form, view);
      if (away === undefined) return refused(c, view, form, form.problems);
      const { id } = view.garden;
      const report = { kind: 'away-told' as const, ...away };
      const { leadsTo, problems } = await keptReport(steward, id, report, reportPath(id, 'away'));
      return leadsTo === undefined ? refused(c, view, form, problems) : c.redirect(leadsTo, 303);
    })
    .get('/gardens/:gardenId/away-sheet', async (c) => {
      const view = await gardenView(steward, c);
      const asked = c.req.query('day');
      const day = asked !== undefined && isDay(asked) ? asked : view.plan.today;
      const away = comingAway(view.garden, day);
      return c.html(awaySheetPage({ view, sheet: away && awaySheet(view, away) }));
    });
}

/** The form again with what it would do, or with what is wrong. */
async function answer(steward: Steward, c: Context, view: GardenView, form: Form) {
  const away = awayIn(form, view);
  if (away === undefined) return refused(c, view, form, form.problems);
  let preview: ReportPreview | undefined;
  const problems = await refusalsOf(async () => {
    preview = await steward.previewReport(view.garden.id, { kind: 'away-told', ...away });
  });
  if (preview === undefined) return refused(c, view, form, problems);
  return c.html(awayPage({ view, entered: away, preview }));
}

function awayIn(form: Form, { plan: { today } }: GardenView): Away | undefined {
  const from = form.day('from', 'Away from', today);
  const to = form.day('to', 'Away to', today);
  return from === undefined || to === undefined ? undefined : { from, to };
}

function refused(c: Context, view: GardenView, form: Form, problems: readonly Problem[]) {
  const entered: AwayEntered = { from: form.text('from'), to: form.text('to') };
  return c.html(awayPage({ view, entered, problems }), 422);
}
