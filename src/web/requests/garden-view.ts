/**
 * The garden an address names, as its reader reads it.
 */
import type { Context } from 'hono';
import type { UnitSystem } from '../../measures/units.ts';
import type { GardenView, Steward } from '../../steward/doings/steward.ts';
import { readerUnits } from './reader.ts';
import { notFound, Trouble } from './trouble.ts';

/** Who made a change, as the ledger keeps it. There are no accounts yet. */
export const BY = 'web page';

/**
 * A garden with its plan; in the units its reader chose, where they chose any. What is written into a garden's file is never
 * taken from here, but from the steward: the reader's units are not the garden's.
 *
 * @throws {Trouble} 404 when there is no such garden
 */
export async function gardenView(steward: Steward, c: Context): Promise<GardenView> {
  const gardenId = c.req.param('gardenId') ?? '';
  if (!(await steward.gardenIds()).includes(gardenId)) {
    const away = (await steward.gardensPutAway()).find(({ id }) => id === gardenId);
    throw away === undefined ? notFound(`No garden "${gardenId.slice(0, 80)}" is kept here.`) : isPutAway(away.name);
  }
  return readIn(await steward.view(gardenId), readerUnits(c));
}

function isPutAway(name: string): Trouble {
  return new Trouble(404, 'This garden was put away', [
    { where: name, what: 'Nothing of it is shown while it is put away.', mend: 'Give it back on the page of gardens.' },
  ]);
}

const read = new WeakMap<GardenView, GardenView>();

/** A view in some units: the same object each time, because what is worked out from a view is held by it. */
export function readIn(view: GardenView, units: UnitSystem | undefined): GardenView {
  const { garden } = view;
  if (units === undefined || units === garden.place.units) return view;
  const known = read.get(view);
  if (known !== undefined) return known;
  const turned = { ...view, garden: { ...garden, place: { ...garden.place, units } } };
  read.set(view, turned);
  return turned;
}

/** A whole positive number in an address or a form field, or nothing. */
export function wholeNumber(text: string | undefined): number | undefined {
  return text !== undefined && /^[1-9]\d{0,8}$/.test(text) ? Number(text) : undefined;
}
