/**
 * Everything told of a garden can be changed, added to and taken out: one form for every kind of it.
 */
import { type Context, Hono } from 'hono';
import { type Edit, editedFile } from '../garden/edit.ts';
import type { Problem } from '../garden/problem.ts';
import type { MendPreview, Steward } from '../steward/steward.ts';
import { movesBetween } from '../steward/undo.ts';
import { deletePath } from './addresses.ts';
import { type AskedEdit, actionOf, askedEdit, filledFrom, headingOf } from './edit/asked-edit.ts';
import { rowDifferences } from './edit/differences.ts';
import { EditForm, type FieldProblem, type FilledFrom, textsSent } from './edit/edit-form.ts';
import { keptAt } from './edit/kept.tsx';
import { rowOfForm } from './edit/kind.ts';
import { kinds } from './edit/kinds.ts';
import { laidProblems } from './edit/lay-problems.ts';
import { mergedTexts } from './edit/merged-texts.ts';
import { editOf, saidBy } from './edit/rows.ts';
import { type Texts, textsOf } from './edit/shown.ts';
import { type Form, readForm } from './form.ts';
import { BY } from './garden-view.ts';
import { deletePage, type EditPageProps, editPage, type Looked } from './pages/edit.tsx';
import { refusalsOf } from './task-route.tsx';
import { notFound } from './trouble.ts';

const LIST = '/gardens/:gardenId/edit/:list';

/** The forms, what they keep, and what takes things out. */
export function editRoutes(steward: Steward): Hono {
  return new Hono()
    .get(`${LIST}/new`, async (c) => shown(c, await askedEdit(steward, c)))
    .post(`${LIST}/new`, async (c) => sent(c, steward, await readForm(c)))
    .get(`${LIST}/:ref`, async (c) => {
      const asked = await askedEdit(steward, c);
      if (asked.about.row === undefined) throw goneFor(asked);
      return shown(c, asked);
    })
    .post(`${LIST}/:ref`, async (c) => sent(c, steward, await readForm(c)))
    .get(`${LIST}/:ref/delete`, async (c) => asksToDelete(c, steward, await askedEdit(steward, c)))
    .post(`${LIST}/:ref/delete`, async (c) => takenOut(c, steward, await readForm(c)));
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
  return c.html(pageOf(asked, { fields, texts }));
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
    action: actionOf(asked),
    backTo: kind.back(garden, row as never),
    deleteAt: ref === undefined || kind.stays ? undefined : deletePath(garden.id, kind.list, ref),
    ...props,
  });
}

/** A form that was sent: wrong, of a row that changed meanwhile, changing nothing, looked at first, or kept. */
async function sent(c: Context, steward: Steward, form: Form) {
  const asked = await askedEdit(steward, c, form);
  const { kind, about } = asked;
  const from = filledFrom(form);
  const { units } = about.view.garden.place;
  const fromFields = kind.fields({ ...about, row: from } as never);
  const filled = { row: from, fields: fromFields, texts: textsOf(fromFields, from, units) };
  if (asked.ref !== undefined && saidBy(about.row) !== saidBy(from)) return meanwhile(c, asked, form, filled);
  const read = new EditForm({ form, units, of: kind.of, from: filled });
  const row = rowOfForm(kind, read, about);
  const edits = kind.edits?.(row, about as never) ?? [editOf(kind, about.row, row)];
  const back = { fields: fromFields, texts: textsSent(form, fromFields) };
  if (about.row !== undefined && read.problems.length === 0 && saidBy(row) === saidBy(about.row))
    return c.html(pageOf(asked, { ...back, nothing: true }));
  const refused = await refusalsOn(steward, asked, edits, read, { ...back, row });
  if ('problems' in refused) return c.html(pageOf(asked, { ...back, problems: refused.problems }), 422);
  const { preview } = refused;
  if (form.text('do') === 'look') {
    const will = { fields: kind.fields({ ...about, row } as never), row };
    const differences = rowDifferences(filled, will, units);
    return c.html(pageOf(asked, { ...back, differences, looked: lookedAt(preview) }));
  }
  return kept(c, steward, asked, { edits, row });
}

/** What would come of edits, or everything that speaks against them: what was typed and what the whole file says of it. */
async function refusalsOn(
  steward: Steward,
  { kind, about }: AskedEdit,
  edits: readonly Edit[],
  read: EditForm,
  { fields, row }: { fields: Shown['fields']; row: object },
): Promise<{ problems: readonly FieldProblem[] } | { preview: MendPreview }> {
  const { garden } = about.view;
  let preview: MendPreview | undefined;
  const refused = await refusalsOf(async () => {
    preview = await steward.previewMend(garden.id, edits);
  });
  if (preview !== undefined && read.problems.length === 0) return { preview };
  const at = placesOf(about.file, edits);
  const laid = laidProblems(
    refused,
    { kind, fields, at, row, places: read.places },
    { kinds, file: about.file, garden },
  );
  const wrong = new Set(read.problems.map(({ field }) => field));
  const all = [...read.problems, ...laid.filter(({ field }) => field === undefined || !wrong.has(field))];
  return { problems: inOrder(all, fields) };
}

/** Problems in the order their fields are asked for; those of no field last. */
function inOrder(problems: readonly FieldProblem[], fields: Shown['fields']): FieldProblem[] {
  const placeOf = ({ field = '' }: FieldProblem): number => {
    const at = fields.findIndex(({ name }) => name === field.replace(/\[.*$/, ''));
    return at < 0 ? fields.length : at;
  };
  return [...problems].sort((a, b) => placeOf(a) - placeOf(b));
}

/** Where the rows of edits stand in the file with them: "beds[2]". */
function placesOf(file: AskedEdit['about']['file'], edits: readonly Edit[]): string[] {
  return editedFile(file, edits).refs.flatMap(({ list, at }) =>
    list === undefined ? [] : at === undefined ? [list] : [`${list}[${at}]`],
  );
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

async function kept(c: Context, steward: Steward, asked: AskedEdit, told: { edits: readonly Edit[]; row: object }) {
  const { kind, about } = asked;
  const { garden } = about.view;
  const before = (await steward.view(garden.id)).plan;
  const after = await steward.mend(garden.id, told.edits, BY);
  const now = await steward.view(garden.id);
  const path = kind.back(now.garden, told.row as never);
  const entry = now.ledger.at(-1)?.entry ?? 0;
  return c.redirect(keptAt(path, garden, entry, movesBetween(before, after)), 303);
}

async function asksToDelete(c: Context, steward: Steward, asked: AskedEdit, changed = false) {
  const { kind, about, ref = '' } = asked;
  const { view, row } = about;
  if (row === undefined || kind.stays) throw goneFor(asked);
  let preview: MendPreview | undefined;
  const refused = await refusalsOf(async () => {
    preview = await steward.previewMend(view.garden.id, [editOf(kind, row, undefined)]);
  });
  const laid = { kind, fields: [], at: [], row: undefined, places: new Map<string, string>() };
  const problems: readonly Problem[] = laidProblems(refused, laid, { kinds, file: about.file, garden: view.garden });
  const page = deletePage({
    view,
    kind,
    row,
    title: headingOf(kind, about),
    looked: preview && lookedAt(preview),
    problems,
    action: deletePath(view.garden.id, kind.list, ref),
    backTo: kind.back(view.garden, row as never),
    changed,
  });
  return c.html(page, problems.length > 0 ? 422 : changed ? 409 : 200);
}

async function takenOut(c: Context, steward: Steward, form: Form) {
  const asked = await askedEdit(steward, c, form);
  const { kind, about } = asked;
  const { view, row } = about;
  if (row === undefined || kind.stays) throw goneFor(asked);
  if (saidBy(filledFrom(form)) !== saidBy(row)) return asksToDelete(c, steward, asked, true);
  const refused = await refusalsOf(() => steward.previewMend(view.garden.id, [editOf(kind, row, undefined)]));
  if (refused.length > 0) return asksToDelete(c, steward, asked);
  const before = (await steward.view(view.garden.id)).plan;
  const after = await steward.mend(view.garden.id, [editOf(kind, row, undefined)], BY);
  const entry = (await steward.view(view.garden.id)).ledger.at(-1)?.entry ?? 0;
  const path = kind.backWithout?.(view.garden) ?? kind.back(view.garden, row as never);
  return c.redirect(keptAt(path, view.garden, entry, movesBetween(before, after)), 303);
}
