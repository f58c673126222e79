/**
 * Buds or flowers seen on a cover, told on a page.
 */
import { Hono } from 'hono';
import { STAGES } from '../../garden/stand-file.ts';
import type { GardenView, Report, ReportPreview, Steward } from '../../steward/doings/steward.ts';
import { stageDoubt, stageReport } from '../../steward/facts/stage-report.ts';
import { historyPath } from '../addresses/addresses.ts';
import { keptReport } from '../changes/kept-report.ts';
import { Form, readForm } from '../requests/form.ts';
import { gardenView } from '../requests/garden-view.ts';
import { refusalsOf } from '../requests/refusals.ts';
import { type StageEntered, stagePage, stagePreviewPage, standingKinds } from './stage.tsx';

const PATH = '/gardens/:gardenId/report/stage';

/** The form, the preview, and what takes it in. */
export function stageRoutes(steward: Steward): Hono {
  return new Hono()
    .get(PATH, async (c) => {
      const view = await gardenView(steward, c);
      const form = new Form(new Map(Object.entries(c.req.queries())));
      const entered = enteredIn(form, view);
      if (form.text('stage') === '') return c.html(stagePage({ view, entered }));
      const report = reportIn(form, view);
      let preview: ReportPreview | undefined;
      const problems =
        report === undefined
          ? form.problems
          : await refusalsOf(async () => {
              preview = await steward.previewReport(view.garden.id, report);
            });
      if (report === undefined || preview === undefined) return c.html(stagePage({ view, entered, problems }), 422);
      return c.html(
        stagePreviewPage({ garden: view.garden, report, doubt: stageDoubt(view, report), preview, entered }),
      );
    })
    .post(PATH, async (c) => {
      const form = await readForm(c);
      const view = await gardenView(steward, c);
      const report = reportIn(form, view);
      const { leadsTo, problems } = await keptReport(steward, view.garden.id, report, historyPath(view.garden.id));
      if (leadsTo !== undefined) return c.redirect(leadsTo, 303);
      const told = [...form.problems, ...problems];
      return c.html(stagePage({ view, entered: enteredIn(form, view), problems: told }), 422);
    });
}

/** What the form holds; where only a stand is named, its first kind. */
function enteredIn(form: Form, view: GardenView): StageEntered {
  const stand = form.text('stand');
  const first = standingKinds(view).find(({ value }) => value.startsWith(`${stand}/`))?.value;
  return {
    seen: form.text('seen') || (stand === '' ? '' : (first ?? '')),
    stage: form.text('stage'),
    on: form.text('on') || view.plan.today,
  };
}

function reportIn(form: Form, view: GardenView): Extract<Report, { kind: 'stage-seen' }> | undefined {
  const [, standId, coverId] = /^(.+)\/([a-z_]+)$/.exec(form.text('seen')) ?? [];
  const stage = STAGES.find((each) => each === form.text('stage'));
  const on = form.day('on', 'The day', view.plan.today);
  if (standId === undefined || coverId === undefined)
    form.refuse({ where: 'On which cover', what: 'None is chosen.', mend: 'Choose one from the list.' });
  if (stage === undefined)
    form.refuse({ where: 'What is to be seen', what: 'Nothing is chosen.', mend: 'Choose buds or flowers.' });
  if (standId === undefined || coverId === undefined || stage === undefined || on === undefined) return undefined;
  return stageReport(view, { standId, coverId, stage, on });
}
