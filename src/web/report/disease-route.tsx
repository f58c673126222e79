/**
 * A disease found in a bed: chosen, shown with all that would come of it, and taken in.
 */
import { type Context, Hono } from 'hono';
import { diseasePreview } from '../../digest/disease-preview.ts';
import type { DiseaseFound } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import { vegetables } from '../../handbook/vegetables.ts';
import type { GardenView, ReportPreview, Steward } from '../../steward/doings/steward.ts';
import { historyPath } from '../addresses/addresses.ts';
import { keptReport } from '../changes/kept-report.ts';
import { Form, readForm } from '../requests/form.ts';
import { gardenView } from '../requests/garden-view.ts';
import { refusalsOf } from '../requests/refusals.ts';
import { diseaseBedsPage, diseaseFormPage, diseasePreviewPage } from './disease.tsx';

const PATH = '/gardens/:gardenId/report/disease';

/** The pages of the journey: the bed and crop, the disease and day, the preview; and what takes it in. */
export function diseaseRoutes(steward: Steward): Hono {
  return new Hono()
    .get(PATH, async (c) => {
      const view = await gardenView(steward, c);
      const asked = new Form(new Map(Object.entries(c.req.queries())));
      if (bedOf(view, asked) === undefined) return c.html(diseaseBedsPage(view));
      if (!('disease' in c.req.queries())) return c.html(formPage(view, asked, []));
      return preview(c, steward, view, asked);
    })
    .post(PATH, async (c) => {
      const form = await readForm(c);
      const view = await gardenView(steward, c);
      const found = foundIn(form, view);
      const report = found && { kind: 'disease-found' as const, ...found };
      const { leadsTo, problems } = await keptReport(steward, view.garden.id, report, historyPath(view.garden.id));
      if (leadsTo !== undefined) return c.redirect(leadsTo, 303);
      return c.html(formPage(view, form, [...form.problems, ...problems]), 422);
    });
}

async function preview(c: Context, steward: Steward, view: GardenView, asked: Form) {
  const found = foundIn(asked, view);
  if (found === undefined) return c.html(formPage(view, asked, asked.problems), 422);
  let compared: ReportPreview | undefined;
  const problems = await refusalsOf(async () => {
    compared = await steward.previewReport(view.garden.id, { kind: 'disease-found', ...found });
  });
  if (compared === undefined) return c.html(formPage(view, asked, problems), 422);
  return c.html(diseasePreviewPage({ view, found, sections: diseasePreview(compared, found) }));
}

function formPage(view: GardenView, form: Form, problems: readonly Problem[]) {
  const entered = { crop: form.text('crop'), disease: form.text('disease'), on: form.text('on') || view.plan.today };
  const bed = bedOf(view, form);
  return bed === undefined ? diseaseBedsPage(view, problems) : diseaseFormPage({ view, bed, entered, problems });
}

function bedOf({ garden }: GardenView, form: Form) {
  return garden.beds.find(({ id }) => id === form.text('bed'));
}

/** What a form tells of; nothing when a field cannot be used, which the form then says. */
function foundIn(form: Form, view: GardenView): DiseaseFound | undefined {
  const bed = bedOf(view, form);
  const cropId = form.text('crop');
  const disease = form.text('disease');
  const on = form.day('on', 'The day it was found', view.plan.today);
  if (bed === undefined) form.refuse({ where: 'The bed', what: 'None is chosen.', mend: 'Choose one from the list.' });
  if (!vegetables.some(({ id }) => id === cropId))
    form.refuse({ where: 'The crop', what: 'None is chosen.', mend: 'Choose the crop it was found on.' });
  if (disease === '' || disease.length > 200) {
    const what = disease === '' ? 'It is empty.' : 'It is too long.';
    form.refuse({ where: 'What it is called', what, mend: 'Give its name, such as clubroot, or what you see.' });
  }
  return bed === undefined || on === undefined || form.problems.length > 0
    ? undefined
    : { bedId: bed.id, cropId, disease, on };
}
