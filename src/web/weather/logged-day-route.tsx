/**
 * A day of the weather log changed, or taken out.
 */
import { type Context, Hono } from 'hono';
import type { LoggedDay } from '../../garden/weather.ts';
import type { GardenView, MendPreview, Steward } from '../../steward/doings/steward.ts';
import { weatherPath } from '../addresses/addresses.ts';
import { keptChange } from '../changes/kept-change.ts';
import {
  carriedRow,
  cellOf,
  enteredIn,
  enteredOf,
  enteredOver,
  LOGGED_FIELDS,
  rowIn,
  sameFigures,
} from '../fields/logged-fields.ts';
import { Form, readForm } from '../requests/form.ts';
import { BY, gardenView, readIn } from '../requests/garden-view.ts';
import { refusalsOf } from '../requests/refusals.ts';
import { notFound } from '../requests/trouble.ts';
import { dayGonePage, loggedDayPage } from './logged-day.tsx';

const PATH = '/gardens/:gardenId/weather/day';

/** The page of a logged day, what changes it, and what takes it out. */
export function loggedDayRoutes(steward: Steward): Hono {
  return new Hono()
    .get(PATH, async (c) => {
      const { view, row } = await loggedDay(steward, c, queryOf(c));
      return c.html(loggedDayPage({ view, row, entered: enteredOf(row, view.garden.place.units) }));
    })
    .post(PATH, async (c) => change(c, steward, await readForm(c)))
    .get(`${PATH}/gone`, async (c) => askToTakeOut(c, steward, queryOf(c)))
    .post(`${PATH}/gone`, async (c) => takeOut(c, steward, await readForm(c)));
}

function queryOf(c: Context): Form {
  return new Form(new Map(Object.entries(c.req.queries())));
}

/**
 * The day a form is about, in the units it was shown in.
 *
 * @throws {Trouble} 404 where nothing is logged of the day that is asked for
 */
async function loggedDay(steward: Steward, c: Context, form: Form): Promise<{ view: GardenView; row: LoggedDay }> {
  const view = await gardenView(steward, c);
  const row = view.garden.weather.find(({ day, kind }) => day === form.text('day') && kind === form.text('kind'));
  if (row === undefined) throw notFound('Nothing is logged of that day any more, or never was.');
  const shown = form.text('_units');
  return { view: shown === 'us' || shown === 'metric' ? readIn(view, shown) : view, row };
}

async function change(c: Context, steward: Steward, form: Form): Promise<Response> {
  const { view, row: old } = await loggedDay(steward, c, form);
  const { garden, plan } = view;
  const { units } = garden.place;
  const shown = (more: object, status: 200 | 409 | 422) =>
    c.html(loggedDayPage({ view, row: old, entered: enteredIn(form), ...more }), status);
  const was = carriedRow(form);
  if (!sameFigures(was, old)) return shown({ entered: enteredOver(form, was, old, units), meanwhile: { was } }, 409);
  const row = rowIn(form, units, plan.today);
  if (row === undefined) return shown({ problems: form.problems }, 422);
  const anew = asItWas(row, old, form, units);
  const edits = [{ days: [anew] }];
  if (form.text('do') === 'look') {
    let preview: MendPreview | undefined;
    const problems = await refusalsOf(async () => {
      preview = await steward.previewMend(garden.id, edits);
    });
    return shown({ preview, problems }, preview === undefined ? 422 : 200);
  }
  let path = weatherPath(garden.id);
  if (sameFigures(anew, old)) return c.redirect(path, 303);
  const problems = await refusalsOf(async () => {
    path = await keptChange(steward, garden.id, path, () => steward.mend(garden.id, edits, BY));
  });
  return problems.length > 0 ? shown({ problems }, 422) : c.redirect(path, 303);
}

/** A figure nobody touched stays as it was, however it is rounded where it is shown. */
function asItWas(row: LoggedDay, old: LoggedDay, form: Form, units: GardenView['garden']['place']['units']): LoggedDay {
  const kept = { ...row };
  for (const { measured, name } of LOGGED_FIELDS) {
    const was = old[measured];
    if (was !== undefined && form.text(name) === cellOf(old, measured, units)) kept[measured] = was;
  }
  return kept;
}

async function askToTakeOut(c: Context, steward: Steward, form: Form, changed = false): Promise<Response> {
  const { view, row } = await loggedDay(steward, c, form);
  const preview = await steward.previewMend(view.garden.id, [{ daysGone: [row] }]);
  return c.html(dayGonePage({ view, row, preview, changed }), changed ? 409 : 200);
}

async function takeOut(c: Context, steward: Steward, form: Form): Promise<Response> {
  const { view, row } = await loggedDay(steward, c, form);
  if (!sameFigures(carriedRow(form), row)) return askToTakeOut(c, steward, form, true);
  const { id } = view.garden;
  const { day, kind } = row;
  const gone = () => steward.mend(id, [{ daysGone: [{ day, kind }] }], BY);
  return c.redirect(await keptChange(steward, id, weatherPath(id), gone), 303);
}
