/**
 * What a step of setting a garden up is made of.
 */
import type { Child } from 'hono/jsx';
import type { GardenFile } from '../../garden/garden-file.ts';
import type { SetUpDraft, SetUpStep } from '../../garden/set-up-draft.ts';
import type { Station } from '../../handbook/stations.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { DraftOutlook } from '../../steward/doings/set-up-doings.ts';
import { EditForm, type FieldProblem } from '../fields/edit-form.ts';
import type { AnyField } from '../fields/field.ts';
import { type Texts, textsOf } from '../fields/shown.ts';
import type { Form } from '../requests/form.ts';

/** What every step looks at. */
export interface StepRoom {
  draftId: string;
  draft: SetUpDraft;
  /** What the draft comes to as it stands. */
  outlook: DraftOutlook;
  /** The units it is read in. */
  units: UnitSystem;
  stations: readonly Station[];
  /** What a draft other than the one kept would come to. */
  outlookOf(draft: SetUpDraft): Promise<DraftOutlook>;
}

/** How a step is shown. */
export interface StepShown {
  /** What was sent, where the form comes back. */
  sent?: Form;
  problems: readonly FieldProblem[];
  /** What stands behind the step's address. */
  query: Form;
}

/** What a step's form said: what it makes of the draft as it then is, and where it leads; or what is wrong. */
export type StepRead =
  | { change: (draft: SetUpDraft) => SetUpDraft; leads: 'on' | 'here' }
  | { problems: readonly FieldProblem[] };

/** What a form says that leaves everything as it is. */
export const unchanged = (draft: SetUpDraft): SetUpDraft => draft;

/** One step. */
export interface Step {
  name: SetUpStep;
  /** As the list of steps has it. */
  short: string;
  /** As its own page is headed. */
  title: string;
  content(room: StepRoom, shown: StepShown): Child;
  /** What the draft as it stands comes to. */
  aside(room: StepRoom): Child;
  read(form: Form, room: StepRoom): StepRead | Promise<StepRead>;
}

/** Which fields a form has, and the row of the file they are filled from. */
export interface AskedFields {
  of: keyof GardenFile;
  fields: readonly AnyField[];
  row?: object | undefined;
}

/** What the fields of a sent form say, and what is wrong with them. */
export function readFields(form: Form, { of, fields, row }: AskedFields, units: UnitSystem) {
  const edit = new EditForm({ form, units, of, from: { row, fields, texts: textsOf(fields, row, units) } });
  return { read: edit.read(fields), problems: edit.problems };
}

/** The texts that stand in fields: what was sent, else what the row says. */
export function fieldTexts({ sent }: Pick<StepShown, 'sent'>, { fields, row }: AskedFields, units: UnitSystem): Texts {
  if (sent === undefined) return textsOf(fields, row, units);
  return new Map(
    fields.map(({ name, as }) => {
      if (as !== 'month-day') return [name, sent.list(name)];
      const [month, day] = [sent.text(`${name}:month`), sent.text(`${name}:day`)];
      return [name, month === '' && day === '' ? [] : [`${month}-${day}`]];
    }),
  );
}

/** Whether a form comes back as it was handed out, so that nothing in it is meant; also where nothing of it was sent. */
export function isUntouched(form: Form, asked: AskedFields, units: UnitSystem): boolean {
  const sent = new Set(form.names());
  if (asked.fields.every(({ name }) => !sent.has(name))) return true;
  const before = textsOf(asked.fields, asked.row, units);
  return asked.fields.every(({ name }) => {
    const texts = form.list(name).map((text) => text.trim());
    return JSON.stringify(texts.filter((text) => text !== '')) === JSON.stringify(before.get(name) ?? []);
  });
}

/** The label of how many alike are added at once. */
export const COUNT_LABEL = 'How many of this kind';

/** What is wrong with how many are added at once, where so many more may be. */
export function countProblems(count: unknown, most: number): FieldProblem[] {
  if (typeof count !== 'number' || (count >= 1 && count <= most)) return [];
  const mend =
    most < 1 ? 'Take some out, or add them once the garden is made.' : `Give a whole number from 1 to ${most}.`;
  return [fieldProblem('count', COUNT_LABEL, `"${count}" cannot be.`, mend)];
}

/** A name that only its capitals or spaces tell from another is asked about: "bed 3" beside "Bed 3". */
export function twinProblems(
  word: 'bed' | 'bin',
  label: string,
  name: unknown,
  others: readonly { name: string }[],
): FieldProblem[] {
  const isSame = (each: { name: string }) => typeof name === 'string' && plainName(each.name) === plainName(name);
  const twin = others.find(isSame);
  if (twin === undefined) return [];
  const what = `"${twin.name}" is a ${word} already.`;
  return [fieldProblem('name', label, what, 'Is it the same one? Then change that; else give this another name.')];
}

/** A name without what tells nobody one thing from another. */
export function plainName(name: string): string {
  return name.trim().replace(/\s+/g, ' ').toLowerCase();
}

/** A problem at a field. */
export function fieldProblem(field: string, where: string, what: string, mend: string): FieldProblem {
  return { field, where, what, mend };
}
