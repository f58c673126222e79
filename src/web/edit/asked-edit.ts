/**
 * What a request for a form is about: the garden, the kind, and the row as it stands now and as the form was filled from it.
 */
import type { Context } from 'hono';
import { isRowOf } from '../../garden/file-limits.ts';
import type { Steward } from '../../steward/doings/steward.ts';
import { editPath } from '../addresses/addresses.ts';
import { climateChoices } from '../climate/climate-choices.ts';
import type { Form } from '../requests/form.ts';
import { gardenView, readIn } from '../requests/garden-view.ts';
import { notFound } from '../requests/trouble.ts';
import type { About, EditKind } from './kinds/kind.ts';
import { refOfPart, rowAt } from './kinds/rows.ts';
import { kinds } from './kinds.ts';

/** A request for the form of a kind. */
export interface AskedEdit {
  kind: EditKind;
  /** The garden as it is; its row the one the address names, absent for something new and where it is gone. */
  about: About;
  /** The row's word in addresses; absent for something new. */
  ref: string | undefined;
}

/**
 * What is asked.
 *
 * @param form a form that was sent: it says in which units it was shown
 * @throws {Trouble} 404 when there is no such garden or kind
 */
export async function askedEdit(steward: Steward, c: Context, form?: Form): Promise<AskedEdit> {
  const view = await gardenView(steward, c);
  const list = c.req.param('list') ?? '';
  const kind = kinds.find((each) => each.list === list);
  if (kind === undefined) throw notFound(`Nothing of a garden is kept under "${list.slice(0, 60)}".`);
  const named = c.req.param('ref');
  if (kind.onlyAdds && named !== undefined) throw notFound(`A ${kind.word} is changed by itself, from its own page.`);
  const file = await steward.fileNow(view.garden.id);
  const ref = named ?? refOfPart(kind, file);
  const row = ref === undefined ? undefined : rowAt(kind, file, ref);
  const { garden, plan } = view;
  const stations = kind.of === 'climate' ? await steward.stations() : undefined;
  const around = stations === undefined ? {} : { around: climateChoices(stations, garden.place, plan.today) };
  const shown = form?.text('_units');
  const inUnits = shown === 'us' || shown === 'metric' ? readIn(view, shown) : view;
  return { kind, ref, about: { view: inUnits, file, ...around, ...(row === undefined ? {} : { row }) } };
}

/** The row a form was filled from, as it carried it along; nothing for something new, and for what is no such row. */
export function filledFrom(form: Form, { of }: Pick<EditKind, 'of'>): object | undefined {
  const text = form.text('_row');
  if (text === '') return undefined;
  try {
    const row: unknown = JSON.parse(text);
    return typeof row === 'object' && row !== null && isRowOf(of, row) ? row : undefined;
  } catch {
    return undefined;
  }
}

/** What a form is headed with. */
export function headingOf(kind: EditKind, { view, row }: About): string {
  if (row !== undefined) return kind.titleOf(row as never, view.garden);
  return kind.adds ?? `Add ${/^[aeiou]/.test(kind.word) ? 'an' : 'a'} ${kind.word}`;
}

/** The address a form is sent to. */
export function actionOf({ kind, about, ref }: AskedEdit): string {
  return editPath(about.view.garden.id, kind.list, ref);
}
