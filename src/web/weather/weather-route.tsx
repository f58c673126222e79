/**
 * The weather log: shown, tried out and taken in.
 */
import { type Context, Hono } from 'hono';
import { unreckonedNote } from '../../digest/unreckoned.ts';
import type { Problem } from '../../garden/problem.ts';
import { isDay } from '../../measures/days.ts';
import type { GardenView, ReportPreview, Steward } from '../../steward/doings/steward.ts';
import { weatherPath } from '../addresses/addresses.ts';
import { keptChange } from '../changes/kept-change.ts';
import { enteredIn, rowIn } from '../fields/logged-fields.ts';
import { Form, readForm } from '../requests/form.ts';
import { BY, gardenView } from '../requests/garden-view.ts';
import { refusalsOf } from '../requests/refusals.ts';
import { weatherPage } from './weather.tsx';
import { weatherPreviewPage } from './weather-preview.tsx';

const PATH = '/gardens/:gardenId/weather';

/** The page of the log, the preview of a day, and what takes it in. */
export function weatherRoutes(steward: Steward): Hono {
  return new Hono()
    .get(PATH, async (c) => {
      const view = await gardenView(steward, c);
      const asked = c.req.queries();
      if ('kind' in asked) return preview(c, steward, view, new Form(new Map(Object.entries(asked))));
      const day = c.req.query('day');
      const entered = day !== undefined && isDay(day) ? { day, ...kindOf(day, view.plan.today) } : {};
      return c.html(weatherPage({ view, entered }));
    })
    .post(PATH, async (c) => {
      const form = await readForm(c);
      const view = await gardenView(steward, c);
      const { garden, plan } = view;
      const row = rowIn(form, garden.place.units, plan.today);
      if (row === undefined) return refused(c, view, form, form.problems);
      const report = { kind: 'weather-logged' as const, days: [row] };
      let path = weatherPath(garden.id);
      const problems = await refusalsOf(async () => {
        path = await keptChange(steward, garden.id, path, () => steward.report(garden.id, report, BY));
      });
      return problems.length > 0 ? refused(c, view, form, problems) : c.redirect(path, 303);
    });
}

function kindOf(day: string, today: string): { kind?: 'expected' } {
  return day > today ? { kind: 'expected' } : {};
}

async function preview(c: Context, steward: Steward, view: GardenView, form: Form) {
  const { garden, plan } = view;
  const row = rowIn(form, garden.place.units, plan.today);
  if (row === undefined) return refused(c, view, form, form.problems);
  let shown: ReportPreview | undefined;
  const problems = await refusalsOf(async () => {
    shown = await steward.previewReport(garden.id, { kind: 'weather-logged', days: [row] });
  });
  if (shown === undefined) return refused(c, view, form, problems);
  const note = unreckonedNote(view.climate, [row]);
  return c.html(weatherPreviewPage({ garden, row, entered: enteredIn(form), preview: shown, note }));
}

function refused(c: Context, view: GardenView, form: Form, problems: readonly Problem[]) {
  return c.html(weatherPage({ view, entered: enteredIn(form), problems }), 422);
}
