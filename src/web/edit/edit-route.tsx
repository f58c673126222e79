/**
 * Everything told of a garden can be changed, added to and taken out: one form for every kind of it.
 */
import { type Context, Hono } from 'hono';
import type { MendPreview, Steward } from '../../steward/doings/steward.ts';
import { deletePath } from '../addresses/addresses.ts';
import { keptChange } from '../changes/kept-change.ts';
import { KeptOnce, onceWord } from '../changes/kept-once.ts';
import { EditForm, type FieldProblem, type FilledFrom, textsSent } from '../fields/edit-form.ts';
import { type Texts, textsOf } from '../fields/shown.ts';
import { type Form, readForm } from '../requests/form.ts';
import { BY } from '../requests/garden-view.ts';
import { refusalsOf } from '../requests/refusals.ts';
import { notFound } from '../requests/trouble.ts';
import { type AskedEdit, actionOf, askedEdit, filledFrom, headingOf } from './asked-edit.ts';
import { rowDifferences } from './differences.ts';
import { deletePage, type EditPageProps, editPage, type Looked } from './edit.tsx';
import { rowOfForm } from './kinds/kind.ts';
import { editOf, markOf, saidBy } from './kinds/rows.ts';
import { mergedTexts } from './merged-texts.ts';
import { elsewhereProblems, refusedEdits } from './refused-edits.ts';

interface Room {
  steward: Steward;
  once: KeptOnce;
}

const LIST = '/gardens/:gardenId/edit/:list';

/** The forms, what they keep, and what takes things out. */
export function editRoutes(steward: Steward): Hono {
  const room: Room = { steward, once: new KeptOnce(steward) };
  return new Hono()
    .get(`${LIST}/new`, async (c) => shown(c, await askedEdit(steward, c)))
    .post(`${LIST}/new`, async (c) => sent(c, room, await readForm(c)))
    .get(`${LIST}/:ref`, async (c) => {
      const asked = await askedEdit(steward, c);
      if (asked.about.row === undefined) throw goneFor(asked);
      return shown(c, asked);
    })
    .post(`${LIST}/:ref`, async (c) => sent(c, room, await readForm(c)))
    .get(`${LIST}/:ref/delete`, async (c) => asksToDelete(c, steward, await askedEdit(steward, c)))
    .post(`${LIST}/:ref/delete`, async (c) => takenOut(c, room, await readForm(c)));
}

function goneFor({ kind }: AskedEdit) {
  return notFound(`This ${kind.word} is not told of this garden any more, or never was.`);
}

/** The form as it stands; fields of something new may be filled in by the address. */
function shown(c: Context, asked: AskedEdit) {
  const { kind, about } = asked;
  const fields = kind.fields(about as never);
  const texts = textsOf(fields, about.row, about.view.garden.place.units);
  const filled = about.row === undefined ? Object.entries(c.req.queries()) : [];
  for (const [name, values] of filled) if (texts.has(name)) texts.set(name, values);
  return c.html(pageOf(asked, { fields, texts, open: c.req.query('open') }));
}

type Shown = Pick<EditPageProps, 'fields' | 'texts'> & Partial<EditPageProps>;

function pageOf(asked: AskedEdit, props: Shown) {
  const { kind, about, ref } = asked;
  const { view, row } = about;
  const { garden } = view;
  return editPage({
    view,
    kind,
    title: headingOf(kind, about),
    row,
    once: onceWord(),
    action: actionOf(asked),
    backTo: kind.back(garden, row as never),
    deleteAt: ref === undefined || kind.stays ? undefined : deletePath(garden.id, kind.list, ref),
    ...props,
  });
}

/** A form that was sent: wrong, of a row that changed meanwhile, changing nothing, looked at first, or kept. */
async function sent(c: Context, { steward, once }: Room, form: Form) {
  const asked = await askedEdit(steward, c, form);
  const { kind, about } = asked;
  const from = filledFrom(form, kind);
  const { garden } = about.view;
  const { units } = garden.place;
  const fromFields = kind.fields({ ...about, row: from } as never);
  const filled = { row: from, fields: fromFields, texts: textsOf(fromFields, from, units) };
  if (asked.ref !== undefined && saidBy(about.row) !== saidBy(from)) return meanwhile(c, asked, form, filled);
  const led = asked.ref === undefined ? await once.ledTo(garden.id, form) : undefined;
  if (led !== undefined) return c.redirect(led, 303);
  const read = new EditForm({ form, units, today: about.view.plan.today, of: kind.of, from: filled });
  const row = rowOfForm(kind, read, about);
  const edits = kind.edits?.(row, about as never) ?? [editOf(kind, about.row, row)];
  const back = { fields: fromFields, texts: textsSent(form, fromFields), once: onceWord(form) };
  if (about.row !== undefined && read.problems.length === 0 && saidBy(row) === saidBy(about.row))
    return c.html(pageOf(asked, { ...back, nothing: true }));
  const refusals = (doing: () => Promise<unknown>) =>
    refusedEdits(doing, { ...asked, edits, read, row, fields: fromFields });
  const wrong = (problems: readonly FieldProblem[]) => c.html(pageOf(asked, { ...back, problems }), 422);
  if (form.text('do') !== 'look' && read.problems.length === 0) {
    let leadsTo = '';
    const problems = await refusals(async () => {
      const path = kind.back(garden, row as never);
      leadsTo = await once.keep(garden.id, form, () =>
        keptChange(steward, garden.id, path, () => steward.mend(garden.id, edits, BY)),
      );
    });
    return problems.length > 0 ? wrong(problems) : c.redirect(leadsTo, 303);
  }
  let preview: MendPreview | undefined;
  const problems = await refusals(async () => {
    preview = await steward.previewMend(garden.id, edits);
  });
  if (preview === undefined || problems.length > 0) return wrong(problems);
  const will = { fields: kind.fields({ ...about, row } as never), row };
  const differences = rowDifferences(filled, will, units);
  return c.html(pageOf(asked, { ...back, differences, looked: lookedAt(preview) }));
}

function lookedAt(preview: MendPreview): Looked {
  return { preview, gone: preview.gone.map(({ words }) => words) };
}

/** Somebody else changed the row while the form stood open: nothing is kept, and what was typed is not lost. */
function meanwhile(c: Context, asked: AskedEdit, form: Form, filled: FilledFrom) {
  const { kind, about } = asked;
  const { units } = about.view.garden.place;
  const typed = textsSent(form, filled.fields);
  if (about.row === undefined) return c.html(goneMeanwhile(asked, filled, typed), 409);
  const fields = kind.fields(about as never);
  const now = { fields, row: about.row };
  const texts = mergedTexts({ typed, before: filled.texts, now: textsOf(fields, about.row, units), fields });
  const differences = rowDifferences(filled, now, units);
  return c.html(pageOf(asked, { fields, texts, meanwhile: { differences } }), 409);
}

/** What was changed is not there any more: the form stands as one that adds it. */
function goneMeanwhile(asked: AskedEdit, { fields, row }: FilledFrom, texts: Texts) {
  const { kind } = asked;
  const problem = {
    where: `The ${kind.word}`,
    what: 'It was changed or taken out somewhere else while this form was open.',
    mend: 'Look at what is told now; “Keep” adds what stands below as a new one.',
  };
  return pageOf({ ...asked, ref: undefined }, { fields, texts, row, problems: [problem] });
}

async function asksToDelete(c: Context, steward: Steward, asked: AskedEdit, changed = false) {
  const { kind, about, ref = '' } = asked;
  const { view, row } = about;
  if (row === undefined || kind.stays) throw goneFor(asked);
  let preview: MendPreview | undefined;
  const refused = await refusalsOf(async () => {
    preview = await steward.previewMend(view.garden.id, [editOf(kind, row, undefined)]);
  });
  const problems = elsewhereProblems(refused, about);
  const page = deletePage({
    view,
    kind,
    mark: markOf(row),
    once: onceWord(),
    title: headingOf(kind, about),
    looked: preview && lookedAt(preview),
    problems,
    action: deletePath(view.garden.id, kind.list, ref),
    backTo: kind.back(view.garden, row as never),
    changed,
  });
  return c.html(page, problems.length > 0 ? 422 : changed ? 409 : 200);
}

async function takenOut(c: Context, { steward, once }: Room, form: Form) {
  const asked = await askedEdit(steward, c, form);
  const { kind, about } = asked;
  const { row } = about;
  const { garden } = about.view;
  const led = await once.ledTo(garden.id, form);
  if (led !== undefined) return c.redirect(led, 303);
  if (row === undefined || kind.stays) throw goneFor(asked);
  if (form.text('_said') !== markOf(row)) return asksToDelete(c, steward, asked, true);
  let leadsTo = '';
  const refused = await refusalsOf(async () => {
    const path = kind.backWithout?.(garden) ?? kind.back(garden, row as never);
    leadsTo = await once.keep(garden.id, form, () =>
      keptChange(steward, garden.id, path, () => steward.mend(garden.id, [editOf(kind, row, undefined)], BY)),
    );
  });
  return refused.length > 0 ? asksToDelete(c, steward, asked) : c.redirect(leadsTo, 303);
}
